package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The marked points of a diagram and where their words fit, in pixels. */
final class Marks {
    /** Nearer than this, two marks look like one. */
    static final double TOLD_APART = 6;
    /** A digit and a little at 13 pixels: which sans serif is used is not known here. */
    private static final double LETTER = 7.85;

    private static final double LINE = 15;
    private static final double RADIUS = 4;
    private static final double RING = 2.5;
    private static final double STEP = 5;

    private final Box inside;
    private final List<Box> taken = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();

    /** Words keep within the box. */
    Marks(Box inside) {
        this.inside = inside;
    }

    /** A filled dot, or a ring where others lie at the same place already. */
    record Mark(double x, double y, double radius, int colour, String word) {
        boolean ring() {
            return radius > RADIUS;
        }

        private boolean near(double otherX, double otherY) {
            return Math.hypot(otherX - x, otherY - y) < TOLD_APART;
        }

        private Box box() {
            return around(radius);
        }

        /** A word in here seems to be this mark's. */
        private Box seemingly() {
            return around(radius + 5);
        }

        private Box around(double reach) {
            return new Box(x - reach, y - reach, x + reach, y + reach);
        }
    }

    /** A mark's word, from its baseline's left or right end. */
    record Word(Mark of, double x, double y, boolean leftwards) {
        Box box() {
            return Box.around(x, y, leftwards, of.word());
        }
    }

    /** Its bottom lies below its top: y grows downwards. */
    record Box(double left, double top, double right, double bottom) {
        static Box around(double x, double baseline, boolean leftwards, String words) {
            double width = LETTER * words.length();
            double left = leftwards ? x - width : x;
            return new Box(left, baseline - LINE + 4, left + width, baseline + 4);
        }

        private boolean overlaps(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }

        private boolean holds(Box other) {
            return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
        }
    }

    /** No word is laid here. */
    void keepFree(Box box) {
        taken.add(box);
    }

    /** Marks of one place lie around each other: a later one would hide an earlier one. */
    void add(double x, double y, int colour, String word) {
        long under = marks.stream().filter(m -> m.near(x, y)).count();
        marks.add(new Mark(x, y, RADIUS + RING * under, colour, word));
    }

    List<Mark> all() {
        return List.copyOf(marks);
    }

    /** The words, none upon another. A word that finds no room is left out: two in one place tell less than one. */
    List<Word> words() {
        List<Box> full = new ArrayList<>(taken);
        marks.forEach(m -> full.add(m.box()));
        List<Word> words = new ArrayList<>();
        for (Mark mark : marks) {
            place(mark, full).ifPresent(word -> {
                words.add(word);
                full.add(word.box());
            });
        }
        return words;
    }

    /** Far from its mark or close to another: a line has to lead to its own. */
    boolean aside(Word word) {
        return Math.abs(word.y() - word.of().y()) > LINE
                || marks.stream()
                        .filter(m -> !m.near(word.of().x(), word.of().y()))
                        .anyMatch(m -> word.box().overlaps(m.seemingly()));
    }

    private Optional<Word> place(Mark mark, List<Box> full) {
        int steps = (int) ((inside.bottom() - inside.top()) / STEP);
        return IntStream.rangeClosed(0, steps)
                .boxed()
                .flatMap(step -> beside(mark, step * STEP))
                .filter(word -> inside.holds(word.box()))
                .filter(word -> full.stream().noneMatch(word.box()::overlaps))
                .findFirst();
    }

    private Stream<Word> beside(Mark mark, double away) {
        double reach = 3
                + marks.stream()
                        .filter(m -> m.near(mark.x(), mark.y()))
                        .mapToDouble(Mark::radius)
                        .max()
                        .orElse(RADIUS);
        double above = mark.y() - RADIUS - 4 - away;
        double below = mark.y() + LINE + away;
        return Stream.of(
                new Word(mark, mark.x() + reach, above, false),
                new Word(mark, mark.x() + reach, below, false),
                new Word(mark, mark.x() - reach, above, true),
                new Word(mark, mark.x() - reach, below, true));
    }
}
