package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.collector.trap.Trap;

/** The curves of the line's traps, and the nights that lie over them. Throws {@link BoardUnavailable} as the board does. */
public interface TrapCurves {
    /** Hands over the trap's points from {@code from} to before {@code until}, in time order. */
    void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points);

    /** The nights at the trap that touch the span, in time order. */
    List<Night> nights(Trap trap, Instant from, Instant until);
}
