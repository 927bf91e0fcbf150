package wallplate.sheet.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.util.Matrix;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.opencv.PictureDecoder;
import wallplate.sheet.page.PictureTurn;

/**
 * Shows the pages of a PDF file as pictures.
 *
 * <p>A page that is one scanned image gives that image at its own resolution; any other page is rendered. Nothing in the
 * file is executed.
 */
public final class PdfPages {

    private static final int RENDERED_DPI = 300;
    private static final double POINTS_PER_INCH = 72;
    /** The image of a scanned page covers at least this share of it. */
    private static final double LEAST_COVER = 0.85;

    private final String scan;
    private final long mostPixels;

    /** @param mostPixels pages that would need more pixels are refused before they are decoded */
    public PdfPages(String scan, long mostPixels) {
        this.scan = scan;
        this.mostPixels = mostPixels;
    }

    /** Visits every page in order, one in memory at a time; a file that cannot be read is one refused page. */
    public void forEach(byte[] content, Consumer<ScanPage> visitor) {
        try (PDDocument document = Loader.loadPDF(content)) {
            int pages = document.getNumberOfPages();
            if (pages == 0) {
                visitor.accept(refused(1, "This PDF file has no pages. Scan the sheet again and save it as a new file."));
            }
            for (int page = 1; page <= pages; page++) {
                visitor.accept(new ScanPage(scan, page, page(document, page)));
            }
        } catch (InvalidPasswordException e) {
            visitor.accept(refused(
                    1, "This PDF file is locked with a password. Save it again without a password and upload that."));
        } catch (IOException | RuntimeException e) {
            visitor.accept(refused(1, "This PDF file is damaged or cut short. Save or scan it again and upload the new file."));
        }
    }

    private ScanPage refused(int page, String reason) {
        return new ScanPage(scan, page, new Refused(reason));
    }

    private ScanPage.Content page(PDDocument document, int number) {
        try {
            PDPage page = document.getPage(number - 1);
            PlacedImages.Content content = PlacedImages.on(page);
            Optional<ScanPage.Content> scanned = scanned(page, content);
            return scanned.isPresent() ? scanned.get() : rendered(document, page, number);
        } catch (IOException | RuntimeException e) {
            return new Refused("Page %d of this PDF file is damaged. Save or scan it again.".formatted(number));
        }
    }

    /** The page's one image, where it is a scan. */
    private Optional<ScanPage.Content> scanned(PDPage page, PlacedImages.Content content) throws IOException {
        List<PlacedImages.Placed> images = content.images();
        if (content.othersDrawn() || images.size() != 1) {
            return Optional.empty();
        }
        if (!(images.get(0).image() instanceof PDImageXObject image)) {
            return Optional.empty();
        }
        Matrix matrix = images.get(0).matrix();
        Optional<PictureTurn> turn = turn(matrix, page.getRotation());
        PDRectangle box = page.getCropBox();
        double area = Math.abs(matrix.getScaleX() * matrix.getScaleY() - matrix.getShearX() * matrix.getShearY());
        if (turn.isEmpty() || area < LEAST_COVER * box.getWidth() * box.getHeight()) {
            return Optional.empty();
        }
        long pixels = (long) image.getWidth() * image.getHeight();
        if (pixels > mostPixels) {
            return Optional.of(tooLarge(image.getWidth(), image.getHeight()));
        }
        double unit = page.getUserUnit() / POINTS_PER_INCH;
        double widthInches = Math.hypot(matrix.getScaleX(), matrix.getShearY()) * unit;
        double heightInches = Math.hypot(matrix.getShearX(), matrix.getScaleY()) * unit;
        Picture picture = picture(image, image.getWidth() / widthInches, image.getHeight() / heightInches);
        return Optional.of(turn.get().apply(picture));
    }

    private static Picture picture(PDImageXObject image, double dpiX, double dpiY) throws IOException {
        if (isPlainJpeg(image)) {
            try (InputStream stream = image.getCOSObject().createRawInputStream()) {
                Optional<Picture> decoded = PictureDecoder.decodeUnturned(stream.readAllBytes());
                if (decoded.isPresent()) {
                    Picture picture = decoded.get();
                    return new Picture(picture.widthPx(), picture.heightPx(), picture.grey(), dpiX, dpiY);
                }
            }
        }
        BufferedImage decoded = image.getImage();
        return new Picture(decoded.getWidth(), decoded.getHeight(), GreyPicture.of(decoded), dpiX, dpiY);
    }

    /** Whether the stream is a grey or RGB JPEG that shows as it is, without masks or changed values. */
    private static boolean isPlainJpeg(PDImageXObject image) throws IOException {
        var dictionary = image.getCOSObject();
        boolean jpeg = COSName.DCT_DECODE.equals(dictionary.getDictionaryObject(COSName.FILTER));
        int components = jpeg ? image.getColorSpace().getNumberOfComponents() : 0;
        return (components == 1 || components == 3)
                && image.getBitsPerComponent() == 8
                && image.getColorSpace().getDefaultDecode(8).length == 2 * components
                && dictionary.getDictionaryObject(COSName.DECODE) == null
                && dictionary.getDictionaryObject(COSName.MASK) == null
                && dictionary.getDictionaryObject(COSName.SMASK) == null
                && isDirect(image.getColorSpace().getName());
    }

    private static boolean isDirect(String colourSpace) {
        return List.of("DeviceGray", "DeviceRGB", "CalGray", "CalRGB", "ICCBased").contains(colourSpace);
    }

    /** The quarter turns and the mirroring that the matrix and the page's own rotation make; empty where it slants. */
    private static Optional<PictureTurn> turn(Matrix matrix, int pageRotation) {
        double a = matrix.getScaleX();
        double b = matrix.getShearY();
        double c = matrix.getShearX();
        double d = matrix.getScaleY();
        double size = Math.max(Math.hypot(a, b), Math.hypot(c, d));
        boolean straight = Math.abs(b) < 1e-3 * size && Math.abs(c) < 1e-3 * size;
        boolean crossed = Math.abs(a) < 1e-3 * size && Math.abs(d) < 1e-3 * size;
        if (!straight && !crossed) {
            return Optional.empty();
        }
        double angle = Math.toDegrees(Math.atan2(b, a));
        int anticlockwise = Math.floorMod((int) Math.round(angle / 90), 4);
        boolean mirrored = a * d - b * c < 0;
        int clockwise = Math.floorMod(pageRotation / 90 - anticlockwise, 4);
        return Optional.of(new PictureTurn(clockwise, mirrored));
    }

    private ScanPage.Content rendered(PDDocument document, PDPage page, int number) throws IOException {
        PDRectangle box = page.getCropBox();
        double scale = RENDERED_DPI / POINTS_PER_INCH;
        double width = box.getWidth() * scale;
        double height = box.getHeight() * scale;
        if (width * height > mostPixels) {
            return tooLarge(Math.round(width), Math.round(height));
        }
        if (width < 1 || height < 1) {
            return new Refused("Page %d of this PDF file has no size. Scan the sheet again.".formatted(number));
        }
        BufferedImage image = new PDFRenderer(document).renderImageWithDPI(number - 1, RENDERED_DPI, ImageType.GRAY);
        boolean turned = page.getRotation() % 180 != 0;
        // The renderer rounds the size down, so the resolution follows from the page, not from what was asked for.
        double dpiX = image.getWidth() / ((turned ? box.getHeight() : box.getWidth()) * page.getUserUnit() / POINTS_PER_INCH);
        double dpiY = image.getHeight() / ((turned ? box.getWidth() : box.getHeight()) * page.getUserUnit() / POINTS_PER_INCH);
        return new Picture(image.getWidth(), image.getHeight(), GreyPicture.of(image), dpiX, dpiY);
    }

    private ScanPage.Content tooLarge(long width, long height) {
        return new Refused(
                "This page is %d x %d pixels, more than the %d million that can be read. Scan it again at 300 dpi."
                        .formatted(width, height, mostPixels / 1_000_000));
    }
}
