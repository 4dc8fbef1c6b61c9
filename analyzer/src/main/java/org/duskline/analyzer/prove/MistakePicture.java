package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.prove.Plot.Axis;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/** The hours around a mistake: bees in and out a minute above, the change of weight below. */
final class MistakePicture {
    static final long BEFORE_MILLIS = 4 * 3_600_000L;
    static final long AFTER_MILLIS = 4 * 3_600_000L;
    private static final long BIN_MILLIS = 5 * 60_000L;
    private static final double[] HOURS = {-4, -3, -2, -1, 0, 1, 2, 3, 4};
    private static final double[] NICE = {0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000};

    private MistakePicture() {}

    static String svg(Mistake mistake, TrapSeries series) {
        long middle = (long) (mistake.second() * 1000);
        List<String> panels = new ArrayList<>();
        if (!mistake.trap().fitted().equals("scale")) {
            panels.add(traffic(mistake, series, middle));
        }
        if (!mistake.trap().fitted().equals("counter")) {
            panels.add(weight(mistake, series, middle));
        }
        StringBuilder svg = new StringBuilder(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 " + 400 * panels.size() + "\">\n");
        for (int i = 0; i < panels.size(); i++) {
            svg.append("<g transform=\"translate(0 ").append(400 * i).append(")\">\n");
            svg.append(panels.get(i).replace("<svg ", "<svg width=\"640\" height=\"400\" "));
            svg.append("</g>\n");
        }
        return svg.append("</svg>\n").toString();
    }

    private static String traffic(Mistake mistake, TrapSeries series, long middle) {
        List<double[]> in = new ArrayList<>();
        List<double[]> out = new ArrayList<>();
        double most = 1;
        for (long end = middle - BEFORE_MILLIS + BIN_MILLIS; end <= middle + AFTER_MILLIS; end += BIN_MILLIS) {
            int to = series.lastAt(end);
            int from = series.lastAt(end - BIN_MILLIS);
            if (from < 0 || to == from) {
                continue;
            }
            double minutes = (series.timeMillis(to) - series.timeMillis(from)) / 60_000.0;
            double hour = (series.timeMillis(to) - middle) / 3_600_000.0;
            in.add(new double[] {hour, (series.totalIn(to) - series.totalIn(from)) / minutes});
            out.add(new double[] {hour, (series.totalOut(to) - series.totalOut(from)) / minutes});
            most = Math.max(most, Math.max(last(in), last(out)));
        }
        Plot plot = new Plot(title(mistake), hours(), axis("bees a minute", 0, most));
        return curve(curve(plot, 0, in).key(0, "in"), 1, out).key(1, "out").svg();
    }

    private static double last(List<double[]> points) {
        return points.get(points.size() - 1)[1];
    }

    private static String weight(Mistake mistake, TrapSeries series, long middle) {
        List<double[]> points = new ArrayList<>();
        double base = Double.NaN;
        double least = -0.05;
        double most = 0.05;
        for (int i = series.firstAfter(middle - BEFORE_MILLIS); i < series.size(); i++) {
            double kg = series.value(Quantity.WEIGHT, i);
            if (series.timeMillis(i) > middle + AFTER_MILLIS || Double.isNaN(kg)) {
                continue;
            }
            base = Double.isNaN(base) ? kg : base;
            points.add(new double[] {(series.timeMillis(i) - middle) / 3_600_000.0, kg - base});
            least = Math.min(least, kg - base);
            most = Math.max(most, kg - base);
        }
        return curve(new Plot(title(mistake), hours(), axis("kg", least, most)), 2, points)
                .svg();
    }

    private static String title(Mistake mistake) {
        return mistake.what();
    }

    private static Axis hours() {
        return new Axis("hours", -4, 4, false, HOURS);
    }

    private static Axis axis(String name, double least, double most) {
        double step = NICE[NICE.length - 1];
        for (int i = NICE.length - 1; i >= 0; i--) {
            step = (most - least) / NICE[i] <= 6 ? NICE[i] : step;
        }
        double low = Math.floor(least / step) * step;
        double high = Math.ceil(most / step) * step;
        int count = (int) Math.round((high - low) / step) + 1;
        double[] ticks = new double[count];
        for (int i = 0; i < count; i++) {
            ticks[i] = Math.round((low + i * step) * 100) / 100.0;
        }
        return new Axis(name, low, high, false, ticks);
    }

    private static Plot curve(Plot plot, int colour, List<double[]> points) {
        return plot.curve(
                colour,
                points.stream().mapToDouble(point -> point[0]).toArray(),
                points.stream().mapToDouble(point -> point[1]).toArray(),
                false);
    }
}
