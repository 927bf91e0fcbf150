package wallplate.sheet.formats;


/**
 * Whether the lengths that a picture file states lie within it, looked at before a decoder believes them.
 *
 * <p>A decoder sets aside as much memory as a length asks for, however short the file is, and decodes as many passes as
 * a JPEG names. The BMP and WebP decoders stop at the file's end by themselves.
 */
public final class StatedLengths {

    /** Length, name and checksum of a PNG chunk. */
    private static final int PNG_CHUNK_RIM = 12;
    private static final int PNG_SIGNATURE = 8;
    private static final int MARK = 0xff;
    private static final int JPEG_SCAN = 0xda;
    /** A progressive JPEG of a grey or coloured picture has about ten passes; each costs time for the whole picture. */
    private static final int MOST_JPEG_SCANS = 100;

    private StatedLengths() {}

    /** Whether a file of a format with one picture can be given to a decoder. */
    public static boolean areWithin(FileFormat format, byte[] content) {
        return switch (format) {
            case PNG -> pngChunksEnd(new Bytes(content, true));
            case JPEG -> jpegScans(content) <= MOST_JPEG_SCANS;
            default -> true;
        };
    }

    /** Whether no tile of a TIFF page has more pixels than a page may have: a small page can be cut into huge tiles. */
    public static boolean areWithin(TiffDirectory page, long mostPixels) {
        return page.tilePixels() <= mostPixels;
    }

    /** Whether the chunks of a PNG file follow one another up to IEND, after the PNG specification, section 5.3. */
    private static boolean pngChunksEnd(Bytes bytes) {
        long at = PNG_SIGNATURE;
        while (at + PNG_CHUNK_RIM <= bytes.length()) {
            long end = at + PNG_CHUNK_RIM + bytes.unsigned32(at);
            if (end > bytes.length()) {
                return false;
            }
            if (bytes.hasAt(at + 4, "IEND")) {
                return true;
            }
            at = end;
        }
        return false;
    }

    /** The start-of-scan marks; within a scan's data none occurs, after ITU-T T.81, B.1.1.5. */
    private static int jpegScans(byte[] content) {
        int scans = 0;
        for (int at = 0; at + 1 < content.length; at++) {
            if ((content[at] & 0xff) == MARK && (content[at + 1] & 0xff) == JPEG_SCAN) {
                scans++;
            }
        }
        return scans;
    }
}
