package org.duskline.analyzer.prove;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** A small diagram as SVG: two axes, lines, points and words. */
final class Plot {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 400;
    private static final int LEFT = 70;
    private static final int RIGHT = 20;
    private static final int TOP = 40;
    private static final int BOTTOM = 55;
    private static final String[] COLOURS = {"#1f6f8b", "#c8553d", "#6a4c93", "#588157"};

    private final StringBuilder svg = new StringBuilder();
    private final Marks marks = new Marks(new Marks.Box(LEFT, TOP, WIDTH - RIGHT, HEIGHT - BOTTOM));
    private final DoubleUnaryOperator x;
    private final DoubleUnaryOperator y;
    private int keys;

    /** Axes from a low to a high end; logarithmic where asked for. */
    Plot(String title, Axis across, Axis up) {
        this.x = value -> LEFT + across.share(value) * (WIDTH - LEFT - RIGHT);
        this.y = value -> HEIGHT - BOTTOM - up.share(value) * (HEIGHT - TOP - BOTTOM);
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\""
                        + " font-size=\"13\" role=\"img\" aria-label=\"%s\">%n<rect width=\"%d\" height=\"%d\""
                        + " fill=\"white\"/>%n",
                WIDTH,
                HEIGHT,
                title,
                WIDTH,
                HEIGHT));
        text(LEFT, 22, title, "start", "#222");
        text((LEFT + WIDTH - RIGHT) / 2.0, HEIGHT - 12, across.name(), "middle", "#222");
        svg.append(String.format(
                Locale.ROOT,
                "<text transform=\"translate(18 %d) rotate(-90)\" text-anchor=\"middle\">%s</text>%n",
                (TOP + HEIGHT - BOTTOM) / 2,
                up.name()));
        for (double tick : across.ticks()) {
            rule(x.applyAsDouble(tick), TOP, x.applyAsDouble(tick), HEIGHT - BOTTOM);
            text(x.applyAsDouble(tick), HEIGHT - BOTTOM + 20, across.label(tick), "middle", "#444");
        }
        for (double tick : up.ticks()) {
            rule(LEFT, y.applyAsDouble(tick), WIDTH - RIGHT, y.applyAsDouble(tick));
            text(LEFT - 8, y.applyAsDouble(tick) + 4, up.label(tick), "end", "#444");
        }
    }

    /**
     * One axis: its name, ends, marks, and whether equal ratios are equal lengths. Nothing at all lies no ratio away from
     * anything: a logarithmic axis gives it a place of its own, apart from the low end.
     */
    record Axis(String name, double low, double high, boolean logarithmic, double... ticks) {
        private static final double NONE = 0.04;
        private static final double LOW = 0.14;

        double share(double value) {
            double inside = Math.max(low, Math.min(high, value));
            if (!logarithmic) {
                return (inside - low) / (high - low);
            }
            return value <= 0 ? NONE : LOW + (1 - LOW) * Math.log(inside / low) / Math.log(high / low);
        }

        private String label(double tick) {
            if (logarithmic && tick == 0) {
                return "none seen";
            }
            return tick == Math.rint(tick) ? String.format(Locale.ROOT, "%.0f", tick) : String.valueOf(tick);
        }
    }

    private void rule(double x1, double y1, double x2, double y2) {
        svg.append(String.format(
                Locale.ROOT,
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#ddd\"/>%n",
                x1,
                y1,
                x2,
                y2));
    }

    private void text(double atX, double atY, String words, String anchor, String colour) {
        svg.append(written(atX, atY, words, anchor, colour));
    }

    private static String written(double atX, double atY, String words, String anchor, String colour) {
        return String.format(
                Locale.ROOT,
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>%n",
                atX,
                atY,
                anchor,
                colour,
                words.replace("&", "&amp;").replace("<", "&lt;"));
    }

    /** Joins points by a line. */
    Plot curve(int colour, double[] xs, double[] ys, boolean dashed) {
        svg.append("<polyline fill=\"none\" stroke-width=\"2\" stroke=\"").append(colour(colour));
        svg.append(dashed ? "\" stroke-dasharray=\"5 4\" points=\"" : "\" points=\"");
        for (int i = 0; i < xs.length; i++) {
            svg.append(String.format(Locale.ROOT, "%.1f,%.1f ", x.applyAsDouble(xs[i]), y.applyAsDouble(ys[i])));
        }
        svg.append("\"/>\n");
        return this;
    }

    /** A point with a word beside it, in its colour: of points at one place each word tells its own. */
    Plot point(int colour, double atX, double atY, String word) {
        marks.add(x.applyAsDouble(atX), y.applyAsDouble(atY), colour, word);
        return this;
    }

    /** Whether two points, across and up, would look like one. */
    boolean lookLikeOne(double[] one, double[] other) {
        double across = x.applyAsDouble(one[0]) - x.applyAsDouble(other[0]);
        double up = y.applyAsDouble(one[1]) - y.applyAsDouble(other[1]);
        return Math.hypot(across, up) < Marks.TOLD_APART;
    }

    /** What a colour stands for. */
    Plot key(int colour, String words) {
        double atX = WIDTH - RIGHT - 6;
        double atY = TOP + 18 + 17 * keys++;
        marks.keepFree(Marks.Box.around(atX, atY, true, words));
        text(atX, atY, words, "end", colour(colour));
        return this;
    }

    private static String colour(int number) {
        return COLOURS[number % COLOURS.length];
    }

    private static String circle(Marks.Mark mark) {
        return String.format(
                Locale.ROOT,
                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" stroke-width=\"2\" stroke=\"%s\" fill=\"%s\"/>%n",
                mark.x(),
                mark.y(),
                mark.radius(),
                mark.ring() ? colour(mark.colour()) : "none",
                mark.ring() ? "none" : colour(mark.colour()));
    }

    private static String lead(Marks.Word word) {
        return String.format(
                Locale.ROOT,
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"0.7\"/>%n",
                word.of().x(),
                word.of().y(),
                word.x(),
                word.y() - 5,
                colour(word.of().colour()));
    }

    /** Words come last and white-edged, so that no line runs through their letters. */
    String svg() {
        StringBuilder whole = new StringBuilder(svg);
        List<Marks.Word> words = marks.words();
        words.stream().filter(marks::aside).forEach(word -> whole.append(lead(word)));
        marks.all().forEach(mark -> whole.append(circle(mark)));
        whole.append("<g stroke=\"white\" stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\">\n");
        for (Marks.Word word : words) {
            String anchor = word.leftwards() ? "end" : "start";
            whole.append(written(
                    word.x(),
                    word.y(),
                    word.of().word(),
                    anchor,
                    colour(word.of().colour())));
        }
        return whole.append("</g>\n</svg>\n").toString();
    }
}
