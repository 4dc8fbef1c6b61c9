package org.duskline.analyzer.replay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.stats.Interval;

/**
 * The thresholds that would have cost the keeper least, and whether to believe it. Searched coordinate by coordinate over
 * a small grid; judged case by case (one answered finding each) against those in force. The search only ever sees the
 * other folds' cases when a fold's saving is counted, so the saving is that on answers it was not fitted to.
 *
 * @param thresholds what to adopt; those in force where the data do not support a change
 * @param supported whether the interval of the held-out saving lies above zero
 * @param saving mean cost saved a case on held-out answers; NaN if there are too few
 * @param interval 90 % of it, by bootstrap over the cases
 * @param cases how many answers this rests on
 * @param words the same for the keeper
 */
public record Suggestion(
        Thresholds thresholds, boolean supported, double saving, Interval interval, int cases, String words) {
    /** With fewer answers nothing can be held out. */
    public static final int FEWEST = 6;

    /** About how many sets a search tries. */
    public static final int USUAL_SETS = 24;

    private static final int FOLDS = 3;
    private static final int DRAWS = 2000;
    private static final double[] ODDS = {5, 10, 20, 40, 80, 160, 400};
    private static final double[] SWARM_KG = {0.15, 0.25, 0.4, 0.6, 0.8};

    /**
     * Searches.
     *
     * @param now the thresholds in force
     * @param costs what each answered case costs under thresholds, always in the same order
     * @param ballast mean cost a case of seasons whose truth is known, so that few answers cannot bend the choice; 0 for
     *     none
     * @param ballastCases how many answers the ballast weighs as much as
     * @param ballastSwarms how many swarms it rests on, for the words
     * @param seed of the draws
     */
    public static Suggestion search(
            Thresholds now,
            Function<Thresholds, double[]> costs,
            Function<Thresholds, Double> ballast,
            double ballastCases,
            int ballastSwarms,
            long seed,
            BooleanSupplier cancelled) {
        Search search = new Search(costs, ballast, ballastCases, cancelled);
        double[] before = search.costs(now);
        int cases = before.length;
        if (cases < FEWEST) {
            return new Suggestion(
                    now,
                    false,
                    Double.NaN,
                    new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY),
                    cases,
                    "The data do not support a change: " + cases + (cases == 1 ? " answer" : " answers")
                            + " to move-ins, and at least " + FEWEST + " are needed to hold some back as a test.");
        }
        double[] saved = new double[cases];
        for (int fold = 0; fold < FOLDS; fold++) {
            Thresholds found = search.best(now, fold);
            double[] after = search.costs(found);
            for (int i = fold; i < cases; i += FOLDS) {
                saved[i] = before[i] - after[i];
            }
        }
        Interval interval = bootstrap(saved, seed);
        Thresholds best = search.best(now, FOLDS);
        boolean supported = interval.low() > 0 && !best.equals(now);
        double mean = Arrays.stream(saved).average().orElse(Double.NaN);
        String held = "On answers held back "
                + (mean >= 0 ? "it saves " + rounded(mean) : "it costs " + rounded(-mean) + " more")
                + " an answer (90 % between " + rounded(mean >= 0 ? interval.low() : -interval.high()) + " and "
                + rounded(mean >= 0 ? interval.high() : -interval.low())
                + "), from "
                + cases + " answers with " + ballastSwarms + " swarms of synthetic seasons as ballast.";
        String words;
        if (supported) {
            words = String.join("; ", ThresholdText.difference(now, best)) + ". " + held;
        } else if (best.equals(now)) {
            words = "Nothing that was tried would have cost less than what holds now, on " + cases + " answers with "
                    + ballastSwarms + " swarms of synthetic seasons as ballast.";
        } else {
            words = "The data do not support a change. The cheapest would be "
                    + String.join("; ", ThresholdText.difference(now, best)) + ", but it might as well be chance. "
                    + held;
        }
        return new Suggestion(supported ? best : now, supported, mean, interval, cases, words);
    }

    private static double rounded(double value) {
        return Math.round(value * 100) / 100.0;
    }

    private static Interval bootstrap(double[] saved, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double[] means = new double[DRAWS];
        for (int draw = 0; draw < DRAWS; draw++) {
            double sum = 0;
            for (int i = 0; i < saved.length; i++) {
                sum += saved[dice.nextInt(saved.length)];
            }
            means[draw] = sum / saved.length;
        }
        Arrays.sort(means);
        return new Interval(means[DRAWS / 20], means[DRAWS - 1 - DRAWS / 20]);
    }

    /** Remembers what was run already: a run over a season is dear. */
    private static final class Search {
        private final Function<Thresholds, double[]> costs;
        private final Function<Thresholds, Double> ballast;
        private final double ballastCases;
        private final BooleanSupplier cancelled;
        private final Map<Thresholds, double[]> known = new HashMap<>();
        private final Map<Thresholds, Double> knownBallast = new HashMap<>();

        Search(
                Function<Thresholds, double[]> costs,
                Function<Thresholds, Double> ballast,
                double ballastCases,
                BooleanSupplier cancelled) {
            this.costs = costs;
            this.ballast = ballast;
            this.ballastCases = ballastCases;
            this.cancelled = cancelled;
        }

        double[] costs(Thresholds thresholds) {
            if (cancelled.getAsBoolean()) {
                throw new CancellationException("The search was cancelled; nothing was changed.");
            }
            return known.computeIfAbsent(thresholds, costs);
        }

        /** The best without the cases of one fold; a change must be cheaper, a tie stays with what is in force. */
        Thresholds best(Thresholds now, int without) {
            Thresholds best = now;
            for (Thresholds other : odds(best)) {
                best = total(other, without) < total(best, without) ? other : best;
            }
            for (Thresholds other : swarms(best)) {
                best = total(other, without) < total(best, without) ? other : best;
            }
            return best;
        }

        private double total(Thresholds thresholds, int without) {
            double[] all = costs(thresholds);
            double sum = ballastCases * knownBallast.computeIfAbsent(thresholds, ballast);
            for (int i = 0; i < all.length; i++) {
                if (without == FOLDS || i % FOLDS != without) {
                    sum += all[i];
                }
            }
            return sum;
        }

        private static List<Thresholds> odds(Thresholds from) {
            List<Thresholds> grid = new ArrayList<>();
            for (double odds : ODDS) {
                grid.add(ThresholdText.read("{\"moveInOdds\": " + odds + "}", from));
            }
            return grid;
        }

        private static List<Thresholds> swarms(Thresholds from) {
            List<Thresholds> grid = new ArrayList<>();
            for (double kilograms : SWARM_KG) {
                grid.add(ThresholdText.read("{\"smallestSwarmKg\": " + kilograms + "}", from));
            }
            return grid;
        }
    }
}
