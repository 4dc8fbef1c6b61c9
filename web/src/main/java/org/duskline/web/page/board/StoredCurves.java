package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Trap;

/** The curves as they are stored, for who needs nothing else of the board. */
public final class StoredCurves implements TrapCurves {
    private final StoredCurve curves;
    private final StoredNights nights;

    public StoredCurves(Store store) {
        this(new StoredCurve(store, new StoredDrift(store)), new StoredNights());
    }

    StoredCurves(StoredCurve curves, StoredNights nights) {
        this.curves = curves;
        this.nights = nights;
    }

    @Override
    public void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points) {
        StoreWatchboard.reading(() -> {
            curves.points(trap, from, until, points);
            return null;
        });
    }

    @Override
    public List<Night> nights(Trap trap, Instant from, Instant until) {
        return nights.of(trap, from, until);
    }
}
