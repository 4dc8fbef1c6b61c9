package org.duskline.web.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Person;
import org.duskline.web.page.board.Habits;

/** The pages as the service wires them, over the invented line, with records of their own on disk. */
final class InventedParts {
    private InventedParts() {}

    static Pages pages(InventedLine line) {
        return pages(line, visits());
    }

    static Pages pages(InventedLine line, VisitLog visits) {
        Store store = store();
        Deliveries deliveries = deliveries(store);
        return new Pages(
                line,
                OpenHouse.ENTRANCE,
                () -> InventedLine.NOW,
                List.of(
                        people(line, deliveries),
                        answers(line, store, deliveries),
                        stories(line, store),
                        whys(line),
                        new VisitPages(line, visits, () -> InventedLine.NOW),
                        new SheetFiles(line, Habits.USUAL),
                        new NodePages(new InventedNodes())));
    }

    /** A log in which one visit stands. */
    static VisitLog visits() {
        VisitLog visits = VisitLog.open(store());
        visits.record(
                Visit.of("Tern Bank", VisitKind.LOOKED, InventedLine.NOW.minusSeconds(86_400), "the keeper"),
                InventedLine.NOW.minusSeconds(80_000),
                Optional.empty());
        return visits;
    }

    private static Store store() {
        try {
            Path folder = Files.createTempDirectory("records");
            folder.toFile().deleteOnExit();
            return Store.open(folder.resolve("records.db"));
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static Deliveries deliveries(Store store) {
        var equipment = new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty());
        return Deliveries.open(store, equipment, () -> InventedLine.NOW, new Random(1));
    }

    /** A node has hung in one trap, and was never heard. */
    private static Part whys(InventedLine line) {
        Store store = store();
        store.line().put(new Trap("Tern Bank", 46.98, 15.1, InventedLine.ZONE));
        store.line().put(new Fitting("n16", "Tern Bank", Fitted.BOTH, Instant.MIN, Instant.MAX));
        return new WhyPages(line, store, new FindingLog(store), ThresholdBook.open(store));
    }

    private static Part answers(InventedLine line, Store store, Deliveries deliveries) {
        FindingLog findings = new FindingLog(store);
        findings.keep(InventedFindings.all(), 1, deliveries);
        deliveries.round();
        return new AnswerPages(
                line,
                findings,
                AnswerLog.open(store),
                VisitLog.open(store),
                deliveries.links(),
                () -> InventedLine.NOW);
    }

    private static Part stories(InventedLine line, Store store) {
        return new StoryPages(
                line, new FindingLog(store), AnswerLog.open(store), ThresholdBook.open(store), () -> InventedLine.NOW);
    }

    /** Oda has a way by which nothing gets through, and one by which everything does. */
    private static Part people(InventedLine line, Deliveries deliveries) {
        Person oda = deliveries.book().add("Oda", InventedLine.ZONE, Optional.empty());
        deliveries.book().add(oda, Means.EMAIL, "oda@line.example", "", AddressBook.USUAL_KINDS);
        deliveries.book().add(oda, Means.LOG, "", "", AddressBook.USUAL_KINDS);
        return new PeoplePages(line, deliveries, OpenHouse.ENTRANCE.door(), () -> InventedLine.NOW);
    }
}
