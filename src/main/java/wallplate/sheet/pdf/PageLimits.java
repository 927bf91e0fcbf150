package wallplate.sheet.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/**
 * What one page of a PDF file may cost: pixels, unpacked bytes and time. A page that asks for more is given up.
 *
 * @param mostPixels of one image
 * @param deadlineNanos when, by {@code System.nanoTime()}, work on the page ends
 */
record PageLimits(long mostPixels, long deadlineNanos) {

    /** A page's drawing instructions are a few kilobytes; a megabyte of curves is much. */
    private static final long MOST_CONTENT_BYTES = 64_000_000;

    private static final int SMALLEST_ALLOWANCE = 4_000_000;
    private static final int LARGEST_COLOURS = 4;

    /** Signals that a page asked for more than its limits. */
    static final class Exceeded extends IOException {

        private static final long serialVersionUID = 1L;

        Exceeded(String message) {
            super(message);
        }
    }

    void checkTime() throws Exceeded {
        if (System.nanoTime() - deadlineNanos > 0) {
            throw new Exceeded("the page takes too long");
        }
    }

    void checkContent(COSStream content) throws IOException {
        if (unpackedExceeds(content, MOST_CONTENT_BYTES)) {
            throw new Exceeded("the page's content unpacks to more than " + MOST_CONTENT_BYTES + " bytes");
        }
    }

    /** Checks an image and its masks by their headers, before anything of them is decoded. */
    void checkImage(PDImage image) throws IOException {
        if ((long) image.getWidth() * image.getHeight() > mostPixels) {
            throw new Exceeded("an image of the page is too large");
        }
        if (image.getCOSObject() instanceof COSStream stream) {
            checkImage(stream);
            for (COSName mask : new COSName[] {COSName.SMASK, COSName.MASK}) {
                if (stream.getDictionaryObject(mask) instanceof COSStream masked) {
                    checkImage(masked);
                }
            }
        }
    }

    private void checkImage(COSStream stream) throws IOException {
        long pixels = (long) stream.getInt(COSName.WIDTH, COSName.W, 0) * stream.getInt(COSName.HEIGHT, COSName.H, 0);
        if (pixels > mostPixels || pixels < 0) {
            throw new Exceeded("an image of the page is too large");
        }
        if (unpackedExceeds(stream, 2 * LARGEST_COLOURS * pixels + SMALLEST_ALLOWANCE)) {
            throw new Exceeded("an image of the page unpacks to more than its size");
        }
    }

    /** Whether a stream that is packed by deflate would unpack to more; other packings cannot grow as much. */
    private static boolean unpackedExceeds(COSStream stream, long most) throws IOException {
        if (!isDeflated(stream.getDictionaryObject(COSName.FILTER))) {
            return false;
        }
        Inflater inflater = new Inflater();
        byte[] packed = new byte[65_536];
        byte[] unpacked = new byte[65_536];
        try (InputStream raw = stream.createRawInputStream()) {
            long total = 0;
            while (!inflater.finished() && total <= most) {
                if (inflater.needsInput()) {
                    int read = raw.read(packed);
                    if (read <= 0) {
                        break;
                    }
                    inflater.setInput(packed, 0, read);
                }
                int count = inflater.inflate(unpacked);
                if (count == 0 && !inflater.needsInput()) {
                    break;
                }
                total += count;
            }
            return total > most;
        } catch (DataFormatException e) {
            return false;
        } finally {
            inflater.end();
        }
    }

    private static boolean isDeflated(COSBase filter) throws Exceeded {
        if (!(filter instanceof COSArray filters)) {
            return isDeflate(filter);
        }
        int deflates = 0;
        for (int i = 0; i < filters.size(); i++) {
            deflates += isDeflate(filters.getObject(i)) ? 1 : 0;
        }
        if (deflates > 1) {
            throw new Exceeded("a stream of the page is packed more than once");
        }
        return filters.size() > 0 && isDeflate(filters.getObject(0));
    }

    private static boolean isDeflate(COSBase filter) {
        return COSName.FLATE_DECODE.equals(filter) || COSName.FLATE_DECODE_ABBREVIATION.equals(filter);
    }
}
