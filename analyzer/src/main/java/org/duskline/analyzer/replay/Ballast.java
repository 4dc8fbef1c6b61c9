package org.duskline.analyzer.replay;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.prove.PlayedSeason;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.season.Truth;

/**
 * Seasons of ordinary lines whose truth is known, kept in memory: what thresholds cost there keeps a few answers from
 * bending them out of shape.
 */
public final class Ballast {
    private static final long USUAL_SEED = 7001;
    private static final double BEFORE_SECONDS = 3600;
    private static final double AFTER_SECONDS = 3 * 3600;

    private record Line(Past past, Truth truth) {}

    private final List<Line> lines = new ArrayList<>();

    private Ballast() {}

    /** As much as an ordinary search wants: three seasons of four traps over forty days, always the same. */
    public static Ballast usual(DoubleConsumer progress, BooleanSupplier cancelled) {
        return of(USUAL_SEED, 3, 40, 4, progress, cancelled);
    }

    /**
     * Makes seasons.
     *
     * @param seed of the first; the others follow it
     * @param progress told the share that is made, 0 to 1
     */
    public static Ballast of(
            long seed, int seasons, int days, int traps, DoubleConsumer progress, BooleanSupplier cancelled) {
        Ballast ballast = new Ballast();
        for (int i = 0; i < seasons; i++) {
            double before = i;
            if (cancelled.getAsBoolean()) {
                throw new CancellationException("The search was cancelled; nothing was changed.");
            }
            ballast.add(
                    Season.of(seed + i, Level.TYPICAL, days, traps),
                    done -> progress.accept((before + done) / seasons));
        }
        return ballast;
    }

    /** Takes one season more, of whatever kind. */
    void add(Season season, DoubleConsumer progress) {
        try (PlayedSeason played = new PlayedSeason(season, progress)) {
            lines.add(new Line(Past.read(played.store()), played.truth()));
        }
    }

    /** How many swarms moved in and were heard to. */
    public int arrivals() {
        return (int) lines.stream()
                .flatMap(line -> line.truth().traps().stream())
                .flatMap(trap -> trap.arrivals().stream())
                .filter(Ballast::heard)
                .count();
    }

    private static boolean heard(TrapTruth.Arrival arrival) {
        return !Double.isNaN(arrival.heardHalf());
    }

    /** What thresholds cost on all of it, false alarms and all, for each swarm that moved in. */
    public double costPerArrival(Thresholds thresholds, Cost cost) {
        double sum = 0;
        for (Line line : lines) {
            Played played = new Replay(line.past()).run(thresholds);
            for (TrapTruth trap : line.truth().traps()) {
                sum += cost(trap, played, cost);
            }
        }
        return sum / Math.max(1, arrivals());
    }

    private static double cost(TrapTruth trap, Played played, Cost cost) {
        List<Told> told = new ArrayList<>(played.told().stream()
                .filter(one -> one.kind() == Kind.MOVE_IN && one.trap().equals(trap.trap()))
                .toList());
        double sum = 0;
        for (TrapTruth.Arrival arrival : trap.arrivals()) {
            List<Told> fitting = told.stream().filter(one -> fits(one, arrival)).toList();
            told.removeAll(fitting);
            if (heard(arrival)) {
                sum += fitting.isEmpty()
                        ? cost.missedSwarm()
                        : cost.late((fitting.get(0).first().raised().getEpochSecond() - arrival.half()) / 3600);
            }
        }
        return sum + cost.wastedDrive() * told.size();
    }

    static boolean fits(Told told, TrapTruth.Arrival arrival) {
        long onset = told.onset().getEpochSecond();
        return onset >= arrival.start() - BEFORE_SECONDS && onset <= arrival.end() + AFTER_SECONDS;
    }
}
