package org.duskline.web.picture;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Stroke;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.duskline.analyzer.curve.Curve;
import org.duskline.analyzer.curve.CurveThinner;
import org.duskline.analyzer.curve.Quantity;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.TrapCurves;

/**
 * One trap's curve around the onset of a finding: traffic inward above a line, outward below it, on a scale of square roots;
 * the weight under both; night shaded; the onset marked. One picture, one use.
 */
public final class CurvePicture {
    public static final int WIDTH = 640;
    public static final int HEIGHT = 320;

    private static final Duration BEFORE = Duration.ofHours(5);
    private static final Duration AT_LEAST_AFTER = Duration.ofHours(1);
    private static final Duration AT_MOST_AFTER = Duration.ofHours(5);
    private static final double LEFT = 68;
    private static final double RIGHT = WIDTH - 14;
    private static final double TOP = 54;
    private static final double FOOT = HEIGHT - 28;
    private static final double GAP = 14;
    private static final double SHARE_OF_TRAFFIC = 0.66;
    private static final double LEAST_PER_MINUTE = 20;
    private static final double LINE_APART = 14;
    private static final double LEAST_KG = 1;
    private static final Stroke HAIRLINE = new BasicStroke(1);
    private static final Stroke PEN = new BasicStroke(2, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    private static final Stroke DASHES =
            new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 4}, 0);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    private final Trap trap;
    private final Instant onset;
    private final Curve curve;
    private final Iterable<Night> nights;
    private final Lettering letters;
    private final BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    private final Graphics2D to = image.createGraphics();

    private CurvePicture(Trap trap, Instant onset, Curve curve, Iterable<Night> nights, Lettering letters) {
        this.trap = trap;
        this.onset = onset;
        this.curve = curve;
        this.nights = nights;
        this.letters = letters;
    }

    /**
     * Draws the hours around an onset, as far as they have come.
     *
     * @param now nothing later is known
     * @return PNG, {@value #WIDTH} by {@value #HEIGHT}
     */
    public static byte[] png(TrapCurves curves, Trap trap, Instant onset, Instant now) {
        return png(curves, trap, onset, now, Lettering.usual());
    }

    static byte[] png(TrapCurves curves, Trap trap, Instant onset, Instant now, Lettering letters) {
        Instant from = onset.minus(BEFORE);
        Instant until = earlier(onset.plus(AT_MOST_AFTER), later(now, onset.plus(AT_LEAST_AFTER)));
        CurveThinner thinner = new CurveThinner(from, until, (int) (RIGHT - LEFT));
        curves.curve(trap.name(), from, until, thinner);
        return new CurvePicture(trap, onset, thinner.curve(), curves.nights(trap, from, until), letters).png();
    }

    private static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private byte[] png() {
        to.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        to.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        to.setColor(Ink.SHEET.colour());
        to.fillRect(0, 0, WIDTH, HEIGHT);
        nights();
        hours();
        boolean counted = curve.has(Quantity.IN_PER_MINUTE) || curve.has(Quantity.OUT_PER_MINUTE);
        boolean weighed = curve.has(Quantity.WEIGHT_KG);
        double split = counted && weighed ? TOP + (FOOT - TOP - GAP) * SHARE_OF_TRAFFIC : counted ? FOOT : TOP - GAP;
        if (counted) {
            traffic(TOP, split);
        }
        if (weighed) {
            weight(split + GAP, FOOT);
        }
        mark();
        double beside = 14 + letters.write(to, Ink.INK, trap.name(), 14, 24, 0, true) + 12;
        letters.write(to, Ink.INK_SOFT, DAY.format(onset.atZone(trap.zone())), beside, 24, 0, false);
        if (!counted && !weighed) {
            letters.write(to, Ink.INK_SOFT, "no samples in these hours", WIDTH / 2.0, HEIGHT / 2.0, 0.5, false);
        }
        to.dispose();
        return written();
    }

    private byte[] written() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        // In memory: the usual stream would want a folder for its cache.
        try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
            ImageIO.write(image, "png", stream);
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
        return bytes.toByteArray();
    }

    private double x(long timeMillis) {
        double share = (timeMillis - curve.from().toEpochMilli())
                / (double) Duration.between(curve.from(), curve.until()).toMillis();
        return LEFT + Math.max(0, Math.min(1, share)) * (RIGHT - LEFT);
    }

    private double x(Instant time) {
        return x(time.toEpochMilli());
    }

    private void nights() {
        to.setColor(Ink.NIGHT.colour());
        for (Night night : nights) {
            double dusk = x(night.dusk());
            to.fill(new Rectangle2D.Double(dusk, TOP, x(night.dawn()) - dusk, FOOT - TOP));
        }
    }

    private void hours() {
        to.setStroke(HAIRLINE);
        ZonedDateTime hour =
                curve.from().atZone(trap.zone()).truncatedTo(ChronoUnit.HOURS).plusHours(1);
        while (hour.toInstant().isBefore(curve.until())) {
            double x = x(hour.toInstant());
            line(Ink.RULE, x, TOP, x, FOOT);
            letters.write(to, Ink.INK_SOFT, CLOCK.format(hour), x, HEIGHT - 10.0, 0.5, false);
            hour = hour.plusHours(Duration.between(curve.from(), curve.until()).toHours() > 7 ? 2 : 1);
        }
    }

    private void traffic(double top, double foot) {
        double in = most(Quantity.IN_PER_MINUTE);
        double out = most(Quantity.OUT_PER_MINUTE);
        double middle = top + (foot - top) * Math.sqrt(in) / (Math.sqrt(in) + Math.sqrt(out));
        area(Quantity.IN_PER_MINUTE, Ink.IN, middle, (middle - top - 4) / Math.sqrt(in));
        area(Quantity.OUT_PER_MINUTE, Ink.OUT, middle, -(foot - middle - 4) / Math.sqrt(out));
        to.setStroke(HAIRLINE);
        line(Ink.RULE_STRONG, LEFT, middle, RIGHT, middle);
        scale(Ink.IN, "in", Quantity.IN_PER_MINUTE, top + 14);
        letters.write(to, Ink.INK_SOFT, "a minute", LEFT - 8, top + 29, 1, false);
        scale(Ink.OUT, "out", Quantity.OUT_PER_MINUTE, foot - 6);
    }

    /** What stands at the scale's end: the direction and its peak. */
    private void scale(Ink ink, String name, Quantity quantity, double y) {
        double peak = curve.highest(quantity);
        String words = Double.isNaN(peak) ? name : name + " " + Math.round(peak);
        letters.write(to, ink, words, LEFT - 8, y, 1, false);
    }

    private double most(Quantity quantity) {
        double highest = curve.highest(quantity);
        return Double.isNaN(highest) ? LEAST_PER_MINUTE : Math.max(LEAST_PER_MINUTE, highest);
    }

    private void area(Quantity quantity, Ink ink, double middle, double reach) {
        to.setColor(ink.colour());
        to.fill(new Outlines(curve, this::x).area(quantity, middle, value -> middle - reach * Math.sqrt(value)));
    }

    private void weight(double top, double foot) {
        double lowest = curve.lowest(Quantity.WEIGHT_KG);
        double highest = curve.highest(Quantity.WEIGHT_KG);
        double range = Math.max(LEAST_KG, highest - lowest);
        double base = (lowest + highest - range) / 2;
        DoubleUnaryOperator y = weight -> foot - 6 - (weight - base) / range * (foot - top - 12);
        to.setColor(Ink.WEIGHT.colour());
        to.setStroke(PEN);
        to.draw(new Outlines(curve, this::x).line(Quantity.WEIGHT_KG, y));
        to.setStroke(HAIRLINE);
        line(Ink.RULE_STRONG, LEFT, foot, RIGHT, foot);
        kilograms(highest, y.applyAsDouble(highest) + 4);
        if (y.applyAsDouble(lowest) - y.applyAsDouble(highest) >= LINE_APART) {
            kilograms(lowest, y.applyAsDouble(lowest) + 4);
        }
    }

    private void kilograms(double weight, double y) {
        letters.write(to, Ink.WEIGHT, String.format(Locale.ROOT, "%.2f kg", weight), LEFT - 8, y, 1, false);
    }

    private void mark() {
        double x = x(onset);
        to.setStroke(DASHES);
        line(Ink.ACT, x, TOP - 6, x, FOOT);
        double share = x > RIGHT - 50 ? 1 : 0.5;
        letters.write(to, Ink.ACT, "since " + CLOCK.format(onset.atZone(trap.zone())), x, TOP - 12, share, false);
    }

    private void line(Ink ink, double x, double y, double toX, double toY) {
        to.setColor(ink.colour());
        to.draw(new Line2D.Double(x, y, toX, toY));
    }
}
