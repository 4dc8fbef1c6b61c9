package org.duskline.web.page;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.web.deliver.AnswerLink;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.door.Door;

/** Pages on which findings can be answered, over real records. Ida has an account where the house is not open. */
final class AnswerHouse implements AutoCloseable {
    static final String PASSWORD = "elder hedge at seven";
    static final Finding SWARM = InventedFindings.swarm();

    final AnswerLog answers;
    final VisitLog visits;
    final int port;
    private final Store store;
    private final Deliveries deliveries;
    private final Supplier<Pages> builder;
    private Pages pages;
    private volatile Instant now = InventedLine.NOW;

    AnswerHouse(Path folder, boolean open) {
        store = Store.open(folder.resolve("duskline.db"));
        FindingLog findings = new FindingLog(store);
        findings.keep(InventedFindings.all(), 1, (handle, changes) -> {});
        answers = AnswerLog.open(store);
        visits = VisitLog.open(store);
        deliveries = Deliveries.open(
                store,
                new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty()),
                () -> now,
                new Random(1));
        Door door = Door.open(store, () -> now);
        if (!open) {
            door.makeOwner("Ida", PASSWORD);
        }
        InventedLine line = new InventedLine(InventedLine.Mood.BUSY, Optional.of(answers));
        Part part = new AnswerPages(line, findings, answers, visits, deliveries.links(), () -> now);
        builder = () -> new Pages(line, new Entrance(door, open, false), () -> now, List.of(part));
        pages = builder.get();
        port = pages.start("127.0.0.1", 0);
    }

    void pass(Duration time) {
        now = now.plus(time);
    }

    /** Nobody answers any more at the port. */
    void shut() {
        pages.stop();
    }

    /** It answers again, at the same port and over the same records. */
    void reopen() {
        pages = builder.get();
        pages.start("127.0.0.1", port);
    }

    /** The text of a link as it stands in a message to Oda, good for three days. */
    String link(Finding finding) {
        return deliveries
                .links()
                .issue(new AnswerLink.Claim(
                        "Oda", finding.trap(), finding.kind(), finding.onset(), now.plus(Duration.ofDays(3))));
    }

    @Override
    public void close() {
        pages.stop();
        deliveries.close();
        store.close();
    }
}
