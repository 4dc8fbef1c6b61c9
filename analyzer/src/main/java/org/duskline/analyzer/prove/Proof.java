package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;

/** Plays seasons and judges them: the entry of the proving ground. */
public final class Proof {
    /** Told how far the work has come. */
    @FunctionalInterface
    public interface Progress {
        /**
         * @param done share of the whole, 0 to 1
         * @param doing what is being done now
         */
        void at(double done, String doing);
    }

    private final ProofSize size;
    private final long firstSeed;
    private final List<Level> levels;
    private final Thresholds thresholds;
    private final boolean ablating;

    /**
     * @param firstSeed the first season's seed; the others follow it
     * @param levels which levels are played
     * @param thresholds what detection runs on
     * @param ablating whether each season is also watched without one kind of evidence at a time
     */
    public Proof(ProofSize size, long firstSeed, List<Level> levels, Thresholds thresholds, boolean ablating) {
        this.ablating = ablating;
        this.size = size;
        this.firstSeed = firstSeed;
        this.levels = List.copyOf(levels);
        this.thresholds = thresholds;
    }

    /** Plays everything, one season at a time. */
    public ProofResult run(Progress progress) {
        List<JudgedTrap> judged = new ArrayList<>();
        List<Outcome> foretold = new ArrayList<>();
        List<DrawnMistake> drawn = new ArrayList<>();
        Ablation ablation = new Ablation();
        Map<Double, List<JudgedTrap>> byOdds = new TreeMap<>();
        int all = levels.size() * size.seasons();
        int done = 0;
        for (int i = 0; i < size.seasons(); i++) {
            for (Level level : levels) {
                Season season = Season.of(firstSeed + i, level, size.days(), size.traps());
                String doing = level.wireName() + " season " + (firstSeed + i);
                double before = done;
                try (PlayedSeason played = new PlayedSeason(
                        season, share -> progress.at((before + share / 2) / all, "reading " + doing))) {
                    Watching watching = played.watch(
                            thresholds,
                            Set.of(),
                            false,
                            share -> progress.at((before + 0.5 + share / 2) / all, "watching " + doing));
                    judged.addAll(played.judge(watching.first()));
                    foretold.addAll(Outcome.of(watching.forecasts(), played.truth()));
                    drawn.addAll(played.mistakes(watching, doing));
                    if (ablating) {
                        ablation.add(played, thresholds);
                    }
                    for (double odds : size.odds()) {
                        List<JudgedTrap> other = played.judge(played.fold(withOdds(odds), share -> {}));
                        byOdds.computeIfAbsent(odds, o -> new ArrayList<>()).addAll(other);
                    }
                }
                done++;
                progress.at((double) done / all, doing);
            }
        }
        return new ProofResult(
                size, firstSeed, judged, byOdds, foretold, drawn, ablating ? Optional.of(ablation) : Optional.empty());
    }

    private Thresholds withOdds(double odds) {
        return new Thresholds(
                thresholds.smallestSwarmKg(),
                odds,
                thresholds.scoutsPerMinute(),
                thresholds.robbersPerMinute(),
                thresholds.flightCelsius(),
                thresholds.unheardHours(),
                thresholds.batteryVolts());
    }
}
