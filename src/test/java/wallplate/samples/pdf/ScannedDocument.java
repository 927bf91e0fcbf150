package wallplate.samples.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** A PDF as an office scanner makes it: one JPEG picture a page, filling the page. */
public final class ScannedDocument {

    private ScannedDocument() {}

    /** One scanned page: a JPEG file, its size in pixels and the resolution at which it was scanned. */
    @SuppressWarnings("ArrayRecordComponent")
    public record ScannedPage(byte[] jpeg, int widthPx, int heightPx, double dpi) {}

    /** The document's bytes, the same for the same pages. */
    public static byte[] of(List<ScannedPage> pages) {
        try (PDDocument document = new PDDocument()) {
            document.setDocumentId(1L);
            for (ScannedPage page : pages) {
                add(document, page);
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void add(PDDocument document, ScannedPage page) throws IOException {
        float widthPt = (float) (page.widthPx() * 72 / page.dpi());
        float heightPt = (float) (page.heightPx() * 72 / page.dpi());
        PDPage sheet = new PDPage(new PDRectangle(widthPt, heightPt));
        document.addPage(sheet);
        PDImageXObject picture = PDImageXObject.createFromByteArray(document, page.jpeg(), "scan");
        try (PDPageContentStream content = new PDPageContentStream(document, sheet)) {
            content.drawImage(picture, 0, 0, widthPt, heightPt);
        }
    }
}
