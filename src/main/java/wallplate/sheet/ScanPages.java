package wallplate.sheet;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.TiffDirectory;
import wallplate.sheet.pdf.PdfPages;

/**
 * Takes the pages of a scan file one at a time, in any order, so that several may be read at once.
 *
 * <p>Counting decodes nothing; taking a page decodes that page only. A ZIP file has no pages of its own: the scans in it are
 * taken out first.
 */
public final class ScanPages {

    /** So many first bytes of a file are enough to tell what kind it is. */
    public static final int BYTES_NEEDED = FileFormat.BYTES_NEEDED;

    /** What has to be done with a file before its pages can be taken. */
    public enum Kind {
        /** One page, whatever it holds. */
        SINGLE,
        /** Its pages have to be counted. */
        MANY,
        /** It holds other files. */
        ARCHIVE
    }

    private ScanPages() {}

    /** The kind of a file that begins with these bytes. */
    public static Kind kindOf(byte[] start) {
        return switch (FileFormat.of(start)) {
            case PDF, TIFF -> Kind.MANY;
            case ZIP -> Kind.ARCHIVE;
            default -> Kind.SINGLE;
        };
    }

    /** The number of pages, at least one: what cannot be read is one page, which is refused. */
    public static int count(Path file) throws IOException {
        return switch (FileFormat.of(ScanFile.start(file))) {
            case PDF -> PdfPages.count(file);
            case TIFF -> Files.size(file) > ScanFile.MOST_BYTES
                    ? 1
                    : Math.max(1, TiffDirectory.all(Files.readAllBytes(file)).size());
            default -> 1;
        };
    }

    /**
     * One page of a file.
     *
     * @param scanName the name under which it was handed in
     * @param number from 1; a page that the file has not got is refused
     */
    public static ScanPage page(String scanName, Path file, int number) throws IOException {
        return switch (FileFormat.of(ScanFile.start(file))) {
            case PDF -> new PdfPages(scanName, ScanFile.MOST_PIXELS).page(file, number);
            case TIFF -> tiffPage(scanName, file, number);
            default -> first(scanName, file);
        };
    }

    private static ScanPage tiffPage(String scanName, Path file, int number) throws IOException {
        if (Files.size(file) > ScanFile.MOST_BYTES) {
            return ScanFile.tooManyBytes(scanName, ScanFile.MOST_BYTES);
        }
        byte[] content = Files.readAllBytes(file);
        List<TiffDirectory> pages = TiffDirectory.all(content);
        if (number > pages.size()) {
            return new ScanPage(scanName, number, new ScanPage.Refused(Refusals.DAMAGED));
        }
        return new ScanPage(scanName, number, ScanFile.tiffPage(content, number - 1, pages.get(number - 1)));
    }

    private static ScanPage first(String scanName, Path file) throws IOException {
        AtomicReference<ScanPage> first = new AtomicReference<>();
        ScanFile.forEachPage(scanName, file, page -> first.compareAndSet(null, page));
        return first.get();
    }

    /**
     * Takes the scans out of a ZIP file, one in memory at a time.
     *
     * @param scans is given each scan's own name and content
     * @param refusals is given a refused page for what cannot be taken out
     */
    public static void unpack(
            String scanName, Path archive, BiConsumer<String, byte[]> scans, Consumer<ScanPage> refusals)
            throws IOException {
        try (InputStream content = new BufferedInputStream(Files.newInputStream(archive))) {
            ScanFile.forEachEntry(scanName, content, scans, refusals);
        }
    }
}
