package wallplate.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import wallplate.sheet.ScanPage.Content;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.PictureHeader;
import wallplate.sheet.formats.StatedLengths;
import wallplate.sheet.formats.TiffDirectory;
import wallplate.sheet.opencv.PictureDecoder;
import wallplate.sheet.pdf.PdfPages;

/**
 * Opens what was handed in and shows its pages one after another.
 *
 * <p>Formats are told by a file's first bytes. Sizes are checked before anything is decoded, so that a small file cannot
 * ask for more memory than one page of {@link #MOST_PIXELS} pixels.
 */
public final class ScanFile {

    /** A sheet of A3 at 600 dpi has 70 million pixels. */
    public static final long MOST_PIXELS = 80_000_000;

    static final long MOST_BYTES = 400_000_000;
    private static final int MOST_ENTRY_BYTES = 200_000_000;
    private static final int MOST_ENTRIES = 2000;

    /** So many first bytes are enough for {@link #refusalOf}. */
    public static final int BYTES_TO_TELL = FileFormat.BYTES_NEEDED;

    private ScanFile() {}

    /** Why a file that begins with these bytes holds no pages, in a sentence; empty where it may hold some. */
    public static Optional<String> refusalOf(byte[] start) {
        FileFormat format = FileFormat.of(start);
        return switch (format) {
            case PDF, ZIP, TIFF, PNG, JPEG, BMP, WEBP -> Optional.empty();
            default -> Optional.of(Refusals.of(format));
        };
    }

    /**
     * Visits the file's pages in order, holding one in memory at a time.
     *
     * <p>Content that cannot be read is no error: it is visited as a page that is refused with a reason. The files in a
     * ZIP file are visited under their own names.
     *
     * @throws IOException where the file itself cannot be read from the disk
     */
    public static void forEachPage(Path file, Consumer<ScanPage> visitor) throws IOException {
        forEachPage(file.getFileName().toString(), file, visitor);
    }

    /** Visits the pages of a file that was handed in under another name than it is kept under. */
    public static void forEachPage(String scanName, Path file, Consumer<ScanPage> visitor) throws IOException {
        switch (FileFormat.of(start(file))) {
            case PDF -> new PdfPages(scanName, MOST_PIXELS).forEach(file, visitor);
            case ZIP -> {
                try (InputStream content = Files.newInputStream(file)) {
                    forEachEntry(scanName, content, visitor);
                }
            }
            default -> {
                if (Files.size(file) > MOST_BYTES) {
                    visitor.accept(tooManyBytes(scanName, MOST_BYTES));
                } else {
                    forEachPage(scanName, Files.readAllBytes(file), visitor);
                }
            }
        }
    }

    /** Visits the pages of a file that is already in memory. */
    public static void forEachPage(String scanName, byte[] content, Consumer<ScanPage> visitor) {
        FileFormat format = FileFormat.of(content);
        switch (format) {
            case PDF -> new PdfPages(scanName, MOST_PIXELS).forEach(content, visitor);
            case ZIP -> forEachEntry(scanName, new ByteArrayInputStream(content), visitor);
            case TIFF -> forEachTiffPage(scanName, content, visitor);
            case PNG, JPEG, BMP, WEBP -> visitor.accept(new ScanPage(scanName, 1, picture(format, content)));
            default -> visitor.accept(refused(scanName, Refusals.of(format)));
        }
    }

    static byte[] start(Path file) throws IOException {
        try (InputStream content = Files.newInputStream(file)) {
            return content.readNBytes(FileFormat.BYTES_NEEDED);
        }
    }

    static ScanPage refused(String scanName, String reason) {
        return new ScanPage(scanName, 1, new Refused(reason));
    }

    static ScanPage tooManyBytes(String scanName, long most) {
        return refused(
                scanName,
                "This file is larger than %d megabytes. Scan the sheets again at 300 dpi, or in several files."
                        .formatted(most / 1_000_000));
    }

    private static Content picture(FileFormat format, byte[] content) {
        Optional<PictureHeader> header = PictureHeader.of(format, content);
        if (header.isEmpty()
                || !StatedLengths.areWithin(format, content)
                || Refusals.isCutShort(format, content)) {
            return new Refused(Refusals.DAMAGED);
        }
        PictureHeader found = header.get();
        if (found.pixels() > MOST_PIXELS) {
            return Refusals.tooLarge(found, MOST_PIXELS);
        }
        Optional<Picture> decoded = found.sidesSwapped()
                ? PictureDecoder.decode(content, found.dpiY(), found.dpiX())
                : PictureDecoder.decode(content, found.dpiX(), found.dpiY());
        return decoded.<Content>map(picture -> picture).orElseGet(() -> new Refused(Refusals.DAMAGED));
    }

    private static void forEachTiffPage(String scanName, byte[] content, Consumer<ScanPage> visitor) {
        List<TiffDirectory> pages = TiffDirectory.all(content);
        if (pages.isEmpty()) {
            visitor.accept(refused(scanName, Refusals.DAMAGED));
        }
        for (int page = 0; page < pages.size(); page++) {
            visitor.accept(new ScanPage(scanName, page + 1, tiffPage(content, page, pages.get(page))));
        }
    }

    static Content tiffPage(byte[] content, int page, TiffDirectory directory) {
        PictureHeader header = directory.header();
        if (header.widthPx() <= 0 || header.heightPx() <= 0 || !StatedLengths.areWithin(directory, MOST_PIXELS)) {
            return new Refused(Refusals.DAMAGED);
        }
        if (header.pixels() > MOST_PIXELS) {
            return Refusals.tooLarge(header, MOST_PIXELS);
        }
        double dpiX = header.sidesSwapped() ? header.dpiY() : header.dpiX();
        double dpiY = header.sidesSwapped() ? header.dpiX() : header.dpiY();
        return PictureDecoder.decodeTiffPage(content, page, dpiX, dpiY)
                .<Content>map(picture -> picture)
                .orElseGet(() -> new Refused(Refusals.DAMAGED));
    }

    private static void forEachEntry(String scanName, InputStream content, Consumer<ScanPage> visitor) {
        forEachEntry(scanName, content, (name, bytes) -> forEachPage(name, bytes, visitor), visitor);
    }

    /** Visits the scans in a ZIP file, and as refused pages what cannot be taken out of it. */
    static void forEachEntry(
            String scanName, InputStream content, BiConsumer<String, byte[]> scans, Consumer<ScanPage> refusals) {
        int count = 0;
        try (ZipInputStream zip = new ZipInputStream(content)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String name = ownName(entry.getName());
                if (entry.isDirectory() || isHidden(entry.getName(), name)) {
                    continue;
                }
                count++;
                if (count > MOST_ENTRIES) {
                    refusals.accept(refused(
                            scanName, "This ZIP file holds more than %d files. Upload it in parts.".formatted(MOST_ENTRIES)));
                    return;
                }
                visitEntry(name, zip.readNBytes(MOST_ENTRY_BYTES + 1), scans, refusals);
            }
        } catch (IOException | IllegalArgumentException e) {
            refusals.accept(refused(scanName, "This ZIP file is damaged or locked. Pack it again without a password."));
            return;
        }
        if (count == 0) {
            refusals.accept(refused(scanName, "There are no scans in this ZIP file."));
        }
    }

    private static void visitEntry(
            String name, byte[] content, BiConsumer<String, byte[]> scans, Consumer<ScanPage> refusals) {
        if (content.length > MOST_ENTRY_BYTES) {
            refusals.accept(tooManyBytes(name, MOST_ENTRY_BYTES));
        } else if (FileFormat.of(content) == FileFormat.ZIP) {
            refusals.accept(refused(
                    name, "This is a ZIP file in a ZIP file. Unpack it and upload the scans themselves."));
        } else {
            scans.accept(name, content);
        }
    }

    /** The last part of a path, so that no entry can name a place outside. */
    private static String ownName(String path) {
        String[] parts = path.split("[/\\\\]");
        String last = parts.length == 0 ? "" : parts[parts.length - 1];
        String plain = last.codePoints()
                .filter(letter -> !Character.isISOControl(letter) && letter != ':')
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        return plain.isBlank() || plain.equals("..") || plain.equals(".") ? "unnamed" : plain;
    }

    /** What operating systems put into ZIP files of their own accord. */
    private static boolean isHidden(String path, String name) {
        return name.startsWith(".") || path.startsWith("__MACOSX/") || name.equalsIgnoreCase("thumbs.db");
    }
}
