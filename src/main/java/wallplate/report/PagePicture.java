package wallplate.report;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.WritableRaster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import wallplate.sheet.InkImage;

/**
 * The level page as a PNG: white paper, ink in sixteen greys.
 *
 * <p>Sixteen greys are as many as a pencil line needs on a screen or in print, and make the file a fifth of its size.
 */
public final class PagePicture {

    /** About 150 dots per inch: a sheet across a large screen. */
    private static final double SCREEN_PIXELS_PER_MM = 6;

    private static final int GREYS = 16;
    private static final int GREY_BITS = 4;
    private static final int STEP = 255 / (GREYS - 1);

    private PagePicture() {}

    /** The picture at the page's own resolution. */
    public static byte[] full(InkImage ink) {
        return png(ink.widthPx(), ink.heightPx(), ink.bytes());
    }

    /** The picture at the size of a screen; never larger than the page itself. */
    public static byte[] forScreen(InkImage ink) {
        int factor = Math.max(1, (int) Math.round(ink.pixelsPerMm() / SCREEN_PIXELS_PER_MM));
        int widthPx = Math.max(1, ink.widthPx() / factor);
        int heightPx = Math.max(1, ink.heightPx() / factor);
        byte[] reduced = new byte[widthPx * heightPx];
        for (int row = 0; row < heightPx; row++) {
            for (int column = 0; column < widthPx; column++) {
                reduced[row * widthPx + column] = (byte) mean(ink, column * factor, row * factor, factor);
            }
        }
        return png(widthPx, heightPx, reduced);
    }

    /** The ink of a picture that {@link #full} made, to the nearest of its greys. */
    public static InkImage read(byte[] png, double pixelsPerMm) {
        BufferedImage picture = decoded(png);
        WritableRaster raster = picture.getRaster();
        byte[] ink = new byte[picture.getWidth() * picture.getHeight()];
        int[] row = new int[picture.getWidth()];
        for (int line = 0; line < picture.getHeight(); line++) {
            raster.getSamples(0, line, picture.getWidth(), 1, 0, row);
            for (int column = 0; column < row.length; column++) {
                ink[line * row.length + column] = (byte) (255 - row[column] * STEP);
            }
        }
        return new InkImage(picture.getWidth(), picture.getHeight(), pixelsPerMm, ink);
    }

    private static int mean(InkImage ink, int left, int top, int factor) {
        int sum = 0;
        for (int row = top; row < top + factor; row++) {
            for (int column = left; column < left + factor; column++) {
                sum += ink.bytes()[row * ink.widthPx() + column] & 0xff;
            }
        }
        return sum / (factor * factor);
    }

    private static byte[] png(int widthPx, int heightPx, byte[] ink) {
        BufferedImage picture = blank(widthPx, heightPx);
        WritableRaster raster = picture.getRaster();
        int[] row = new int[widthPx];
        for (int line = 0; line < heightPx; line++) {
            for (int column = 0; column < widthPx; column++) {
                int grey = 255 - (ink[line * widthPx + column] & 0xff);
                row[column] = (grey + STEP / 2) / STEP;
            }
            raster.setSamples(0, line, widthPx, 1, 0, row);
        }
        return encoded(picture);
    }

    /** A picture of the greys that pages have; as long as nothing is drawn on it, it is black. */
    static BufferedImage blank(int widthPx, int heightPx) {
        return new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_BYTE_BINARY, greys());
    }

    private static IndexColorModel greys() {
        byte[] levels = new byte[GREYS];
        for (int grey = 0; grey < GREYS; grey++) {
            levels[grey] = (byte) (grey * STEP);
        }
        return new IndexColorModel(GREY_BITS, GREYS, levels, levels, levels);
    }

    static byte[] encoded(BufferedImage picture) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "png", out);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return out.toByteArray();
    }

    static BufferedImage decoded(byte[] png) {
        try {
            BufferedImage picture = ImageIO.read(new ByteArrayInputStream(png));
            if (picture == null) {
                throw new IllegalArgumentException("the bytes are no PNG picture");
            }
            return picture;
        } catch (IOException broken) {
            throw new UncheckedIOException("the picture of the page cannot be read", broken);
        }
    }
}
