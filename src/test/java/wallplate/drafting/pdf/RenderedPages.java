package wallplate.drafting.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Pages as PDFBox renders them. */
public final class RenderedPages {

    private RenderedPages() {}

    public static BufferedImage grey(byte[] pdf, int page, int dpi) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFRenderer(document).renderImageWithDPI(page, dpi, ImageType.GRAY);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
