package wallplate.report.pdf;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import wallplate.report.Box;
import wallplate.sheet.InkImage;

/**
 * Pieces of a learner's level page as pictures for a report: pencil on white paper, whatever the scan's own light was.
 */
final class PagePicture {

    /** What a print shows of pencil lines without making the file large. */
    private static final double PIXELS_PER_PRINTED_MM = 7;
    /**
     * The ink, of 255, that a sheet's own pencil lines are brought to: dark enough to see, light enough to draw over.
     */
    private static final double LINE_INK = 175;
    /** Below this ink it is paper with its grain. */
    private static final double PAPER_INK = 10;
    /** A faint pencil is strengthened up to so many times. */
    private static final double STRONGEST = 5;
    /** The share of a sheet that is taken for pencil lines when their darkness is judged. */
    private static final double LINE_SHARE = 0.01;

    private final InkImage ink;
    private final double strength;

    PagePicture(InkImage ink) {
        this.ink = ink;
        this.strength = Math.min(STRONGEST, LINE_INK / Math.max(1, darknessOfLines(ink) - PAPER_INK));
    }

    /** The ink that only the darkest hundredth of the sheet exceeds. */
    private static double darknessOfLines(InkImage ink) {
        int[] histogram = new int[256];
        byte[] bytes = ink.bytes();
        for (byte one : bytes) {
            histogram[one & 0xff]++;
        }
        int level = 255;
        for (double rest = bytes.length * LINE_SHARE; level > 0 && rest > histogram[level]; level--) {
            rest -= histogram[level];
        }
        return level;
    }

    /**
     * The picture of a region for a place on the report of the same proportions; outside the page it is white.
     *
     * @param printedWidthMm how wide the picture stands on the report
     */
    PDImageXObject of(PDDocument document, Box region, double printedWidthMm) throws IOException {
        double finest = region.width() * ink.pixelsPerMm();
        int widthPx = Math.max(8, (int) Math.round(Math.min(finest, printedWidthMm * PIXELS_PER_PRINTED_MM)));
        int heightPx = Math.max(8, (int) Math.round(widthPx * region.height() / region.width()));
        BufferedImage picture = new BufferedImage(widthPx, heightPx, BufferedImage.TYPE_BYTE_GRAY);
        byte[] grey = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
        double step = region.width() / widthPx * ink.pixelsPerMm();
        double firstColumn = region.left() * ink.pixelsPerMm();
        double firstRow = ink.heightPx() - region.top() * ink.pixelsPerMm();
        for (int row = 0; row < heightPx; row++) {
            int top = (int) Math.floor(firstRow + row * step);
            int bottom = Math.max(top + 1, (int) Math.floor(firstRow + (row + 1) * step));
            for (int column = 0; column < widthPx; column++) {
                int left = (int) Math.floor(firstColumn + column * step);
                int right = Math.max(left + 1, (int) Math.floor(firstColumn + (column + 1) * step));
                grey[row * widthPx + column] = shade(mean(left, top, right, bottom));
            }
        }
        return LosslessFactory.createFromImage(document, picture);
    }

    private byte shade(double inkThere) {
        double shown = Math.max(0, Math.min(255, (inkThere - PAPER_INK) * strength));
        return (byte) (255 - Math.round(shown));
    }

    private double mean(int left, int top, int right, int bottom) {
        int fromColumn = Math.max(0, left);
        int toColumn = Math.min(ink.widthPx(), right);
        int fromRow = Math.max(0, top);
        int toRow = Math.min(ink.heightPx(), bottom);
        if (fromColumn >= toColumn || fromRow >= toRow) {
            return 0;
        }
        byte[] bytes = ink.bytes();
        long sum = 0;
        for (int row = fromRow; row < toRow; row++) {
            int start = row * ink.widthPx();
            for (int column = fromColumn; column < toColumn; column++) {
                sum += bytes[start + column] & 0xff;
            }
        }
        return (double) sum / ((long) (right - left) * (bottom - top));
    }
}
