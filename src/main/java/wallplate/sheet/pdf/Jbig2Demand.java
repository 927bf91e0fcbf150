package wallplate.sheet.pdf;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * What a decoder of JBIG2 sets aside by the headers of its segments (ITU-T T.88, section 7): those of the image and those
 * that it shares with other images of the file. How large the symbols of a dictionary are, no header tells:
 * {@link Jbig2Symbols} looks.
 */
final class Jbig2Demand {

    private static final long UNKNOWN = 0xffff_ffffL;
    private static final int MOST_SEGMENTS = 10_000;
    /** Of a segment's data so much holds all numbers that are looked at. */
    private static final int HEAD = 48;
    /** What one symbol, or one place of one, costs in a decoder, in pixels of a byte. */
    private static final long OBJECT = 100;
    /** A page's regions may cover it so often: text, pictures and what is left. */
    private static final int LAYERS = 4;

    // Segment types, section 7.3.
    private static final int SYMBOLS = 0;
    private static final int LAST_TEXT_REGION = 7;
    private static final int PATTERNS = 16;
    private static final int FIRST_HALFTONE_REGION = 20;
    private static final int LAST_HALFTONE_REGION = 23;
    private static final int LAST_REGION = 43;
    private static final int PAGE_INFORMATION = 48;
    private static final int END_OF_STRIPE = 50;

    private long largest;
    private long all;
    private long pageWidth;

    private Jbig2Demand() {}

    /** The pixels that decoding asks for at most. */
    static long pixels(COSStream image) throws IOException {
        Jbig2Demand demand = new Jbig2Demand();
        if (EncodedImageSize.lastParameters(image) instanceof COSDictionary parameters
                && parameters.getDictionaryObject(COSName.JBIG2_GLOBALS) instanceof COSStream shared) {
            try (DataInputStream in = new DataInputStream(shared.createInputStream())) {
                demand.read(in);
            }
        }
        try (DataInputStream in = new DataInputStream(image.createRawInputStream())) {
            demand.read(in);
        }
        return Math.max(demand.largest, demand.all / LAYERS);
    }

    private void read(DataInputStream in) throws IOException {
        try {
            for (int segments = 0; segments < MOST_SEGMENTS; segments++) {
                long length = readSegment(in);
                if (length == UNKNOWN) {
                    return;
                }
            }
            throw new PageLimits.Exceeded("an image of the page has more than " + MOST_SEGMENTS + " segments");
        } catch (EOFException e) {
            // The last segment was seen, or what there is of it.
        }
    }

    /** A segment's header, section 7.2, and the beginning of its data; gives back how long that is. */
    private long readSegment(DataInputStream in) throws IOException {
        long number = Integer.toUnsignedLong(in.readInt());
        int flags = in.readUnsignedByte();
        long references = readReferences(in);
        int size = number <= 256 ? 1 : number <= 65_536 ? 2 : 4;
        in.skipNBytes(references * size + ((flags & 0x40) == 0 ? 1 : 4));
        long length = Integer.toUnsignedLong(in.readInt());
        int type = flags & 0x3f;
        byte[] head = in.readNBytes((int) Math.min(type == SYMBOLS ? Integer.MAX_VALUE : HEAD, length));
        add(type, ByteBuffer.wrap(head));
        if (length != UNKNOWN) {
            in.skipNBytes(length - head.length);
        }
        return length;
    }

    /** How many segments this one refers to: three bits, or after seven of them a number of 29 bits with flags behind. */
    private static long readReferences(DataInputStream in) throws IOException {
        int first = in.readUnsignedByte();
        if (first >> 5 < 7) {
            return first >> 5;
        }
        long count = (long) (first & 0x1f) << 24 | in.readUnsignedByte() << 16 | in.readUnsignedShort();
        in.skipNBytes((count + 8) / 8);
        return count;
    }

    private void add(int type, ByteBuffer data) throws IOException {
        if (type == SYMBOLS) {
            addSymbols(data);
            add(Jbig2Symbols.pixels(data.array()));
        } else if (type == PATTERNS) {
            addPatterns(data);
        } else if (type == PAGE_INFORMATION) {
            pageWidth = number(data, 0);
            long height = number(data, 4);
            add(height == UNKNOWN ? 0 : product(pageWidth, height));
        } else if (type == END_OF_STRIPE) {
            largest = Math.max(largest, product(pageWidth, number(data, 0) + 1));
        } else if (type <= LAST_REGION) {
            add(product(number(data, 0), number(data, 4)));
            if (type <= LAST_TEXT_REGION) {
                addText(data);
            } else if (type >= FIRST_HALFTONE_REGION && type <= LAST_HALFTONE_REGION) {
                // A grid of grey values, each a whole number in memory.
                add(4 * product(number(data, 18), number(data, 22)));
            }
        }
    }

    /** Section 7.4.2.1: how many symbols are handed on and how many are new. */
    private void addSymbols(ByteBuffer data) {
        int flags = data.limit() < 2 ? 0 : data.getShort(0);
        boolean huffman = (flags & 1) != 0;
        boolean refined = (flags & 2) != 0;
        int templates = huffman ? 0 : (flags >> 10 & 3) == 0 ? 8 : 2;
        int refinement = refined && (flags >> 12 & 1) == 0 ? 4 : 0;
        int at = 2 + templates + refinement;
        add(OBJECT * (number(data, at) + number(data, at + 4)));
    }

    /** Section 7.4.3.1: how often a symbol is put into the region. */
    private void addText(ByteBuffer data) throws PageLimits.Exceeded {
        int flags = data.limit() < 19 ? 0 : data.getShort(17);
        boolean huffman = (flags & 1) != 0;
        boolean refined = (flags & 2) != 0;
        if (refined) {
            throw new PageLimits.Exceeded("a JBIG2 image of the page makes letters of any size out of its symbols");
        }
        add(OBJECT * number(data, 19 + (huffman ? 2 : 0)));
    }

    /** Section 7.4.4.1: all patterns lie side by side in one picture. */
    private void addPatterns(ByteBuffer data) {
        if (data.limit() >= 7) {
            add(product((data.get(1) & 0xff) * (number(data, 3) + 1), data.get(2) & 0xff));
        }
    }

    private void add(long pixels) {
        largest = Math.max(largest, pixels);
        all = all + pixels < 0 ? Long.MAX_VALUE : all + pixels;
    }

    /** An unsigned number of four bytes; 0 where the data ends before it. */
    private static long number(ByteBuffer data, int at) {
        return at + 4 > data.limit() ? 0 : Integer.toUnsignedLong(data.getInt(at));
    }

    private static long product(long width, long height) {
        return height != 0 && width > Long.MAX_VALUE / 8 / height ? Long.MAX_VALUE / 8 : width * height;
    }
}
