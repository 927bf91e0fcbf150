package wallplate.sheet.pdf;

import java.io.EOFException;
import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * How many pixels an image's own headers or parameters ask a decoder for, whatever its dictionary states: decoders of fax,
 * JPEG 2000 and JBIG2 go by their own.
 */
final class EncodedImageSize {

    private static final int FAX_COLUMNS = 1728;

    private EncodedImageSize() {}

    /** The pixels that decoding asks for at most; 0 where the dictionary's own size holds. */
    static long pixels(COSStream image) throws IOException {
        COSName last = last(image.getDictionaryObject(COSName.FILTER, COSName.F));
        try {
            if (COSName.CCITTFAX_DECODE.equals(last) || COSName.CCITTFAX_DECODE_ABBREVIATION.equals(last)) {
                return fax(image);
            }
            if (COSName.JPX_DECODE.equals(last)) {
                return Jpeg2000Demand.pixels(image);
            }
            return COSName.JBIG2_DECODE.equals(last) ? Jbig2Demand.pixels(image) : 0;
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

    /** The parameters of the filter that is undone last. */
    static COSBase lastParameters(COSStream image) {
        COSBase parameters = image.getDictionaryObject(COSName.DECODE_PARMS, COSName.DP);
        return parameters instanceof COSArray array && array.size() > 0
                ? array.getObject(array.size() - 1)
                : parameters;
    }

    private static long fax(COSStream image) {
        COSBase parameters = lastParameters(image);
        long height = image.getInt(COSName.HEIGHT, COSName.H, 0);
        if (!(parameters instanceof COSDictionary dictionary)) {
            return FAX_COLUMNS * height;
        }
        long columns = dictionary.getInt(COSName.COLUMNS, FAX_COLUMNS);
        return columns * Math.max(height, dictionary.getInt(COSName.ROWS, 0));
    }
}
