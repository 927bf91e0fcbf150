package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import wallplate.sheet.ScanPage.Picture;

/** A file costs memory for one page, however many it has. */
class LongFileTest {

    private static final int PAGES = 200;
    private static final int WIDTH = 620;
    private static final int HEIGHT = 438;
    private static final long PAGE_BYTES = (long) WIDTH * HEIGHT;

    /** What is still reachable at each twentieth page, after a collection, must not grow with the pages. */
    @Test
    void keepsNothingOfPagesThatWereShown(@TempDir Path folder) throws IOException {
        Path file = longFile(folder.resolve("class.pdf"));
        AtomicInteger pages = new AtomicInteger();
        AtomicLong early = new AtomicLong();
        AtomicLong most = new AtomicLong();

        ScanFile.forEachPage(file, page -> {
            assertThat(page.content()).isInstanceOf(Picture.class);
            int number = pages.incrementAndGet();
            if (number % 20 == 0) {
                long used = reachable();
                early.compareAndSet(0, used);
                most.accumulateAndGet(used, Math::max);
            }
        });

        assertThat(pages.get()).isEqualTo(PAGES);
        // 180 pages more would be 49 megabytes.
        assertThat(most.get() - early.get()).as("bytes kept after 180 more pages").isLessThan(30 * PAGE_BYTES);
    }

    private static long reachable() {
        Runtime runtime = Runtime.getRuntime();
        System.gc();
        return runtime.totalMemory() - runtime.freeMemory();
    }

    /** Not a JPEG, which would go past the library's own decoding. */
    private static PDImageXObject image(PDDocument document, byte[] deflated) throws IOException {
        return new PDImageXObject(
                document,
                new ByteArrayInputStream(deflated),
                COSName.FLATE_DECODE,
                WIDTH,
                HEIGHT,
                8,
                PDDeviceGray.INSTANCE);
    }

    private static byte[] deflated(byte[] grey) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(bytes)) {
            deflater.write(grey);
        }
        return bytes.toByteArray();
    }

    private static Path longFile(Path file) throws IOException {
        byte[] deflated = deflated(Scans.grey(Scans.gradient(WIDTH, HEIGHT)));
        try (PDDocument document = new PDDocument(IOUtils.createTempFileOnlyStreamCache())) {
            for (int number = 0; number < PAGES; number++) {
                PDPage page = new PDPage(new PDRectangle(842, 595));
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    content.drawImage(image(document, deflated), 0, 0, 842, 595);
                }
            }
            document.save(file.toFile());
        }
        return file;
    }
}
