package org.duskline.analyzer.watch;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.Forecast;
import org.duskline.analyzer.detect.Nuisance;
import org.duskline.analyzer.detect.ScoutCase;
import org.duskline.analyzer.detect.Stuck;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Fitted;

/** One trap's state as a fold over its samples in time order: what must be remembered from one sample to the next. */
final class TrapFold {
    private static final long HOUR = 3_600_000L;
    /** Log odds from which on scouts are told; own choice. */
    static final double SCOUT_ODDS = Math.log(4);

    /** From this chance of a swarm within a day on a keeper is told again; own choice. */
    private static final double KEEP_THE_EVENING_FREE = 0.3;

    private final Fitted fitted;
    private final Occupancy occupancy;
    private final Robbing robbing;
    private final Map<Kind, Spell> spells;
    private long foldedUntil = Long.MIN_VALUE;
    private long disturbedAt = Long.MIN_VALUE / 2;
    private double saidChance;

    TrapFold(Fitted fitted) {
        this(fitted, new Occupancy(fitted), new Robbing(fitted), new EnumMap<>(Kind.class));
    }

    private TrapFold(Fitted fitted, Occupancy occupancy, Robbing robbing, Map<Kind, Spell> spells) {
        this.fitted = fitted;
        this.occupancy = occupancy;
        this.robbing = robbing;
        this.spells = spells;
    }

    TrapFold copy() {
        TrapFold copy = new TrapFold(fitted, occupancy.copy(), robbing.copy(), new EnumMap<>(Kind.class));
        copy.spells.putAll(spells);
        copy.foldedUntil = foldedUntil;
        copy.disturbedAt = disturbedAt;
        copy.saidChance = saidChance;
        return copy;
    }

    /** Time of the last sample folded in, Unix milliseconds. */
    long foldedUntil() {
        return foldedUntil;
    }

    Occupancy occupancy() {
        return occupancy;
    }

    /** Whether a spell of that kind is on at the last sample. */
    boolean on(Kind kind) {
        Spell spell = spells.get(kind);
        return spell != null && spell.on();
    }

    Robbing robbing() {
        return robbing;
    }

    void step(TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        foldedUntil = series.timeMillis(at);
        occupancy.step(series, at, disturbedAt, thresholds, surroundings, out);
        if (fitted.hasScale()) {
            scale(series, at, surroundings, out);
        }
        visitors(series, at, thresholds, surroundings, out);
        battery(series, at, thresholds, out);
    }

    private void scale(TrapSeries series, int at, Surroundings surroundings, List<Signal> out) {
        Optional<Nuisance> disturbed = Nuisance.disturbed(series, at);
        if (disturbed.isPresent()) {
            disturbedAt = series.timeMillis(at);
        }
        spell(Kind.DISTURBED, disturbed, 2 * HOUR, series.timeMillis(at), out);
        boolean handled = foldedUntil - disturbedAt < HOUR;
        spell(Kind.TARE_SHIFT, handled ? Optional.empty() : Nuisance.tareShift(series, at), HOUR, foldedUntil, out);
        spell(
                Kind.SOAKED,
                settling(foldedUntil) ? Optional.empty() : Nuisance.soaked(series, at, surroundings),
                12 * HOUR,
                series.timeMillis(at),
                out);
        if (series.timeMillis(at) / HOUR != (at == 0 ? 0 : series.timeMillis(at - 1) / HOUR)) {
            spell(Kind.LODGER, Nuisance.perching(series, at), 72 * HOUR, series.timeMillis(at), out);
            boolean stuck = Stuck.weight(series, at) && stuckFor(series, at) > 3 * HOUR;
            spell(
                    Kind.FAULTY,
                    stuck
                            ? Optional.of(new Nuisance(
                                    Kind.FAULTY, foldedUntil - 3 * HOUR, "the scale has said the same for %s hours", 3))
                            : Optional.empty(),
                    24 * HOUR,
                    series.timeMillis(at),
                    out);
        }
    }

    /** Whether the last hours' gain is a swarm's. */
    private boolean settling(long now) {
        return occupancy.occupied() && now - occupancy.onsetMillis() < 5 * HOUR;
    }

    private static long stuckFor(TrapSeries series, int at) {
        double last = series.value(Quantity.WEIGHT, at);
        int i = at;
        while (i > 0
                && (series.value(Quantity.WEIGHT, i - 1) == last
                        || Double.isNaN(series.value(Quantity.WEIGHT, i - 1)))) {
            i--;
        }
        return series.timeMillis(at) - series.timeMillis(i);
    }

    private void spell(Kind kind, Optional<Nuisance> seen, long lastingMillis, long now, List<Signal> out) {
        Spell before = spells.getOrDefault(kind, Spell.none());
        if (seen.isPresent()) {
            if (!before.on()) {
                out.add(Signal.plain(
                        kind,
                        Stage.RAISED,
                        seen.get().onsetMillis(),
                        now,
                        sentence(seen.get().said())));
            }
            spells.put(kind, new Spell(before.on() ? before.onset() : seen.get().onsetMillis(), now));
        } else if (before.on() && now - before.lastSeen() > lastingMillis) {
            out.add(Signal.plain(kind, Stage.ENDED, before.onset(), now, "It is over"));
            spells.put(kind, Spell.none());
        }
    }

    private static String sentence(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private void visitors(
            TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        if (occupancy.occupied() || foldedUntil - occupancy.emptiedAt() < 30 * HOUR) {
            close(Kind.SCOUTING, foldedUntil, "A swarm has taken the trap", out);
            robbing.lived(foldedUntil, out);
            return;
        }
        robbing.step(series, at, occupancy.emptiedAt(), thresholds, surroundings, out);
        if (fitted.hasCounter()) {
            Optional<ScoutCase> scouts = ScoutCase.at(series, at, occupancy.emptiedAt(), thresholds, surroundings);
            scouting(scouts.filter(found -> found.logOdds() > SCOUT_ODDS), series, at, out);
        }
    }

    private void scouting(Optional<ScoutCase> seen, TrapSeries series, int at, List<Signal> out) {
        long now = series.timeMillis(at);
        Spell before = spells.getOrDefault(Kind.SCOUTING, Spell.none());
        boolean passForRobbers = !before.on() && robbing.counted(now);
        if (seen.isPresent() && !passForRobbers) {
            ScoutCase scouts = seen.get();
            if (!before.on()) {
                Forecast forecast = Forecast.at(series, at);
                saidChance = forecast.within24Hours();
                out.add(scouts(scouts, Stage.RAISED, scouts.onsetMillis(), now, forecast));
            } else if (before.on() && now / HOUR != series.timeMillis(at - 1) / HOUR) {
                more(scouts, before.onset(), series, at, out);
            }
            spells.put(Kind.SCOUTING, new Spell(before.on() ? before.onset() : scouts.onsetMillis(), now));
        } else if (before.on() && now - before.lastSeen() > 18 * HOUR) {
            close(Kind.SCOUTING, now, "No scouts for most of a day", out);
        }
    }

    /** Says once more when the chance of a swarm has clearly risen since it was said. */
    private void more(ScoutCase scouts, long onset, TrapSeries series, int at, List<Signal> out) {
        Forecast forecast = Forecast.at(series, at);
        if (forecast.within24Hours() > Math.max(KEEP_THE_EVENING_FREE, 1.5 * saidChance)) {
            saidChance = forecast.within24Hours();
            out.add(scouts(scouts, Stage.STRENGTHENED, onset, series.timeMillis(at), forecast));
        }
    }

    private static Signal scouts(ScoutCase scouts, Stage stage, long onset, long now, Forecast forecast) {
        return new Signal(
                Kind.SCOUTING,
                stage,
                onset,
                now,
                1 / (1 + Math.exp(-scouts.logOdds())),
                String.format(
                        Locale.ROOT,
                        "Scouts at the entrance: %.1f crossings a minute for half an hour; %s",
                        scouts.perMinute(),
                        forecast.said()),
                scouts.evidence(),
                scouts.rivals(),
                Optional.empty());
    }

    private void close(Kind kind, long now, String why, List<Signal> out) {
        Spell before = spells.getOrDefault(kind, Spell.none());
        if (before.on()) {
            out.add(Signal.plain(kind, Stage.ENDED, before.onset(), now, why));
            spells.put(kind, Spell.none());
        }
    }

    private void battery(TrapSeries series, int at, Thresholds thresholds, List<Signal> out) {
        double volts = series.value(Quantity.BATTERY, at);
        if (Double.isNaN(volts)) {
            return;
        }
        double usual = volts < thresholds.batteryVolts() ? series.median(Quantity.BATTERY, at - 20, at) : volts;
        Optional<Nuisance> low = usual < thresholds.batteryVolts()
                ? Optional.of(new Nuisance(Kind.BATTERY_LOW, foldedUntil, "the battery is down to %.2f V", usual))
                : Optional.empty();
        spell(Kind.BATTERY_LOW, low, 48 * HOUR, foldedUntil, out);
    }

    /**
     * A stretch in which a kind of thing goes on.
     *
     * @param onset when it began
     * @param lastSeen when it was last seen; {@link Long#MIN_VALUE} while it is off
     */
    record Spell(long onset, long lastSeen) {
        static Spell none() {
            return new Spell(0, Long.MIN_VALUE);
        }

        boolean on() {
            return lastSeen != Long.MIN_VALUE;
        }
    }
}
