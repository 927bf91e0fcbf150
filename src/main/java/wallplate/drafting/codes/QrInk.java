package wallplate.drafting.codes;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.List;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.sheet.PrintedMarks.CodePlace;

/**
 * A QR code (ISO/IEC 18004) as filled squares, a quarter of which may be lost.
 *
 * <p>Level Q of the error correction restores about a quarter of the code: pencil strokes and coffee happen.
 */
public final class QrInk {

    private static final Owner OWNER = new Owner(Layer.MARK, "", 0, "code");

    private QrInk() {}

    public static List<Ink> of(String payload, CodePlace place) {
        ByteMatrix modules = modules(payload);
        double left = place.centre().x() - place.size() / 2;
        double bottom = place.centre().y() - place.size() / 2;
        Cells cells = new Cells(left, bottom, place.size() / modules.getWidth(), OWNER);
        return cells.inked(modules.getHeight(), modules.getWidth(), (row, column) -> modules.get(column, row) == 1);
    }

    private static ByteMatrix modules(String payload) {
        try {
            return Encoder.encode(payload, ErrorCorrectionLevel.Q).getMatrix();
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("a QR code cannot hold \"" + payload + "\"", tooLong);
        }
    }
}
