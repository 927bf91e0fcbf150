package wallplate.drafting.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.pdfbox.util.Matrix;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Picture;

/**
 * A PDF in the making: pages at true scale, one picture each.
 *
 * <p>Neither a date nor a random number goes in, so the same pictures give the same bytes. Viewers are asked not to
 * scale the pages when printing.
 */
public final class PdfBook implements AutoCloseable {

    /** Points in a millimetre. */
    static final float POINTS_PER_MM = 72f / 25.4f;

    private final PDDocument document = new PDDocument();
    private final EmbeddedFaces faces = new EmbeddedFaces(document);

    /** A book in English. */
    public PdfBook(String title) {
        this(title, Locale.UK);
    }

    public PdfBook(String title, Locale language) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        document.setDocumentInformation(information);
        document.setDocumentId((long) title.hashCode());
        document.getDocumentCatalog().setLanguage(language.toLanguageTag());
        PDViewerPreferences preferences =
                new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        document.getDocumentCatalog().setViewerPreferences(preferences);
    }

    /** A picture that many pages share: it is stored once. */
    public static final class Stamp {

        private final PDFormXObject form;

        private Stamp(PDFormXObject form) {
            this.form = form;
        }
    }

    public void add(Picture picture) {
        try {
            PDPage page = page(picture.widthMm(), picture.heightMm());
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                ink(content, picture.inks());
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("a page could not be written", impossible);
        }
    }

    public Stamp stamp(Picture picture) {
        try {
            // An appearance stream is a form like any other; its content stream can be compressed, a plain form's not.
            PDAppearanceStream form = new PDAppearanceStream(document);
            form.setBBox(rectangle(picture.widthMm(), picture.heightMm()));
            form.setResources(new PDResources());
            try (PDPageContentStream content = new PDPageContentStream(
                    document, form, form.getContentStream().createOutputStream(COSName.FLATE_DECODE))) {
                ink(content, picture.inks());
            }
            return new Stamp(form);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a page could not be written", impossible);
        }
    }

    /** A page that shows the stamp with the picture's ink over it. */
    public void add(Stamp stamp, Picture picture) {
        try {
            PDPage page = page(picture.widthMm(), picture.heightMm());
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.drawForm(stamp.form);
                ink(content, picture.inks());
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException("a page could not be written", impossible);
        }
    }

    public byte[] bytes() {
        try (ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException impossible) {
            throw new UncheckedIOException("the document could not be written", impossible);
        }
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException impossible) {
            throw new UncheckedIOException("the document could not be closed", impossible);
        }
    }

    private PDPage page(double widthMm, double heightMm) {
        PDPage page = new PDPage(rectangle(widthMm, heightMm));
        document.addPage(page);
        return page;
    }

    private static PDRectangle rectangle(double widthMm, double heightMm) {
        return new PDRectangle((float) (widthMm * POINTS_PER_MM), (float) (heightMm * POINTS_PER_MM));
    }

    private void ink(PDPageContentStream content, List<Ink> inks) throws IOException {
        content.saveGraphicsState();
        content.transform(Matrix.getScaleInstance(POINTS_PER_MM, POINTS_PER_MM));
        PdfPen pen = new PdfPen(content, faces);
        for (Ink ink : inks) {
            pen.ink(ink);
        }
        content.restoreGraphicsState();
    }
}
