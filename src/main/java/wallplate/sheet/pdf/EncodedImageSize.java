package wallplate.sheet.pdf;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * How many pixels an image's own header or parameters ask a decoder for, whatever its dictionary states: decoders of
 * fax, JPEG 2000 and JBIG2 go by their own.
 */
final class EncodedImageSize {

    /** A JPEG 2000 header lies in the first boxes of its file; colour profiles before it are some kilobytes. */
    private static final int JPX_SEARCHED = 4_000_000;

    private static final int FAX_COLUMNS = 1728;
    private static final long UNKNOWN_HEIGHT = 0xffff_ffffL;
    /** Segment types after ITU-T T.88, section 7.3: all between these that are no dictionaries are regions. */
    private static final int FIRST_REGION = 4;

    private static final int LAST_REGION = 43;
    private static final int PATTERNS = 16;
    private static final int PAGE_INFORMATION = 48;
    private static final int MOST_SEGMENTS = 10_000;

    private EncodedImageSize() {}

    /** The pixels that decoding asks for at most; 0 where the dictionary's own size holds. */
    static long pixels(COSStream image) throws IOException {
        COSName last = last(image.getDictionaryObject(COSName.FILTER, COSName.F));
        try {
            if (COSName.CCITTFAX_DECODE.equals(last) || COSName.CCITTFAX_DECODE_ABBREVIATION.equals(last)) {
                return fax(image);
            }
            if (COSName.JPX_DECODE.equals(last)) {
                return jpeg2000(image);
            }
            return COSName.JBIG2_DECODE.equals(last) ? jbig2(image) : 0;
        } catch (EOFException e) {
            return 0;
        }
    }

    private static COSName last(COSBase filter) {
        if (filter instanceof COSArray array && array.size() > 0) {
            return last(array.getObject(array.size() - 1));
        }
        return filter instanceof COSName name ? name : COSName.NONE;
    }

    private static long fax(COSStream image) {
        COSBase parameters = image.getDictionaryObject(COSName.DECODE_PARMS, COSName.DP);
        if (parameters instanceof COSArray array && array.size() > 0) {
            parameters = array.getObject(array.size() - 1);
        }
        long height = image.getInt(COSName.HEIGHT, COSName.H, 0);
        if (!(parameters instanceof COSDictionary dictionary)) {
            return FAX_COLUMNS * height;
        }
        long columns = dictionary.getInt(COSName.COLUMNS, FAX_COLUMNS);
        return columns * Math.max(height, dictionary.getInt(COSName.ROWS, 0));
    }

    /** After ISO/IEC 15444-1, annex A.5.1: the size marker follows the start of the codestream. */
    private static long jpeg2000(COSStream image) throws IOException {
        try (InputStream raw = image.createRawInputStream()) {
            byte[] start = raw.readNBytes(JPX_SEARCHED);
            for (int at = 0; at + 24 <= start.length; at++) {
                if (unsigned32(start, at) == 0xff4f_ff51L) {
                    long width = unsigned32(start, at + 8) - unsigned32(start, at + 16);
                    long height = unsigned32(start, at + 12) - unsigned32(start, at + 20);
                    return product(width, height);
                }
            }
            return 0;
        }
    }

    private static long unsigned32(byte[] bytes, int at) {
        long value = 0;
        for (int i = 0; i < 4; i++) {
            value = value << 8 | bytes[at + i] & 0xff;
        }
        return value;
    }

    private static long product(long width, long height) {
        return width <= 0 || height <= 0 ? 0 : Math.multiplyExact(width, height);
    }

    /** After ITU-T T.88, section 7.2: the segments follow one another, each with its length. */
    private static long jbig2(COSStream image) throws IOException {
        long most = 0;
        try (DataInputStream in = new DataInputStream(image.createRawInputStream())) {
            for (int segments = 0; segments < MOST_SEGMENTS; segments++) {
                long number = Integer.toUnsignedLong(in.readInt());
                int flags = in.readUnsignedByte();
                int references = in.readUnsignedByte() >> 5;
                if (references == 7) {
                    in.skipNBytes(3);
                    return most;
                }
                int size = number <= 256 ? 1 : number <= 65_536 ? 2 : 4;
                in.skipNBytes((long) references * size + ((flags & 0x40) == 0 ? 1 : 4));
                long length = Integer.toUnsignedLong(in.readInt());
                int type = flags & 0x3f;
                byte[] head = in.readNBytes((int) Math.min(8, length));
                most = Math.max(most, pixels(type, head));
                if (length == UNKNOWN_HEIGHT) {
                    return most;
                }
                in.skipNBytes(length - head.length);
            }
        } catch (EOFException e) {
            return most;
        }
        return most;
    }

    private static long pixels(int type, byte[] head) {
        boolean region = type >= FIRST_REGION && type <= LAST_REGION && type != PATTERNS;
        if (head.length < 8 || !(region || type == PAGE_INFORMATION)) {
            return 0;
        }
        long height = unsigned32(head, 4);
        return height == UNKNOWN_HEIGHT ? 0 : product(unsigned32(head, 0), height);
    }
}
