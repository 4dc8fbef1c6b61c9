package org.duskline.web.picture;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What lies where in the small picture of an invented rush. */
class CurvePictureTest {
    private static final Instant NOW = InventedRush.ONSET.plus(Duration.ofMinutes(50));

    private static BufferedImage drawn(InventedRush rush, Lettering letters) {
        byte[] png = CurvePicture.png(rush, InventedRush.TRAP, InventedRush.ONSET, NOW, letters);
        try {
            return ImageIO.read(new ByteArrayInputStream(png));
        } catch (IOException inMemory) {
            throw new UncheckedIOException(inMemory);
        }
    }

    private static Lettering speechless() {
        return new Lettering((to, words, x, y, share, bold) -> {
            throw new InternalError("no font on this machine");
        });
    }

    /** How many pixels of an ink stand in the columns. */
    private static long of(Ink ink, BufferedImage image, IntPredicate columns) {
        return IntStream.range(0, image.getWidth())
                .filter(columns)
                .mapToLong(x -> IntStream.range(0, image.getHeight())
                        .filter(y ->
                                (image.getRGB(x, y) & 0xffffff) == (ink.colour().getRGB() & 0xffffff))
                        .count())
                .sum();
    }

    /** Six hours lie between the margins, the onset after five. */
    private static double column(double hours) {
        return 68 + hours / 6 * (640 - 14 - 68);
    }

    @Test
    void the_rush_stands_where_it_was_and_towers_over_the_quiet_hours() {
        BufferedImage image = drawn(new InventedRush(), speechless());
        assertThat(image.getWidth()).isEqualTo(640);
        assertThat(image.getHeight()).isEqualTo(320);
        long rush = of(Ink.IN, image, x -> x > column(5.05) && x < column(5.45));
        long before = of(Ink.IN, image, x -> x > column(4.5) && x < column(4.9));
        assertThat(rush).isGreaterThan(2000).isGreaterThan(5 * before);
        assertThat(of(Ink.OUT, image, x -> x > column(5.05) && x < column(5.45)))
                .isPositive()
                .isLessThan(rush);
    }

    @Test
    void the_onset_is_marked_and_the_weight_stands_higher_after_it() {
        BufferedImage image = drawn(new InventedRush(), speechless());
        int onset = (int) Math.round(column(5));
        assertThat(of(Ink.ACT, image, x -> Math.abs(x - onset) <= 2)).isGreaterThan(100);
        assertThat(of(Ink.ACT, image, x -> Math.abs(x - onset) > 2)).isZero();
        assertThat(highest(Ink.WEIGHT, image, (int) column(5.6)))
                .isLessThan(highest(Ink.WEIGHT, image, (int) column(2)));
    }

    private static int highest(Ink ink, BufferedImage image, int column) {
        return IntStream.range(0, image.getHeight())
                .filter(y ->
                        (image.getRGB(column, y) & 0xffffff) == (ink.colour().getRGB() & 0xffffff))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_scale_alone_fills_the_picture_and_a_counter_alone_too() {
        BufferedImage weighed = drawn(new InventedRush(false, true), speechless());
        assertThat(of(Ink.IN, weighed, x -> true)).isZero();
        assertThat(of(Ink.WEIGHT, weighed, x -> true)).isPositive();
        BufferedImage counted = drawn(new InventedRush(true, false), speechless());
        assertThat(of(Ink.WEIGHT, counted, x -> true)).isZero();
        assertThat(of(Ink.IN, counted, x -> true))
                .isGreaterThan(of(Ink.IN, drawn(new InventedRush(), speechless()), x -> true));
    }

    @Test
    void without_a_font_the_picture_is_drawn_without_its_letters() {
        BufferedImage mute = drawn(new InventedRush(), speechless());
        assertThat(of(Ink.INK, mute, x -> true)).isZero();
        BufferedImage lettered = drawn(new InventedRush(), new Lettering((to, words, x, y, share, bold) -> {
            to.fillRect((int) x, (int) y - 8, 8, 8);
            return 8;
        }));
        assertThat(of(Ink.INK, lettered, x -> true)).isPositive();
    }

    @Test
    void hours_without_a_sample_make_an_empty_picture_and_no_failure() {
        BufferedImage empty = drawn(new InventedRush(false, false), speechless());
        assertThat(of(Ink.IN, empty, x -> true) + of(Ink.WEIGHT, empty, x -> true))
                .isZero();
        assertThat(of(Ink.ACT, empty, x -> true)).isPositive();
    }

    @ParameterizedTest
    @EnumSource(Ink.class)
    void its_colours_are_those_of_the_pages_by_day(Ink ink) throws IOException {
        String tokens = new String(
                Ink.class
                        .getResourceAsStream("/org/duskline/web/page/assets/tokens.css")
                        .readAllBytes(),
                StandardCharsets.UTF_8);
        String byDay = tokens.substring(0, tokens.indexOf("@media"));
        assertThat(byDay)
                .contains(
                        String.format("--%s: #%06x;", ink.token(), ink.colour().getRGB() & 0xffffff));
    }
}
