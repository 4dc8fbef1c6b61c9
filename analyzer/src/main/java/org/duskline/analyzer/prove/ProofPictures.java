package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.duskline.analyzer.prove.Plot.Axis;
import org.duskline.analyzer.stats.ForecastScore;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.Proportion;

/** The pictures of a proof. */
final class ProofPictures {
    private static final List<String> FITTINGS = List.of("both", "scale", "counter");
    private static final int BINS = 10;

    private ProofPictures() {}

    /** Misses against false alarms as the odds threshold moves; a promise is a dashed corner. */
    static String tradeOff(Map<Double, Figures> byOdds) {
        Plot plot = new Plot(
                "What the odds threshold buys",
                new Axis("false move-ins per 100 trap-days", 0.005, 20, true, 0, 0.01, 0.02, 0.05, 0.1, 0.3, 1, 3, 10),
                new Axis("missed, % of heard", 0, 20, false, 0, 5, 10, 15, 20));
        for (int i = 0; i < FITTINGS.size(); i++) {
            String fitted = FITTINGS.get(i);
            List<double[]> points = new ArrayList<>();
            for (Map.Entry<Double, Figures> entry : byOdds.entrySet()) {
                Figures of = entry.getValue().only(t -> t.fitted().equals(fitted));
                if (of.caught() != null) {
                    points.add(new double[] {
                        of.falseMoveIns().estimate(), 100 * (1 - of.caught().estimate()), entry.getKey()
                    });
                }
            }
            Promise promise = Promise.of(fitted);
            double most = 100 * (1 - promise.caught());
            plot.curve(
                    i,
                    new double[] {0, promise.falseMoveIns(), promise.falseMoveIns()},
                    new double[] {most, most, 0},
                    true);
            plot.curve(i, column(points, 0), column(points, 1), false).key(i, fitted);
            mark(plot, i, points);
        }
        return plot.svg();
    }

    /** Thresholds that buy the same share a mark: a word each would lie upon the others. */
    private static void mark(Plot plot, int colour, List<double[]> points) {
        int[] markedAt = new int[points.size()];
        for (int i = 0; i < markedAt.length; i++) {
            markedAt[i] = i;
            for (int k = i - 1; k >= 0; k--) {
                if (markedAt[k] == k && plot.lookLikeOne(points.get(k), points.get(i))) {
                    markedAt[i] = k;
                }
            }
        }
        for (int i = 0; i < markedAt.length; i++) {
            if (markedAt[i] == i) {
                plot.point(colour, points.get(i)[0], points.get(i)[1], spans(points, markedAt, i));
            }
        }
    }

    /** Names only thresholds that lie there: "2, 10 to 300 : 1" where 5 : 1 lies elsewhere. */
    private static String spans(List<double[]> points, int[] markedAt, int mark) {
        List<String> spans = new ArrayList<>();
        for (int i = mark; i < markedAt.length; i++) {
            int first = i;
            while (i < markedAt.length && markedAt[i] == mark) {
                i++;
            }
            if (i > first) {
                spans.add(odds(points.get(first)) + (i - 1 > first ? " to " + odds(points.get(i - 1)) : ""));
            }
        }
        return String.join(", ", spans) + " : 1";
    }

    private static String odds(double[] point) {
        return String.format(Locale.ROOT, "%.0f", point[2]);
    }

    private static double[] column(List<double[]> points, int which) {
        return points.stream().mapToDouble(p -> p[which]).toArray();
    }

    /** Share of the caught swarms that were told within so many minutes of half being in. */
    static String delays(Figures figures) {
        Plot plot = new Plot(
                "How soon a move-in is told",
                new Axis("minutes from half in", -30, 120, false, -30, -15, 0, 15, 30, 60, 90, 120),
                new Axis("told by then, % of caught", 0, 100, false, 0, 25, 50, 75, 100));
        for (int i = 0; i < FITTINGS.size(); i++) {
            String fitted = FITTINGS.get(i);
            double[] sorted = figures.only(t -> t.fitted().equals(fitted)).delays();
            double[] xs = new double[2 * sorted.length];
            double[] ys = new double[2 * sorted.length];
            for (int k = 0; k < sorted.length; k++) {
                xs[2 * k] = sorted[k];
                xs[2 * k + 1] = sorted[k];
                ys[2 * k] = 100.0 * k / sorted.length;
                ys[2 * k + 1] = 100.0 * (k + 1) / sorted.length;
            }
            plot.curve(i, xs, ys, false).key(i, fitted + ", " + sorted.length + " swarms");
        }
        return plot.svg();
    }

    /** Said chance against what happened; on the dashed line the two agree. Bars are 95 % intervals. */
    static String reliability(Figures figures) {
        List<JudgedTrap.Certainty> all = figures.judged().stream()
                .flatMap(t -> t.certainties().stream())
                .filter(c -> c.said() >= 0 && c.said() <= 1)
                .toList();
        Plot plot = calibration("When a move-in says how sure it is", "was a swarm, %");
        if (!all.isEmpty()) {
            draw(plot, ForecastScore.of(said(all), right(all), BINS));
        }
        return plot.svg();
    }

    /** Chances of a swarm within a day against what came. */
    static String forecasts(ForecastScore score) {
        Plot plot = calibration("When scouts are told: a swarm within a day", "came, %");
        draw(plot, score);
        return plot.svg();
    }

    private static Plot calibration(String title, String happened) {
        Plot plot = new Plot(
                title,
                new Axis("said, %", 0, 100, false, 0, 25, 50, 75, 100),
                new Axis(happened, 0, 100, false, 0, 25, 50, 75, 100));
        return plot.curve(3, new double[] {0, 100}, new double[] {0, 100}, true);
    }

    private static void draw(Plot plot, ForecastScore score) {
        for (ForecastScore.Bin bin : score.bins()) {
            Proportion happened = bin.happened();
            Interval interval = happened.clopperPearson(0.95);
            double at = 100 * bin.meanChance();
            plot.curve(0, new double[] {at, at}, new double[] {100 * interval.low(), 100 * interval.high()}, false);
            plot.point(0, at, 100 * happened.estimate(), happened.successes() + "/" + happened.trials());
        }
        plot.key(0, String.format(Locale.ROOT, "Brier score %.3f, %d told", score.brier(), score.forecasts()));
    }

    private static double[] said(List<JudgedTrap.Certainty> all) {
        return all.stream().mapToDouble(JudgedTrap.Certainty::said).toArray();
    }

    private static boolean[] right(List<JudgedTrap.Certainty> all) {
        boolean[] right = new boolean[all.size()];
        for (int i = 0; i < right.length; i++) {
            right[i] = all.get(i).right();
        }
        return right;
    }
}
