package org.duskline.web.picture;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.TrapCurves;

/** An invented afternoon: two bees a minute, and from the onset on for half an hour 240 inward, 40 outward, and 1.4 kg. */
public final class InventedRush implements TrapCurves {
    public static final Trap TRAP = new Trap("Mill Race", 47.5, 14.5, ZoneId.of("Europe/Vienna"));
    public static final Instant ONSET = Instant.parse("2026-05-12T11:04:00Z");

    private static final long MINUTE = 60_000;

    private final boolean counted;
    private final boolean weighed;

    public InventedRush() {
        this(true, true);
    }

    InventedRush(boolean counted, boolean weighed) {
        this.counted = counted;
        this.weighed = weighed;
    }

    @Override
    public void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points) {
        for (long time = from.toEpochMilli(); time < until.toEpochMilli(); time += 2 * MINUTE) {
            double minutes = (time - ONSET.toEpochMilli()) / (double) MINUTE;
            boolean rush = minutes >= 0 && minutes < 30;
            points.accept(new CurvePoint(
                    time,
                    2,
                    counted ? rush ? 240 : 2 : Double.NaN,
                    counted ? rush ? 40 : 2 : Double.NaN,
                    weighed ? 9.4 + 1.4 * Math.max(0, Math.min(1, minutes / 30)) : Double.NaN,
                    Double.NaN,
                    20,
                    20));
        }
    }

    @Override
    public List<Night> nights(Trap trap, Instant from, Instant until) {
        return List.of();
    }
}
