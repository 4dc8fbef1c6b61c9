package org.duskline.web.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Person;

/** The pages as the service wires them, over the invented line, with records of their own on disk. */
final class InventedParts {
    private InventedParts() {}

    static Pages pages(InventedLine line) {
        try {
            Path folder = Files.createTempDirectory("records");
            folder.toFile().deleteOnExit();
            Store store = Store.open(folder.resolve("records.db"));
            Deliveries deliveries = deliveries(store);
            return new Pages(
                    line,
                    OpenHouse.ENTRANCE,
                    () -> InventedLine.NOW,
                    List.of(
                            people(line, deliveries),
                            answers(line, store, deliveries),
                            new NodePages(new InventedNodes())));
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }

    private static Deliveries deliveries(Store store) {
        var equipment = new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty());
        return Deliveries.open(store, equipment, () -> InventedLine.NOW, new Random(1));
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

    /** Oda has a way by which nothing gets through, and one by which everything does. */
    private static Part people(InventedLine line, Deliveries deliveries) {
        Person oda = deliveries.book().add("Oda", InventedLine.ZONE, Optional.empty());
        deliveries.book().add(oda, Means.EMAIL, "oda@line.example", "", AddressBook.USUAL_KINDS);
        deliveries.book().add(oda, Means.LOG, "", "", AddressBook.USUAL_KINDS);
        return new PeoplePages(line, deliveries, OpenHouse.ENTRANCE.door(), () -> InventedLine.NOW);
    }
}
