package wallplate.sheet.pdf;

import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.apache.pdfbox.jbig2.decoder.arithmetic.ArithmeticDecoder;
import org.apache.pdfbox.jbig2.decoder.arithmetic.ArithmeticIntegerDecoder;
import org.apache.pdfbox.jbig2.decoder.arithmetic.CX;
import org.apache.pdfbox.jbig2.decoder.huffman.StandardTables;

/**
 * How large the symbols of one JBIG2 dictionary are (ITU-T T.88, sections 6.5 and 7.4.2).
 *
 * <p>Their sizes stand between their pixels, so the dictionary is decoded once row by row, keeping none but the last, before the library
 * decodes it whole; each size is checked before its pixels are looked at. What few scanners write is not followed and so
 * refused: symbols made out of others, tables of the file's own, contexts that go on from another dictionary.
 */
final class Jbig2Symbols {

    /** A symbol is a letter or a blot; a drawing's longest line at 600 dpi fits. */
    private static final int LONGEST_SIDE = 16_000;
    /** All symbols of a dictionary: some hundred letters of a hundred pixels a side are a megapixel. */
    private static final long MOST_PIXELS = 50_000_000;
    /** A row for each height of a symbol. */
    private static final int MOST_ROWS = 100_000;
    /** A pixel may be foretold from 128 rows before it, section 7.4.2.1.2. */
    private static final int ROWS = 256;

    private static final int CONTEXTS = 512;
    private static final int ALL_CONTEXTS = 1 << 16;
    /** A value of this size ends a row of widths. */
    private static final long OUT_OF_BAND = Long.MAX_VALUE;

    // Flags, section 7.4.2.1.1.
    private static final int HUFFMAN = 1;
    private static final int OUT_OF_OTHERS = 2;
    private static final int CONTEXTS_USED = 0x100;

    /** For each template: places of the pixels that a pixel is foretold from, figures 3 to 6, without the adaptive ones. */
    private static final int[][][] TEMPLATES = {
        {{-1, -2}, {0, -2}, {1, -2}, {-2, -1}, {-1, -1}, {0, -1}, {1, -1}, {2, -1}, {-4, 0}, {-3, 0}, {-2, 0}, {-1, 0}},
        {{-1, -2}, {0, -2}, {1, -2}, {2, -2}, {-2, -1}, {-1, -1}, {0, -1}, {1, -1}, {2, -1}, {-3, 0}, {-2, 0}, {-1, 0}},
        {{-1, -2}, {0, -2}, {1, -2}, {-2, -1}, {-1, -1}, {0, -1}, {1, -1}, {-2, 0}, {-1, 0}},
        {{-3, -1}, {-2, -1}, {-1, -1}, {0, -1}, {1, -1}, {-4, 0}, {-3, 0}, {-2, 0}, {-1, 0}},
    };

    private final ByteBuffer data;
    private final int flags;
    private long pixels;
    private int symbolRows;

    private Jbig2Symbols(byte[] segment) {
        this.data = ByteBuffer.wrap(segment);
        this.flags = data.getShort() & 0xffff;
    }

    /**
     * The pixels of all new symbols of a dictionary, as far as its data goes.
     *
     * @param segment the data of the dictionary's segment
     * @throws PageLimits.Exceeded where they are more than allowed, or cannot be told
     */
    static long pixels(byte[] segment) throws IOException {
        if (segment.length < Short.BYTES) {
            return 0;
        }
        Jbig2Symbols symbols = new Jbig2Symbols(segment);
        try {
            symbols.read();
        } catch (EOFException | BufferUnderflowException e) {
            // The library finds no more than this either.
        }
        return symbols.pixels;
    }

    private void read() throws IOException {
        if ((flags & (OUT_OF_OTHERS | CONTEXTS_USED)) != 0) {
            throw new PageLimits.Exceeded("a JBIG2 image of the page makes symbols out of others");
        }
        if ((flags & HUFFMAN) == 0) {
            readArithmetic();
        } else {
            readHuffman();
        }
    }

    private void readArithmetic() throws IOException {
        int template = flags >> 10 & 3;
        int[][] neighbours = withAdaptive(template);
        int count = readCount();
        ArithmeticDecoder decoder = new ArithmeticDecoder(rest());
        ArithmeticIntegerDecoder numbers = new ArithmeticIntegerDecoder(decoder);
        CX heights = new CX(CONTEXTS, 1);
        CX widths = new CX(CONTEXTS, 1);
        CX contexts = new CX(ALL_CONTEXTS, 1);
        int height = 0;
        for (int decoded = 0; decoded < count; ) {
            height = grown(height, numbers.decode(heights));
            int width = 0;
            long wider = numbers.decode(widths);
            for (; wider != OUT_OF_BAND && decoded < count; decoded++) {
                width = grown(width, wider);
                add(width, height);
                skipPixels(width, height, neighbours, decoder, contexts);
                wider = numbers.decode(widths);
            }
            countRow();
        }
    }

    /** Decodes a symbol's pixels, each foretold from others, and forgets them. */
    private static void skipPixels(int width, int height, int[][] neighbours, ArithmeticDecoder decoder, CX contexts)
            throws IOException {
        byte[][] rows = new byte[ROWS][];
        for (int y = 0; y < height; y++) {
            byte[] row = new byte[width];
            rows[y % ROWS] = row;
            for (int x = 0; x < width; x++) {
                int context = 0;
                for (int[] neighbour : neighbours) {
                    int column = x + neighbour[0];
                    int above = y + neighbour[1];
                    boolean inside = column >= 0 && column < width && above >= 0 && above <= y;
                    context = context << 1 | (inside ? rows[above % ROWS][column] : 0);
                }
                contexts.setIndex(context);
                row[x] = (byte) decoder.decode(contexts);
            }
        }
    }

    private int[][] withAdaptive(int template) {
        int[][] fixed = TEMPLATES[template];
        int adaptive = template == 0 ? 4 : 1;
        int[][] all = Arrays.copyOf(fixed, fixed.length + adaptive);
        for (int i = 0; i < adaptive; i++) {
            all[fixed.length + i] = new int[] {data.get(), data.get()};
        }
        return all;
    }

    /** Sizes alone are coded by tables, section 6.5.9: the pixels of a row of symbols follow in one piece. */
    private void readHuffman() throws IOException {
        int heightTable = flags >> 2 & 3;
        int widthTable = flags >> 4 & 3;
        if (heightTable > 1 || widthTable > 1 || (flags & 0x40) != 0) {
            throw new PageLimits.Exceeded("a JBIG2 image of the page brings tables of its own");
        }
        int count = readCount();
        ImageInputStream in = rest();
        int height = 0;
        for (int decoded = 0; decoded < count; ) {
            height = grown(height, StandardTables.getTable(4 + heightTable).decode(in));
            int width = 0;
            int together = 0;
            long wider = StandardTables.getTable(2 + widthTable).decode(in);
            for (; wider != OUT_OF_BAND && decoded < count; decoded++) {
                width = grown(width, wider);
                together = grown(together, width);
                add(width, height);
                wider = StandardTables.getTable(2 + widthTable).decode(in);
            }
            countRow();
            long bytes = StandardTables.getTable(1).decode(in);
            skipBits(in);
            in.seek(in.getStreamPosition() + (bytes == 0 ? (long) height * ((together + 7) / 8) : bytes));
        }
    }

    private static void skipBits(ImageInputStream in) throws IOException {
        if (in.getBitOffset() != 0) {
            in.setBitOffset(0);
            in.read();
        }
    }

    /** How many symbols are new; how many are handed on stands before it. */
    private int readCount() {
        data.getInt();
        int count = data.getInt();
        return count < 0 ? Integer.MAX_VALUE : count;
    }

    private ImageInputStream rest() {
        return new MemoryCacheImageInputStream(
                new ByteArrayInputStream(data.array(), data.position(), data.remaining()));
    }

    private static int grown(int side, long by) throws PageLimits.Exceeded {
        long next = side + by;
        if (by == OUT_OF_BAND || next < 0 || next > LONGEST_SIDE) {
            throw new PageLimits.Exceeded("a symbol of a JBIG2 image of the page is " + next + " pixels long");
        }
        return (int) next;
    }

    /** A dictionary of nothing but rows without symbols would never end. */
    private void countRow() throws PageLimits.Exceeded {
        symbolRows++;
        if (symbolRows > MOST_ROWS) {
            throw new PageLimits.Exceeded("the symbols of a JBIG2 image of the page stand in too many rows");
        }
    }

    private void add(int width, int height) throws PageLimits.Exceeded {
        pixels += (long) width * height;
        if (pixels > MOST_PIXELS) {
            throw new PageLimits.Exceeded("the symbols of a JBIG2 image of the page are too large");
        }
    }
}
