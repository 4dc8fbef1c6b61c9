import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import javax.imageio.ImageIO;

/**
 * Draws the project's mark, a low sun over two horizons as in assets/mark.svg, as the PNG files that a phone's home
 * screen wants:
 *
 * <pre>java web/src/main/icons/DrawIcons.java web/src/main/resources/org/duskline/web/page/assets</pre>
 */
final class DrawIcons {
    private static final Color NIGHT = new Color(0x11171e);
    private static final Color SUN = new Color(0xffa48c);
    private static final Color HORIZON = new Color(0xe6e8e2);

    /** The mark's own grid, as in the SVG file. */
    private static final double GRID = 32;

    /** A launcher may cut a maskable icon down to a circle of 80 % (W3C Web Application Manifest, icon masks). */
    private static final double SAFE = 0.72;

    private DrawIcons() {}

    public static void main(String[] folders) throws IOException {
        write(folders[0], "icon-192.png", drawn(192, false));
        write(folders[0], "icon-512.png", drawn(512, false));
        write(folders[0], "icon-maskable-512.png", drawn(512, true));
    }

    private static BufferedImage drawn(int pixels, boolean maskable) {
        BufferedImage image = new BufferedImage(pixels, pixels, BufferedImage.TYPE_INT_ARGB);
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        pen.scale(pixels / GRID, pixels / GRID);
        pen.setColor(NIGHT);
        pen.fill(maskable
                ? new Rectangle2D.Double(0, 0, GRID, GRID)
                : new RoundRectangle2D.Double(0, 0, GRID, GRID, 12, 12));
        if (maskable) {
            pen.translate(GRID * (1 - SAFE) / 2, GRID * (1 - SAFE) / 2);
            pen.scale(SAFE, SAFE);
        }
        pen.setColor(SUN);
        pen.fill(new Arc2D.Double(7, 10, 18, 18, 0, 180, Arc2D.CHORD));
        pen.setColor(HORIZON);
        pen.setStroke(new BasicStroke(2, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        pen.draw(new Line2D.Double(3, 20, 29, 20));
        pen.draw(new Line2D.Double(7, 25, 25, 25));
        pen.dispose();
        return image;
    }

    private static void write(String folder, String name, BufferedImage image) throws IOException {
        ImageIO.write(image, "png", new File(folder, name));
    }
}
