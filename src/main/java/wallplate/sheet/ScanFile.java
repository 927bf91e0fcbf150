package wallplate.sheet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Consumer;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.opencv.PictureDecoder;
import wallplate.sheet.pdf.PdfPages;

/** Opens what was handed in and shows its pages one after another. */
public final class ScanFile {

    /** A sheet of A3 at 600 dpi has 70 million pixels. */
    private static final long MOST_PIXELS = 80_000_000;

    private ScanFile() {}

    /**
     * Visits the file's pages in order, holding one in memory at a time.
     *
     * <p>Content that cannot be read is no error: it is visited as a page that is refused with a reason.
     *
     * @throws IOException where the file itself cannot be read from the disk
     */
    public static void forEachPage(Path file, Consumer<ScanPage> visitor) throws IOException {
        forEachPage(file.getFileName().toString(), file, visitor);
    }

    /** Visits the pages of a file that was handed in under another name than it is kept under. */
    public static void forEachPage(String scanName, Path file, Consumer<ScanPage> visitor) throws IOException {
        forEachPage(scanName, Files.readAllBytes(file), visitor);
    }

    /** Visits the pages of a file that is already in memory. */
    public static void forEachPage(String scanName, byte[] content, Consumer<ScanPage> visitor) {
        if (startsWith(content, "%PDF-")) {
            new PdfPages(scanName, MOST_PIXELS).forEach(content, visitor);
            return;
        }
        visitor.accept(new ScanPage(
                scanName,
                1,
                PictureDecoder.decode(content)
                        .<ScanPage.Content>map(picture -> picture)
                        .orElseGet(() -> new Refused("This file is not a picture that can be read."))));
    }

    private static boolean startsWith(byte[] content, String magic) {
        byte[] start = magic.getBytes(StandardCharsets.ISO_8859_1);
        return content.length >= start.length && Arrays.equals(content, 0, start.length, start, 0, start.length);
    }
}
