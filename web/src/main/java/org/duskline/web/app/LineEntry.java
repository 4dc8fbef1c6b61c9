package org.duskline.web.app;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.store.LineBook;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.LineOfTraps;

/** Enters a line file into the line book without undoing what the keeper has entered since by day. */
final class LineEntry {
    private LineEntry() {}

    /**
     * Traps are entered or corrected. A node that the book doesn't know hangs in its trap from the beginning, so that
     * everything it ever sent counts; one that hangs elsewhere now has been moved, from this moment on.
     */
    static void enter(LineOfTraps line, LineBook book, Instant now) {
        List<Fitting> fresh = new ArrayList<>();
        for (LineOfTraps.Place place : line.places()) {
            List<Fitting> known = book.fittingsOf(place.node());
            Optional<Fitting> current =
                    known.stream().filter(fitting -> fitting.covers(now)).findFirst();
            if (current.filter(fitting -> says(fitting, place)).isEmpty()) {
                Instant from = known.isEmpty() ? Instant.MIN : now;
                fresh.add(new Fitting(place.node(), place.trap().name(), place.fitted(), from, Instant.MAX));
            }
        }
        book.put(line.traps(), fresh);
        line.places().forEach(place -> place.counter().ifPresent(block -> enter(block, book, now)));
    }

    /** The first word about a counter holds for all of its past, another one from this moment on. */
    private static void enter(LaneBlock said, LineBook book, Instant now) {
        Optional<LaneBlock> known = book.keptLaneBlock(said.node());
        boolean same = known.filter(block ->
                        block.lanes() == said.lanes() && block.deadTime().equals(said.deadTime()))
                .isPresent();
        if (!same) {
            Instant from = known.isEmpty() ? Instant.MIN : now;
            book.put(new LaneBlock(said.node(), from, said.lanes(), said.deadTime()));
        }
    }

    private static boolean says(Fitting fitting, LineOfTraps.Place place) {
        return fitting.trap().equals(place.trap().name()) && fitting.fitted() == place.fitted();
    }
}
