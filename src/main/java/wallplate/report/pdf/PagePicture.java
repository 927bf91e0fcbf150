package wallplate.report.pdf;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import wallplate.sheet.InkImage;

/** A piece of a learner's level page as a picture for a report: dark pencil on white, a little lighter than it is. */
final class PagePicture {

    /** What a print shows of pencil lines without making the file large. */
    private static final double PIXELS_PER_PRINTED_MM = 7;
    /** The share of the ink that is kept, so that what is drawn over it stands out. */
    private static final double KEPT_INK = 0.8;

    private PagePicture() {}

    /**
     * The picture of a region for a place on the report of the same proportions; outside the page it is white.
     *
     * @param printedWidthMm how wide the picture stands on the report
     */
    static PDImageXObject of(PDDocument document, InkImage ink, Box region, double printedWidthMm) throws IOException {
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
                grey[row * widthPx + column] = (byte) (255 - Math.round(KEPT_INK * mean(ink, left, top, right, bottom)));
            }
        }
        return LosslessFactory.createFromImage(document, picture);
    }

    private static double mean(InkImage ink, int left, int top, int right, int bottom) {
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
