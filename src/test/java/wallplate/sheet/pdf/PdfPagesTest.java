package wallplate.sheet.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.image.CCITTFactory;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;

/** Scans in PDF files come out bit by bit as PDFBox itself decodes them, and bad files are refused. */
class PdfPagesTest {

    private static final long MOST_PIXELS = 80_000_000;
    /** A page of 300 x 200 pixels at 100 dpi. */
    private static final PDRectangle PAGE = new PDRectangle(216, 144);

    private interface ImageMaker {
        PDImageXObject make(PDDocument document) throws IOException;
    }

    @Test
    void givesLosslessImageBitByBit() throws IOException {
        byte[] pdf = pdf(document -> LosslessFactory.createFromImage(document, gradient()));

        Picture picture = onlyPicture(pdf);

        assertThat(picture.grey()).isEqualTo(decodedByPdfBox(pdf));
        assertThat(picture.dpiX()).isCloseTo(100, within(0.01));
        assertThat(picture.dpiY()).isCloseTo(100, within(0.01));
    }

    @Test
    void givesFaxImageBitByBit() throws IOException {
        byte[] pdf = pdf(document -> CCITTFactory.createFromImage(document, bilevel()));

        assertThat(onlyPicture(pdf).grey()).isEqualTo(decodedByPdfBox(pdf));
    }

    /** The JPEG's own bytes are decoded; two decoders of the same bytes differ by rounding. */
    @Test
    void givesJpegAsPdfBoxDoes() throws IOException {
        byte[] pdf = pdf(document -> JPEGFactory.createFromImage(document, gradient(), 0.9f));

        byte[] expected = decodedByPdfBox(pdf);
        byte[] actual = onlyPicture(pdf).grey();
        for (int i = 0; i < expected.length; i++) {
            assertThat(actual[i] & 0xff).isCloseTo(expected[i] & 0xff, within(2));
        }
    }

    @Test
    void givesJpeg2000BitByBit() throws IOException {
        ByteArrayOutputStream encoded = new ByteArrayOutputStream();
        assertThat(ImageIO.write(gradient(), "jpeg2000", encoded))
                .as("a JPEG 2000 writer")
                .isTrue();
        byte[] pdf = pdf(document -> {
            PDImageXObject image = new PDImageXObject(
                    document,
                    new ByteArrayInputStream(encoded.toByteArray()),
                    COSName.JPX_DECODE,
                    300,
                    200,
                    8,
                    PDDeviceGray.INSTANCE);
            return image;
        });

        assertThat(onlyPicture(pdf).grey()).isEqualTo(decodedByPdfBox(pdf));
    }

    /** The reference is PDFBox's renderer, at the image's own resolution. */
    @ParameterizedTest
    @CsvSource({"0, 0", "90, 0", "180, 0", "270, 0", "0, 90", "0, 180", "0, 270", "90, 90"})
    void turnsScansAsAViewerShowsThem(int pageRotation, int imageRotation) throws IOException {
        byte[] pdf = turned(pageRotation, imageRotation);

        Picture picture = onlyPicture(pdf);

        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage shown = new PDFRenderer(document).renderImageWithDPI(0, 100, ImageType.GRAY);
            assertThat(picture.widthPx()).isCloseTo(shown.getWidth(), within(1));
            assertThat(picture.heightPx()).isCloseTo(shown.getHeight(), within(1));
            for (int[] share : new int[][] {{1, 1}, {3, 1}, {1, 3}, {3, 3}}) {
                int x = picture.widthPx() * share[0] / 4;
                int y = picture.heightPx() * share[1] / 4;
                assertThat(picture.grey()[y * picture.widthPx() + x] & 0xff)
                        .as("at %d, %d", x, y)
                        .isCloseTo(shown.getRaster().getSample(x, y, 0), within(40));
            }
        }
    }

    @Test
    void rendersPagesThatAreNoScanAt300Dpi() throws IOException {
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(PAGE);
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.moveTo(10, 10);
                content.lineTo(200, 100);
                content.stroke();
            }
            pdf = saved(document);
        }

        Picture picture = onlyPicture(pdf);

        assertThat(picture.widthPx()).isCloseTo(900, within(1));
        assertThat(picture.dpiX()).isCloseTo(300, within(0.5));
    }

    @Test
    void readsMixedSizesInOneFile() throws IOException {
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            add(document, LosslessFactory.createFromImage(document, gradient()), 0, 0);
            PDPage wide = new PDPage(new PDRectangle(500, 100));
            document.addPage(wide);
            pdf = saved(document);
        }

        assertThat(pages(pdf))
                .extracting(page -> ((Picture) page.content()).widthPx())
                .containsExactly(300, 2083);
    }

    @Test
    void refusesPasswordAndSaysSo() throws IOException {
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage(PAGE));
            document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
            pdf = saved(document);
        }

        assertThat(onlyRefusal(pdf)).contains("password");
    }

    @Test
    void refusesTruncatedFile() throws IOException {
        byte[] pdf = pdf(document -> LosslessFactory.createFromImage(document, gradient()));

        assertThat(onlyRefusal(Arrays.copyOf(pdf, pdf.length / 3))).contains("damaged");
    }

    @Test
    void refusesImageThatAsksForTooManyPixels() throws IOException {
        byte[] packed = deflated(1_000_000);
        byte[] pdf = pdf(document -> new PDImageXObject(
                document,
                new ByteArrayInputStream(packed),
                COSName.FLATE_DECODE,
                20_000,
                20_000,
                8,
                PDDeviceGray.INSTANCE));

        assertThat(pdf.length).isLessThan(100_000);
        assertThat(onlyRefusal(pdf)).contains("more memory or time");
    }

    @Test
    void refusesImageThatUnpacksToMoreThanItsSize() throws IOException {
        byte[] packed = deflated(300_000_000);
        byte[] pdf = pdf(document -> new PDImageXObject(
                document, new ByteArrayInputStream(packed), COSName.FLATE_DECODE, 300, 200, 8, PDDeviceGray.INSTANCE));

        assertThat(onlyRefusal(pdf)).contains("more memory or time");
    }

    @Test
    void refusesContentThatUnpacksWithoutEnd() throws IOException {
        byte[] packed = deflated(200_000_000);
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(PAGE);
            PDStream content = new PDStream(document);
            try (OutputStream raw = content.getCOSObject().createRawOutputStream()) {
                raw.write(packed);
            }
            content.getCOSObject().setItem(COSName.FILTER, COSName.FLATE_DECODE);
            page.setContents(content);
            document.addPage(page);
            pdf = saved(document);
        }

        assertThat(onlyRefusal(pdf)).contains("more memory or time");
    }

    /** Deflated twice: the first unpacking stays small. */
    @Test
    void refusesContentThatIsPackedTwice() throws IOException {
        byte[] packed = deflated(200_000_000);
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(PAGE);
            PDStream content = new PDStream(document, new ByteArrayInputStream(packed), COSName.FLATE_DECODE);
            COSArray twice = new COSArray();
            twice.add(COSName.FLATE_DECODE);
            twice.add(COSName.FLATE_DECODE);
            content.getCOSObject().setItem(COSName.FILTER, twice);
            page.setContents(content);
            document.addPage(page);
            pdf = saved(document);
        }

        assertThat(pdf.length).isLessThan(10_000);
        assertThat(onlyRefusal(pdf)).contains("more memory or time");
    }

    @Test
    void ignoresScripts() throws IOException {
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            add(document, LosslessFactory.createFromImage(document, gradient()), 0, 0);
            document.getDocumentCatalog().setOpenAction(new PDActionJavaScript("while (true) {}"));
            pdf = saved(document);
        }

        assertThat(onlyPicture(pdf).grey()).isEqualTo(decodedByPdfBox(pdf));
    }

    /** The picture that was coded is a reference of its own beside PDFBox's decoding. */
    @Test
    void givesJbig2BitByBit() throws IOException {
        byte[] pdf = RawPdf.withImage(
                        "/Width 300 /Height 200 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode",
                        Jbig2.of(bilevel()))
                .end();

        assertThat(onlyPicture(pdf).grey()).isEqualTo(decodedByPdfBox(pdf)).isEqualTo(bytes(bilevel()));
    }

    /** Locked against changes only: a viewer opens it without asking. */
    @Test
    void readsFileThatIsEncryptedWithoutPassword() throws IOException {
        byte[] plain = pdf(document -> LosslessFactory.createFromImage(document, gradient()));
        byte[] pdf;
        try (PDDocument document = Loader.loadPDF(plain)) {
            document.protect(new StandardProtectionPolicy("owner", "", new AccessPermission()));
            pdf = saved(document);
        }

        assertThat(onlyPicture(pdf).grey()).isEqualTo(decodedByPdfBox(plain));
    }

    /** A form that draws itself again and again. */
    @Test
    void survivesEndlessReferences() throws IOException {
        byte[] pdf;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(PAGE);
            document.addPage(page);
            var form = new org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject(document);
            form.setBBox(PAGE);
            form.setResources(new org.apache.pdfbox.pdmodel.PDResources());
            COSName own = form.getResources().add(form);
            try (var out = form.getStream().createOutputStream()) {
                out.write(("/" + own.getName() + " Do /" + own.getName() + " Do").getBytes("US-ASCII"));
            }
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.drawForm(form);
            }
            pdf = saved(document);
        }

        assertThat(pages(pdf)).hasSize(1);
    }

    private static byte[] pdf(ImageMaker maker) throws IOException {
        try (PDDocument document = new PDDocument()) {
            add(document, maker.make(document), 0, 0);
            return saved(document);
        }
    }

    private static byte[] turned(int pageRotation, int imageRotation) throws IOException {
        try (PDDocument document = new PDDocument()) {
            add(document, LosslessFactory.createFromImage(document, corners()), pageRotation, imageRotation);
            return saved(document);
        }
    }

    /** A page that its image covers wholly, however it is turned. */
    private static void add(PDDocument document, PDImageXObject image, int pageRotation, int imageRotation)
            throws IOException {
        boolean sideways = imageRotation % 180 != 0;
        float width = sideways ? PAGE.getHeight() : PAGE.getWidth();
        float height = sideways ? PAGE.getWidth() : PAGE.getHeight();
        PDPage page = new PDPage(new PDRectangle(width, height));
        page.setRotation(pageRotation);
        document.addPage(page);
        Matrix matrix = Matrix.getTranslateInstance(width / 2, height / 2);
        matrix.rotate(Math.toRadians(imageRotation));
        matrix.translate(-PAGE.getWidth() / 2, -PAGE.getHeight() / 2);
        matrix.scale(PAGE.getWidth(), PAGE.getHeight());
        try (PDPageContentStream content = new PDPageContentStream(document, page)) {
            content.drawImage(image, matrix);
        }
    }

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        document.save(bytes);
        return bytes.toByteArray();
    }

    private static List<ScanPage> pages(byte[] pdf) {
        List<ScanPage> pages = new ArrayList<>();
        new PdfPages("scan.pdf", MOST_PIXELS).forEach(pdf, pages::add);
        return pages;
    }

    private static Picture onlyPicture(byte[] pdf) {
        List<ScanPage> pages = pages(pdf);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).content()).as("%s", pages.get(0)).isInstanceOf(Picture.class);
        return (Picture) pages.get(0).content();
    }

    private static String onlyRefusal(byte[] pdf) {
        List<ScanPage> pages = pages(pdf);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).content()).isInstanceOf(Refused.class);
        return ((Refused) pages.get(0).content()).reason();
    }

    private static byte[] decodedByPdfBox(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            var resources = document.getPage(0).getResources();
            COSName name = resources.getXObjectNames().iterator().next();
            return bytes(((PDImageXObject) resources.getXObject(name)).getImage());
        }
    }

    private static byte[] bytes(BufferedImage image) {
        byte[] bytes = new byte[image.getWidth() * image.getHeight()];
        boolean grey = image.getRaster().getNumBands() == 1 && image.getSampleModel().getSampleSize(0) == 8;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int value = grey ? image.getRaster().getSample(x, y, 0) : image.getRGB(x, y) >> 8 & 0xff;
                bytes[y * image.getWidth() + x] = (byte) value;
            }
        }
        return bytes;
    }

    private static BufferedImage gradient() {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < 200; y++) {
            for (int x = 0; x < 300; x++) {
                image.getRaster().setSample(x, y, 0, (x + 2 * y) % 250);
            }
        }
        return image;
    }

    private static BufferedImage bilevel() {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_BINARY);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, 300, 200);
        graphics.setColor(Color.BLACK);
        graphics.drawOval(40, 30, 150, 120);
        graphics.fillRect(200, 10, 40, 3);
        graphics.dispose();
        return image;
    }

    /** Four quarters of different grey. */
    private static BufferedImage corners() {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < 200; y++) {
            for (int x = 0; x < 300; x++) {
                image.getRaster().setSample(x, y, 0, 30 + (x < 150 ? 0 : 70) + (y < 100 ? 0 : 140));
            }
        }
        return image;
    }

    private static byte[] deflated(int zeros) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, new Deflater(Deflater.BEST_SPEED))) {
            byte[] block = new byte[1_000_000];
            Arrays.fill(block, (byte) ' ');
            for (int written = 0; written < zeros; written += block.length) {
                out.write(block, 0, Math.min(block.length, zeros - written));
            }
        }
        return bytes.toByteArray();
    }
}
