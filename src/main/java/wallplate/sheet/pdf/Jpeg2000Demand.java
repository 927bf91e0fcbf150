package wallplate.sheet.pdf;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.pdfbox.cos.COSStream;

/**
 * What a decoder of JPEG 2000 sets aside by the codestream's main header (ISO/IEC 15444-1, annex A): its samples, and its
 * tiles, precincts and code blocks, each of which is an object in memory.
 *
 * <p>The codestream is found as a decoder finds it, by the boxes of the file (annex I), so that none hides behind another.
 */
final class Jpeg2000Demand {

    private static final int SIGNATURE_BOX = 0x6a50_2020;
    private static final int CODESTREAM_BOX = 0x6a70_3263;
    private static final int START_AND_SIZE = 0xff4f_ff51;
    private static final int CODING_STYLE = 0xff52;
    private static final int FIRST_TILE = 0xff90;
    private static final int MOST_BOXES = 1000;
    private static final int MOST_MARKERS = 1000;
    /** Colours, and one mask. */
    private static final int MOST_COMPONENTS = 5;
    /** What a tile, a precinct or a code block costs, in samples. */
    private static final long OBJECT = 100;
    /** What cannot be told is more than any limit. */
    private static final long UNTOLD = Long.MAX_VALUE / 8;

    private final DataInputStream in;
    private long width;
    private long height;
    private long tileWidth;
    private long tileHeight;
    private int components;

    private Jpeg2000Demand(DataInputStream in) {
        this.in = in;
    }

    /** The pixels that decoding asks for at most; 0 where no decoder would find an image. */
    static long pixels(COSStream image) throws IOException {
        try (DataInputStream in = new DataInputStream(image.createRawInputStream())) {
            return new Jpeg2000Demand(in).pixels();
        } catch (EOFException e) {
            return 0;
        }
    }

    private long pixels() throws IOException {
        int start = in.readInt();
        if (start == START_AND_SIZE) {
            return codestream();
        }
        return in.readInt() == SIGNATURE_BOX && skipped(start - 8L) && isAtCodestream() ? codestream() : 0;
    }

    private boolean skipped(long bytes) throws IOException {
        if (bytes < 0) {
            return false;
        }
        in.skipNBytes(bytes);
        return true;
    }

    /** Goes from box to box, each with its length, until behind the first marker of the codestream. */
    private boolean isAtCodestream() throws IOException {
        for (int boxes = 0; boxes < MOST_BOXES; boxes++) {
            long length = Integer.toUnsignedLong(in.readInt());
            int type = in.readInt();
            long head = 8;
            if (length == 1) {
                length = in.readLong();
                head = 16;
            }
            if (type == CODESTREAM_BOX) {
                return in.readInt() == START_AND_SIZE;
            }
            // A length of 0 reaches to the end of the file.
            if (length == 0 || !skipped(length - head)) {
                return false;
            }
        }
        return false;
    }

    /** Behind the markers of start and size, annex A.5.1. */
    private long codestream() throws IOException {
        ByteBuffer size = segment();
        if (size.limit() < 36) {
            return UNTOLD;
        }
        width = number(size, 2) - number(size, 10);
        height = number(size, 6) - number(size, 14);
        tileWidth = Math.min(width, number(size, 18));
        tileHeight = Math.min(height, number(size, 22));
        components = size.getShort(34) & 0xffff;
        if (width <= 0 || height <= 0 || tileWidth <= 0 || tileHeight <= 0 || components > MOST_COMPONENTS) {
            return UNTOLD;
        }
        long most = Math.max(product(width, height), OBJECT * tiles());
        for (int markers = 0; markers < MOST_MARKERS; markers++) {
            int marker = in.readUnsignedShort();
            if (marker == FIRST_TILE) {
                return most;
            }
            ByteBuffer segment = segment();
            if (marker == CODING_STYLE) {
                most = Math.max(most, OBJECT * objects(segment));
            }
        }
        return UNTOLD;
    }

    /** A marker segment without its length. */
    private ByteBuffer segment() throws IOException {
        int length = in.readUnsignedShort();
        return ByteBuffer.wrap(in.readNBytes(Math.max(0, length - 2)));
    }

    private long tiles() {
        return product(parts(width, tileWidth), parts(height, tileHeight));
    }

    /** The precincts and code blocks of all tiles, levels and components, annexes A.6.1 and B.6; by layers, too. */
    private long objects(ByteBuffer style) {
        if (style.limit() < 10) {
            return UNTOLD;
        }
        boolean own = (style.get(0) & 1) != 0;
        long layers = style.getShort(2) & 0xffff;
        int levels = style.get(5) & 0xff;
        if (levels > 32 || own && style.limit() < 11 + levels) {
            return UNTOLD;
        }
        long blocks = product(
                parts(tileWidth, 1L << (style.get(6) & 0xf) + 2), parts(tileHeight, 1L << (style.get(7) & 0xf) + 2));
        long precincts = 0;
        for (int level = 0; level <= levels; level++) {
            int exponents = own ? style.get(10 + level) & 0xff : 0xff;
            int reduction = levels - level;
            precincts += product(
                    parts(parts(tileWidth, 1L << reduction), 1L << (exponents & 0xf)),
                    parts(parts(tileHeight, 1L << reduction), 1L << (exponents >> 4)));
        }
        // A layer of a precinct is a packet; some tens of layers are usual, and they cost little.
        return product(tiles(), product(components, Math.max(blocks, precincts) + precincts * layers / 16));
    }

    private static long parts(long whole, long part) {
        return (whole + part - 1) / part;
    }

    private static long number(ByteBuffer data, int at) {
        return Integer.toUnsignedLong(data.getInt(at));
    }

    private static long product(long one, long other) {
        return other != 0 && one > UNTOLD / other ? UNTOLD : one * other;
    }
}
