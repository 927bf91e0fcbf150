package wallplate.sheet.codes;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.SheetCode;
import wallplate.sheet.page.GreyPage;

/** Reads the code that a printed sheet carries: a QR code or a Data Matrix. */
public final class CodeReader {

    private CodeReader() {}

    /** What the code in a cut-out of the page says; empty where there is none or it is another program's. */
    public static Optional<SheetCode> read(GreyPage cutOut) {
        return read(cutOut.grey(), cutOut.widthPx(), cutOut.heightPx());
    }

    /** What a code anywhere in a picture says; slower, and less sure to find one than in its cut-out. */
    public static Optional<SheetCode> read(Picture picture) {
        return read(picture.grey(), picture.widthPx(), picture.heightPx());
    }

    private static Optional<SheetCode> read(byte[] grey, int widthPx, int heightPx) {
        Map<DecodeHintType, Object> hints = new EnumMap<>(DecodeHintType.class);
        hints.put(DecodeHintType.POSSIBLE_FORMATS, List.of(BarcodeFormat.QR_CODE, BarcodeFormat.DATA_MATRIX));
        hints.put(DecodeHintType.TRY_HARDER, Boolean.TRUE);
        PlanarYUVLuminanceSource source =
                new PlanarYUVLuminanceSource(grey, widthPx, heightPx, 0, 0, widthPx, heightPx, false);
        try {
            String text = new MultiFormatReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(source)), hints)
                    .getText();
            return SheetCode.parse(text);
        } catch (NotFoundException e) {
            return Optional.empty();
        }
    }
}
