package wallplate.sheet;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.opencv.PictureDecoder;

/** Opens what was handed in and shows its pages one after another. */
public final class ScanFile {

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
        visitor.accept(new ScanPage(
                scanName,
                1,
                PictureDecoder.decode(content)
                        .<ScanPage.Content>map(picture -> picture)
                        .orElseGet(() -> new Refused("This file is not a picture that can be read."))));
    }
}
