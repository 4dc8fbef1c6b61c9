package org.duskline.web.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.web.page.board.Habits;

/** The pages as the service wires them, over the invented line, with a visit log of their own on disk. */
final class InventedParts {
    private InventedParts() {}

    static Pages pages(InventedLine line) {
        return pages(line, visits());
    }

    static Pages pages(InventedLine line, VisitLog visits) {
        List<Part> parts =
                List.of(new VisitPages(line, visits, () -> InventedLine.NOW), new SheetFiles(line, Habits.USUAL));
        return new Pages(line, OpenHouse.ENTRANCE, () -> InventedLine.NOW, parts);
    }

    /** A log in which one visit stands. */
    static VisitLog visits() {
        try {
            Path folder = Files.createTempDirectory("visits");
            folder.toFile().deleteOnExit();
            VisitLog visits = VisitLog.open(Store.open(folder.resolve("visits.db")));
            visits.record(
                    Visit.of("Tern Bank", VisitKind.LOOKED, InventedLine.NOW.minusSeconds(86_400), "the keeper"),
                    InventedLine.NOW.minusSeconds(80_000),
                    Optional.empty());
            return visits;
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }
}
