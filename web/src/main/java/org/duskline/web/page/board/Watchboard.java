package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/**
 * The read side of the program as the pages need it. Answers come from what is stored; nothing here changes anything.
 * Called from many threads at once.
 *
 * <p>Every method throws {@link BoardUnavailable} when the stored data can't be read.
 */
public interface Watchboard {
    /** The line as it is now: every trap in the order of its name, heard or not. */
    LineOverview line();

    /** Tonight's evening sheet. */
    Tonight tonight();

    /** One trap; empty when the line has none of that name. */
    Optional<TrapDetail> trap(String name);

    /** What somebody sees who stands at a trap now; empty when the line has none of that name. */
    Optional<Doorstep> doorstep(String name);

    /** Hands over the trap's points from {@code from} to before {@code until}, in time order. */
    void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points);

    /** The nights at the trap that touch the span, in time order. */
    List<Night> nights(Trap trap, Instant from, Instant until);

    /** The findings raised from {@code since} on, the last raised first, at most {@code limit}. */
    List<Finding> findings(Instant since, int limit);
}
