package wallplate.sheet.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.awt.image.BufferedImage;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.CCITTFactory;

/**
 * JBIG2 as PDF files embed it, after ITU-T T.88, section 7: a page and one region, coded as a group 4 fax codes it (MMR).
 */
final class Jbig2 {

    private static final int PAGE_INFORMATION = 48;
    private static final int IMMEDIATE_GENERIC_REGION = 38;

    private Jbig2() {}

    /** A black and white picture; PDFBox's fax encoder does the coding. */
    static byte[] of(BufferedImage image) throws IOException {
        try (PDDocument document = new PDDocument()) {
            byte[] fax = CCITTFactory.createFromImage(document, image)
                    .getCOSObject()
                    .createRawInputStream()
                    .readAllBytes();
            return page(image.getWidth(), image.getHeight(), fax);
        }
    }

    static byte[] page(int width, int height, byte[] fax) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteBuffer page = ByteBuffer.allocate(19).putInt(width).putInt(height);
        segment(out, 0, PAGE_INFORMATION, page.array());
        ByteBuffer region = ByteBuffer.allocate(18 + fax.length).putInt(width).putInt(height);
        region.position(17);
        // MMR coding, no templates.
        region.put((byte) 1).put(fax);
        segment(out, 1, IMMEDIATE_GENERIC_REGION, region.array());
        return out.toByteArray();
    }

    /** A segment of page 1 that refers to none. */
    static void segment(ByteArrayOutputStream out, int number, int type, byte[] data) {
        ByteBuffer head = ByteBuffer.allocate(11);
        head.putInt(number).put((byte) type).put((byte) 0).put((byte) 1).putInt(data.length);
        out.writeBytes(head.array());
        out.writeBytes(data);
    }
}
