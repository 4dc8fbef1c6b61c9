package org.duskline.analyzer.prove;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.PoissonRate;
import org.duskline.analyzer.stats.Proportion;

/** Promises against figures, each with its exact 95 % interval. */
final class ProofTable {
    private static final double CONFIDENCE = 0.95;
    private static final List<String> LEVELS = List.of("clean", "typical", "harsh");
    private static final List<String> FITTINGS = List.of("both", "scale", "counter");

    private final Figures all;
    private final StringBuilder text = new StringBuilder();

    ProofTable(Figures all) {
        this.all = all;
    }

    String text() {
        text.append("Intervals are exact at 95 %: binomial for shares, Poisson for rates, order statistics for"
                + " quantiles.\n");
        for (String level : LEVELS) {
            Figures figures = all.only(t -> t.level().equals(level));
            if (figures.traps() > 0) {
                level(level, figures);
            }
        }
        causes();
        return text.toString();
    }

    private void level(String level, Figures figures) {
        line(
                "\n%s: %d traps, %.0f trap-days, %d arrivals, %d never heard",
                level, figures.traps(), figures.days(), figures.arrivals().size(), figures.neverHeard());
        line("  %-34s %12s  %-22s %9s  %s", "", "figure", "interval", "promise", "");
        for (String fitted : FITTINGS) {
            Figures of = figures.only(t -> t.fitted().equals(fitted));
            if (of.traps() > 0) {
                fitting(fitted, Promise.of(fitted).at(level), of);
            }
        }
        side(level, figures);
        periods(figures);
    }

    private void fitting(String fitted, Promise promise, Figures of) {
        share(fitted + ": caught, of those heard", of.caught(), promise.caught());
        quantile(fitted + ": delay, median, min", of.delays(), 0.5, promise.delayMinutes());
        quantile(fitted + ": after heard, p90, min", of.afterHeard(), 0.9, promise.afterHeardMinutes());
        rate(fitted + ": false move-ins /100 d", of.falseMoveIns(), promise.falseMoveIns());
        line(
                "  %-34s %12d  %-22s %9s  %s",
                fitted + ": repeats", of.repeats(), "", "0", of.repeats() == 0 ? "kept" : "BROKEN");
    }

    private void side(String level, Figures figures) {
        double more = level.equals("harsh") ? 3 : 1;
        double missed = level.equals("harsh") ? 2 : 1;
        share("told the same evening", figures.sameEvening(), 1);
        share("scouts told 3 h ahead", figures.announced(3), 1 - missed * (1 - Promise.ANNOUNCED));
        share("scouts told 1 h ahead", figures.announced(1), Double.NaN);
        share("losing scoutings seen", figures.episodesSeen(), Double.NaN);
        rate("false scoutings /100 d", figures.falseScoutings(), more * Promise.FALSE_SCOUTINGS);
        share("departures found", figures.departures(), 1 - missed * (1 - Promise.FOUND));
        rate("false departures /100 d", figures.departuresFalse(), more * Promise.FALSE_SIDE);
        share("robbings found", figures.robbings(), 1 - missed * (1 - Promise.FOUND));
        for (String fitted : FITTINGS) {
            Figures of = figures.only(t -> t.fitted().equals(fitted));
            share(fitted + ": robbings found", of.robbings(), Double.NaN);
        }
        rate("false robbings /100 d", figures.robbingsFalse(), more * Promise.FALSE_SIDE);
    }

    private record Band(String name, int from, int until) {}

    private void periods(Figures figures) {
        for (Band band : List.of(
                new Band("every 1-2 min", 0, 120),
                new Band("every 3-5 min", 121, 300),
                new Band("every 10 min", 301, 9999))) {
            Figures of = figures.only(t -> t.periodSeconds() >= band.from() && t.periodSeconds() <= band.until());
            if (of.traps() > 0) {
                share(band.name() + ": caught", of.caught(), Double.NaN);
                quantile(band.name() + ": delay, median, min", of.delays(), 0.5, Double.NaN);
                rate(band.name() + ": false move-ins", of.falseMoveIns(), Double.NaN);
            }
        }
    }

    private void share(String name, Proportion share, double promised) {
        if (share == null) {
            absent(name, promised, "%.2f");
            return;
        }
        Interval interval = share.clopperPearson(CONFIDENCE);
        row(
                name,
                share.successes() + "/" + share.trials(),
                String.format(Locale.ROOT, "%.3f (%.3f-%.3f)", share.estimate(), interval.low(), interval.high()),
                said("%.2f", promised),
                verdict(
                        promised,
                        share.estimate() >= promised,
                        interval.high() < promised,
                        interval.low() >= promised));
    }

    private void rate(String name, PoissonRate rate, double promised) {
        if (rate == null) {
            absent(name, promised, "%.2f");
            return;
        }
        Interval interval = rate.exact(CONFIDENCE);
        row(
                name,
                String.format(Locale.ROOT, "%d: %.2f", rate.events(), rate.estimate()),
                String.format(Locale.ROOT, "(%.2f-%.2f)", interval.low(), interval.high()),
                said("%.2f", promised),
                verdict(promised, rate.estimate() <= promised, interval.low() > promised, interval.high() <= promised));
    }

    private void quantile(String name, double[] sorted, double at, double promised) {
        double value = Figures.quantile(sorted, at);
        if (Double.isNaN(value)) {
            absent(name, promised, "%.0f");
            return;
        }
        double[] interval = Figures.quantileInterval(sorted, at);
        row(
                name,
                String.format(Locale.ROOT, "%.1f", value),
                "(" + end(interval[0]) + " to " + end(interval[1]) + ")",
                said("%.0f", promised),
                verdict(promised, value <= promised, interval[0] > promised, interval[1] <= promised));
    }

    private static String end(double value) {
        return Double.isInfinite(value) ? "?" : String.format(Locale.ROOT, "%.1f", value);
    }

    private void absent(String name, double promised, String form) {
        row(name, "-", "nothing to judge", said(form, promised), "");
    }

    private static String said(String form, double promised) {
        return Double.isNaN(promised) ? "" : String.format(Locale.ROOT, form, promised);
    }

    /** The interval decides how sure the verdict is. */
    private static String verdict(double promised, boolean met, boolean surelyBroken, boolean surelyKept) {
        if (Double.isNaN(promised)) {
            return "";
        }
        if (met) {
            return surelyKept ? "kept" : "kept, not yet sure";
        }
        return surelyBroken ? "BROKEN" : "short, not yet sure";
    }

    private void row(String name, String figure, String interval, String promised, String verdict) {
        line("  %-34s %12s  %-22s %9s  %s", name, figure, interval, promised, verdict);
    }

    private void causes() {
        causes("False move-ins by cause", Figures::falseMoveInCauses);
        causes("False scoutings by cause", Figures::falseScoutingCauses);
    }

    private void causes(String title, Function<Figures, Map<String, Integer>> of) {
        line("\n%s%" + (38 - title.length()) + "s", title, "");
        line("  %-28s %8s %8s %8s", "", FITTINGS.get(0), FITTINGS.get(1), FITTINGS.get(2));
        of.apply(all).entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .forEach(entry -> {
                    ToDoubleFunction<String> in = fitted ->
                            of.apply(all.only(t -> t.fitted().equals(fitted))).getOrDefault(entry.getKey(), 0);
                    line(
                            "  %-28s %8.0f %8.0f %8.0f",
                            entry.getKey(),
                            in.applyAsDouble("both"),
                            in.applyAsDouble("scale"),
                            in.applyAsDouble("counter"));
                });
    }

    private void line(String form, Object... values) {
        text.append(String.format(Locale.ROOT, form, values).stripTrailing()).append('\n');
    }
}
