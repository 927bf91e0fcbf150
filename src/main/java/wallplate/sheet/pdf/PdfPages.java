package wallplate.sheet.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.RandomAccessRead;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.util.Matrix;
import wallplate.sheet.ScanPage;
import wallplate.sheet.ScanPage.Content;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.PictureHeader;
import wallplate.sheet.formats.StatedLengths;
import wallplate.sheet.opencv.PictureDecoder;
import wallplate.sheet.page.PictureTurn;

/**
 * Shows the pages of a PDF file as pictures.
 *
 * <p>A page that is one scanned image gives that image at its own resolution; any other page is rendered. Nothing in the
 * file is executed, and a page that asks for too much memory or time is refused.
 */
public final class PdfPages {

    private static final String DAMAGED =
            "This PDF file is damaged or cut short. Save or scan it again and upload the new file.";
    private static final String FILE_TOO_MUCH =
            "This PDF file needs more memory or time than scans do. Scan the sheets again at 300 dpi.";
    private static final String TOO_MUCH =
            "Page %d of this PDF file needs more memory or time than a scan does. Scan the sheet again at 300 dpi"
                    + " in grey, or save it as PNG or JPEG.";

    private static final int RENDERED_DPI = 300;
    private static final double POINTS_PER_INCH = 72;
    /** The image of a scanned page covers at least this share of it. */
    private static final double LEAST_COVER = 0.85;
    /** How far off a quarter turn an image may be put, as the tangent of the angle. */
    private static final double STRAIGHT = 1e-3;

    private static final int MOST_PAGES = 2000;
    private static final long PAGE_SECONDS = 20;
    private static final long OPENING_SECONDS = 20;

    private final String scan;
    private final long mostPixels;

    /**
     * @param scan the file's own name
     * @param mostPixels pages that would need more pixels are refused before they are decoded
     */
    public PdfPages(String scan, long mostPixels) {
        this.scan = scan;
        this.mostPixels = mostPixels;
    }

    /** Visits every page in order, one in memory at a time; a file that cannot be read is one refused page. */
    public void forEach(byte[] content, Consumer<ScanPage> visitor) {
        Document.open(() -> new RandomAccessReadBuffer(content), mostPixels).visit(this, visitor);
    }

    /** Visits the pages of a file without reading all of it into memory. */
    public void forEach(Path file, Consumer<ScanPage> visitor) {
        Document.open(() -> new RandomAccessReadBufferedFile(file), mostPixels).visit(this, visitor);
    }

    /** The number of pages; a file that cannot be read has one page, which is refused. */
    public static int count(Path file) {
        if (Document.open(() -> new RandomAccessReadBufferedFile(file), Long.MAX_VALUE)
                instanceof Document.Opened opened) {
            try {
                return Math.max(1, Math.min(MOST_PAGES, count(opened.parser())));
            } finally {
                close(opened.parser());
            }
        }
        return 1;
    }

    /**
     * One page of a file; no other is decoded.
     *
     * @param number from 1; a page that the file has not got is refused
     */
    public ScanPage page(Path file, int number) {
        Document document = Document.open(() -> new RandomAccessReadBufferedFile(file), mostPixels);
        if (document instanceof Document.Opened opened) {
            try {
                return number > count(opened.parser())
                        ? refused(number, DAMAGED)
                        : new ScanPage(scan, number, page(opened.parser(), number));
            } finally {
                close(opened.parser());
            }
        }
        return refused(number, ((Document.Closed) document).reason());
    }

    /** A document that could be opened, or the reason why not. */
    private sealed interface Document {

        record Opened(LimitedParser parser) implements Document {}

        record Closed(String reason) implements Document {}

        interface Opening {
            RandomAccessRead open() throws IOException;
        }

        static Document open(Opening opening, long mostPixels) {
            try {
                return new Opened(LimitedParser.open(opening.open(), PageLimits.ending(mostPixels, OPENING_SECONDS)));
            } catch (PageLimits.Exceeded e) {
                return new Closed(FILE_TOO_MUCH);
            } catch (InvalidPasswordException e) {
                return new Closed(
                        "This PDF file is locked with a password. Save it again without a password and upload that.");
            } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError e) {
                // A crafted file can make the reader recurse or unpack without end; what it took is free again here.
                return new Closed(DAMAGED);
            }
        }

        default void visit(PdfPages pages, Consumer<ScanPage> visitor) {
            if (this instanceof Closed closed) {
                visitor.accept(pages.refused(1, closed.reason));
            } else if (this instanceof Opened opened) {
                pages.visit(opened.parser, visitor);
            }
        }
    }

    private void visit(LimitedParser parser, Consumer<ScanPage> visitor) {
        try {
            int pages = Math.min(MOST_PAGES, count(parser));
            if (pages == 0) {
                visitor.accept(refused(1, DAMAGED));
            }
            for (int number = 1; number <= pages; number++) {
                visitor.accept(new ScanPage(scan, number, page(parser, number)));
            }
        } finally {
            close(parser);
        }
    }

    private static int count(LimitedParser parser) {
        try {
            return parser.opened().getNumberOfPages();
        } catch (RuntimeException | StackOverflowError e) {
            return 0;
        }
    }

    private static void close(LimitedParser parser) {
        try {
            parser.close();
        } catch (IOException e) {
            throw new UncheckedIOException("a PDF file that was only read could not be closed", e);
        }
    }

    private ScanPage refused(int page, String reason) {
        return new ScanPage(scan, page, new Refused(reason));
    }

    /** A page of which the library left out what asks for too much is not the page that was scanned. */
    private Content page(LimitedParser parser, int number) {
        Content content = page(parser.opened(), number);
        return parser.hasLeftOut() ? new Refused(TOO_MUCH.formatted(number)) : content;
    }

    private Content page(PDDocument document, int number) {
        PageLimits limits = PageLimits.ending(mostPixels, PAGE_SECONDS);
        try {
            PDPage page = document.getPage(number - 1);
            Optional<Content> scanned = scanned(page, PlacedImages.on(page, limits));
            return scanned.isPresent() ? scanned.get() : rendered(document, page, number, limits);
        } catch (PageLimits.Exceeded | OutOfMemoryError e) {
            return new Refused(TOO_MUCH.formatted(number));
        } catch (IOException | RuntimeException | StackOverflowError e) {
            return new Refused("Page %d of this PDF file is damaged. Save or scan it again.".formatted(number));
        }
    }

    /** The page's one image, where it is a scan. */
    private Optional<Content> scanned(PDPage page, PlacedImages.Content content) throws IOException {
        List<PlacedImages.Placed> images = content.images();
        if (content.othersDrawn() || images.size() != 1) {
            return Optional.empty();
        }
        Matrix matrix = images.get(0).matrix();
        Optional<PictureTurn> turn = turn(matrix, page.getRotation());
        PDRectangle box = page.getCropBox();
        double area = Math.abs(matrix.getScaleX() * matrix.getScaleY() - matrix.getShearX() * matrix.getShearY());
        boolean covers = area >= LEAST_COVER * box.getWidth() * box.getHeight();
        if (turn.isEmpty() || !covers || !(images.get(0).image() instanceof PDImageXObject image)) {
            return Optional.empty();
        }
        double unit = page.getUserUnit() / POINTS_PER_INCH;
        double widthInches = Math.hypot(matrix.getScaleX(), matrix.getShearY()) * unit;
        double heightInches = Math.hypot(matrix.getShearX(), matrix.getScaleY()) * unit;
        Picture picture = picture(image, image.getWidth() / widthInches, image.getHeight() / heightInches);
        return Optional.of(turn.get().apply(picture));
    }

    private static Picture picture(PDImageXObject image, double dpiX, double dpiY) throws IOException {
        if (isPlainJpeg(image)) {
            byte[] jpeg = raw(image);
            if (!StatedLengths.areWithin(FileFormat.JPEG, jpeg)) {
                throw new IOException("a JPEG with more passes than any decoder should make");
            }
            // The size in the JPEG's own header is what it would be decoded to.
            boolean asStated = PictureHeader.of(FileFormat.JPEG, jpeg)
                    .filter(header -> header.widthPx() == image.getWidth() && header.heightPx() == image.getHeight())
                    .isPresent();
            Optional<Picture> decoded =
                    asStated ? PictureDecoder.decodeUnturned(jpeg, dpiX, dpiY) : Optional.empty();
            if (decoded.isPresent()) {
                return decoded.get();
            }
        }
        BufferedImage decoded = image.getImage();
        return new Picture(decoded.getWidth(), decoded.getHeight(), GreyPicture.of(decoded), dpiX, dpiY);
    }

    private static byte[] raw(PDImageXObject image) throws IOException {
        try (InputStream stream = image.getCOSObject().createRawInputStream()) {
            return stream.readAllBytes();
        }
    }

    /** Whether the stream is a grey or RGB JPEG that shows as it is, without masks or changed values. */
    private static boolean isPlainJpeg(PDImageXObject image) throws IOException {
        COSDictionary dictionary = image.getCOSObject();
        if (!COSName.DCT_DECODE.equals(dictionary.getDictionaryObject(COSName.FILTER))) {
            return false;
        }
        int components = image.getColorSpace().getNumberOfComponents();
        return (components == 1 || components == 3)
                && image.getBitsPerComponent() == 8
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
        double size = STRAIGHT * Math.max(Math.hypot(a, b), Math.hypot(c, d));
        boolean straight = Math.abs(b) < size && Math.abs(c) < size;
        boolean crossed = Math.abs(a) < size && Math.abs(d) < size;
        if (!straight && !crossed) {
            return Optional.empty();
        }
        int anticlockwise = Math.floorMod((int) Math.round(Math.toDegrees(Math.atan2(b, a)) / 90), 4);
        boolean mirrored = a * d - b * c < 0;
        int clockwise = Math.floorMod(pageRotation / 90 - anticlockwise, 4);
        return Optional.of(new PictureTurn(clockwise, mirrored));
    }

    private Content rendered(PDDocument document, PDPage page, int number, PageLimits limits) throws IOException {
        PDRectangle box = page.getCropBox();
        double scale = RENDERED_DPI / POINTS_PER_INCH;
        double width = box.getWidth() * scale;
        double height = box.getHeight() * scale;
        if (width * height > mostPixels) {
            return new Refused(
                    "Page %d of this PDF file is %.0f x %.0f mm large. Scan the sheet again at its own size."
                            .formatted(number, box.getWidth() / 72 * 25.4, box.getHeight() / 72 * 25.4));
        }
        if (width < 1 || height < 1) {
            return new Refused("Page %d of this PDF file has no size. Scan the sheet again.".formatted(number));
        }
        BufferedImage image =
                new LimitedRenderer(document, limits, (long) (width * height)).renderImageWithDPI(number - 1, RENDERED_DPI, ImageType.GRAY);
        boolean turned = page.getRotation() % 180 != 0;
        double unit = page.getUserUnit() / POINTS_PER_INCH;
        // The renderer rounds the size down, so the resolution follows from the page, not from what was asked for.
        double dpiX = image.getWidth() / ((turned ? box.getHeight() : box.getWidth()) * unit);
        double dpiY = image.getHeight() / ((turned ? box.getWidth() : box.getHeight()) * unit);
        return new Picture(image.getWidth(), image.getHeight(), GreyPicture.of(image), dpiX, dpiY);
    }
}
