package wallplate.sheet.pdf;

import java.io.IOException;
import java.util.concurrent.TimeUnit;
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
    /** Objects of a file packed together, by the hundred; one that is read becomes many times as large in memory. */
    private static final long MOST_PACKED_OBJECTS_BYTES = 8_000_000;
    /** The table of where objects are: some bytes for each object. */
    private static final long MOST_TABLE_BYTES = 2_000_000;

    private static final int SMALLEST_ALLOWANCE = 4_000_000;
    private static final int LARGEST_COLOURS = 4;

    /** Signals that a page asked for more than its limits. */
    static final class Exceeded extends IOException {

        private static final long serialVersionUID = 1L;

        Exceeded(String message) {
            super(message);
        }
    }

    static PageLimits ending(long mostPixels, long seconds) {
        return new PageLimits(mostPixels, System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds));
    }

    void checkTime() throws Exceeded {
        if (System.nanoTime() - deadlineNanos > 0) {
            throw new Exceeded("the page takes too long");
        }
    }

    /** Checks any stream of a file, before anything of it is unpacked. */
    void checkStream(COSStream stream) throws IOException {
        COSName type = stream.getCOSName(COSName.TYPE);
        if (COSName.XREF.equals(type)) {
            check(stream, MOST_TABLE_BYTES);
        } else if (COSName.OBJ_STM.equals(type)) {
            check(stream, MOST_PACKED_OBJECTS_BYTES);
        } else if (COSName.IMAGE.equals(stream.getCOSName(COSName.SUBTYPE))) {
            checkImage(stream);
        } else {
            check(stream, MOST_CONTENT_BYTES);
        }
    }

    void checkContent(COSStream content) throws IOException {
        check(content, MOST_CONTENT_BYTES);
    }

    private static void check(COSStream stream, long most) throws IOException {
        if (new UnpackedSize(stream).exceeds(most)) {
            throw new Exceeded("a stream unpacks to more than " + most + " bytes");
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
        if (pixels > mostPixels || pixels < 0 || EncodedImageSize.pixels(stream) > mostPixels) {
            throw new Exceeded("an image of the page is too large");
        }
        check(stream, 2 * LARGEST_COLOURS * pixels + SMALLEST_ALLOWANCE);
    }
}
