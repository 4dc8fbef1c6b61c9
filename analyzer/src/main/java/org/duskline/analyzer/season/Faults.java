package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskline.analyzer.season.TrapTruth.Fault;
import org.duskline.collector.trap.Fitted;

/** What sensors do wrong at one trap over the season. How often is invented; the kinds are what keepers meet. */
final class Faults {
    private final List<Fault> all = new ArrayList<>();
    private final World world;
    private final Dice dice;
    private final double often;

    Faults(World world, Dice dice, Level level, Fitted fitted, double until) {
        this.world = world;
        this.dice = dice;
        this.often = level.faults();
        if (fitted.hasScale()) {
            // A loose plug jumps in one sample without a bee; some jumps go back by themselves.
            for (double t : dice.moments(world.startSecond(), until, 0.012 * often)) {
                double kg = dice.lognormal(0.35, 0.9, 0.03, 4) * (dice.chance(0.5) ? 1 : -1);
                all.add(new Fault("tare_jump", t, t, kg, Double.NaN));
                if (dice.chance(0.4)) {
                    double back = t + dice.lognormal(5 * 3600, 1.4, 300, 10 * 86400);
                    all.add(new Fault("tare_jump", back, back, -kg, Double.NaN));
                }
            }
            for (double t : dice.moments(world.startSecond(), until, 0.05 * often)) {
                all.add(new Fault("spike", t, t, spike(), Double.NaN));
            }
            lasting("stuck_weight", 0.003, 5 * 3600, until);
            lasting("saturated", 0.0015, 3 * 3600, until);
        }
        if (fitted.hasCounter()) {
            for (double t : dice.moments(world.startSecond(), until, 0.008 * often)) {
                all.add(new Fault("counter_dip", t, t, Double.NaN, Double.NaN));
            }
            lasting("blocked_lane", 0.004, 60 * 3600, until);
            lasting("blocked_counter", 0.001, 8 * 3600, until);
            lasting("stuck_high_lane", 0.003, 2 * 3600, until);
        }
        for (double t : dice.moments(world.startSecond(), until, 0.01 * often)) {
            all.add(new Fault("absurd_temperature", t, t, Double.NaN, Double.NaN));
        }
        if (dice.chance(Math.min(0.3, 0.03 * often))) {
            all.add(new Fault("died", dice.uniform(until - 30 * 86400, until), until, Double.NaN, Double.NaN));
        }
        all.sort(Comparator.comparingDouble(Fault::start));
    }

    private double spike() {
        return switch (dice.whole(0, 4)) {
            case 0 -> 0;
            case 1 -> dice.uniform(-200, -5);
            case 2 -> dice.uniform(20, 400);
            case 3 -> 8388.607;
            default -> dice.gauss(0, 6);
        };
    }

    private void lasting(String kind, double perDay, double seconds, double until) {
        for (double t : dice.moments(world.startSecond(), until, perDay * often)) {
            double end = Math.min(until, t + dice.lognormal(seconds, 0.9, 1200, 20 * 86400));
            double rate = kind.equals("stuck_high_lane") ? dice.lognormal(40, 1, 3, 400) : Double.NaN;
            all.add(new Fault(kind, t, end, Double.NaN, rate));
        }
    }

    List<Fault> truth() {
        return List.copyOf(all);
    }

    Fault firstWithin(String kind, double after, double until) {
        for (Fault fault : all) {
            if (fault.start() > after && fault.start() <= until && fault.kind().equals(kind)) {
                return fault;
            }
        }
        return null;
    }

    Fault covering(String kind, double t) {
        for (Fault fault : all) {
            if (fault.covers(t) && fault.kind().equals(kind)) {
                return fault;
            }
        }
        return null;
    }

    double diedAt() {
        return all.stream()
                .filter(f -> f.kind().equals("died"))
                .mapToDouble(Fault::start)
                .findFirst()
                .orElse(Double.MAX_VALUE);
    }
}
