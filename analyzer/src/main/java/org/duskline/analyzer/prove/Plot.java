package org.duskline.analyzer.prove;

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
            text(x.applyAsDouble(tick), HEIGHT - BOTTOM + 18, number(tick), "middle", "#444");
        }
        for (double tick : up.ticks()) {
            rule(LEFT, y.applyAsDouble(tick), WIDTH - RIGHT, y.applyAsDouble(tick));
            text(LEFT - 8, y.applyAsDouble(tick) + 4, number(tick), "end", "#444");
        }
    }

    /** One axis: its name, ends, marks, and whether equal ratios are equal lengths. */
    record Axis(String name, double low, double high, boolean logarithmic, double... ticks) {
        double share(double value) {
            double inside = Math.max(low, Math.min(high, value));
            return logarithmic ? Math.log(inside / low) / Math.log(high / low) : (inside - low) / (high - low);
        }
    }

    private static String number(double value) {
        return value == Math.rint(value) ? String.format(Locale.ROOT, "%.0f", value) : String.valueOf(value);
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
        svg.append(String.format(
                Locale.ROOT,
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>%n",
                atX,
                atY,
                anchor,
                colour,
                words.replace("&", "&amp;").replace("<", "&lt;")));
    }

    /** Joins points by a line. */
    Plot curve(int colour, double[] xs, double[] ys, boolean dashed) {
        svg.append("<polyline fill=\"none\" stroke-width=\"2\" stroke=\"").append(COLOURS[colour % COLOURS.length]);
        svg.append(dashed ? "\" stroke-dasharray=\"5 4\" points=\"" : "\" points=\"");
        for (int i = 0; i < xs.length; i++) {
            svg.append(String.format(Locale.ROOT, "%.1f,%.1f ", x.applyAsDouble(xs[i]), y.applyAsDouble(ys[i])));
        }
        svg.append("\"/>\n");
        return this;
    }

    /** A point with a word beside it. */
    Plot point(int colour, double atX, double atY, String word) {
        svg.append(String.format(
                Locale.ROOT,
                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"%s\"/>%n",
                x.applyAsDouble(atX),
                y.applyAsDouble(atY),
                COLOURS[colour % COLOURS.length]));
        text(x.applyAsDouble(atX) + 7, y.applyAsDouble(atY) - 5, word, "start", "#444");
        return this;
    }

    /** What a colour stands for. */
    Plot key(int colour, String words) {
        text(WIDTH - RIGHT - 6, TOP + 18 + 17 * keys++, words, "end", COLOURS[colour % COLOURS.length]);
        return this;
    }

    String svg() {
        return svg + "</svg>\n";
    }
}
