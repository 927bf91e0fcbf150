package wallplate.sheet.pdf;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** PDF files of one page that is one picture, coded as scanners code it and no library here writes it. */
public final class CodedPdf {

    private CodedPdf() {}

    /** A black and white picture of 300 x 200 pixels as JBIG2. */
    public static byte[] jbig2(BufferedImage image) throws IOException {
        return RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode",
                        Jbig2.of(image))
                .end();
    }

    /** A grey picture of 300 x 200 pixels as JPEG 2000. */
    public static byte[] jpeg2000(BufferedImage image) throws IOException {
        ByteArrayOutputStream encoded = new ByteArrayOutputStream();
        if (!ImageIO.write(image, "jpeg2000", encoded)) {
            throw new IllegalStateException("no JPEG 2000 writer is there");
        }
        return RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /JPXDecode",
                        encoded.toByteArray())
                .end();
    }
}
