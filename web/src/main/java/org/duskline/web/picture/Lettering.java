package org.duskline.web.picture;

import java.awt.Font;
import java.awt.Graphics2D;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes the picture's few words. A machine without fonts, or without the library that reads them, fails in many ways at
 * the first letter; the picture then goes without letters.
 */
final class Lettering {
    private static final Logger LOG = LoggerFactory.getLogger(Lettering.class);

    private final Pen pen;
    private boolean able = true;

    /** Puts letters on a picture. */
    @FunctionalInterface
    interface Pen {
        /**
         * Writes words.
         *
         * @param share where the words stand about x: 0 they begin there, 0.5 in the middle, 1 they end there
         * @param y of the letters' foot
         * @return how wide they are
         */
        double write(Graphics2D to, String words, double x, double y, double share, boolean bold);
    }

    Lettering(Pen pen) {
        this.pen = pen;
    }

    static Lettering usual() {
        return new Lettering(Lettering::sans);
    }

    /** Writes words as the pen does; 0 where none can be written. */
    double write(Graphics2D to, Ink ink, String words, double x, double y, double share, boolean bold) {
        if (!able) {
            return 0;
        }
        try {
            to.setColor(ink.colour());
            return pen.write(to, words, x, y, share, bold);
        } catch (RuntimeException | LinkageError | InternalError noFont) {
            able = false;
            LOG.info("A picture goes without its letters: this machine can't write any ({}).", noFont.toString());
            return 0;
        }
    }

    private static double sans(Graphics2D to, String words, double x, double y, double share, boolean bold) {
        to.setFont(new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, bold ? 16 : 13));
        double width = to.getFontMetrics().stringWidth(words);
        to.drawString(words, (float) (x - share * width), (float) y);
        return width;
    }
}
