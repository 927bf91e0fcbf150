package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.junit.jupiter.api.Test;

/**
 * Randomly damaged copies of files: each must come back as pages or refusals, soon, and never as an exception.
 *
 * <p>The number of copies is small by default; {@code -Dwallplate.damaged=10000} makes the long run.
 */
class DamagedFilesTest {

    private static final int COPIES = Integer.getInteger("wallplate.damaged", 400);
    private static final long SEED = Long.getLong("wallplate.seed", 20261125);
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @Test
    void survivesDamage() throws IOException {
        Map<String, byte[]> files = files();
        Random random = new Random(SEED);
        long read = 0;
        long refused = 0;
        for (int copy = 0; copy < COPIES; copy++) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                if (copy % files.size() != new ArrayList<>(files.keySet()).indexOf(file.getKey())) {
                    continue;
                }
                byte[] damaged = damaged(file.getValue(), random);
                long start = System.nanoTime();
                List<ScanPage> pages = Scans.pages(file.getKey(), damaged);
                Duration taken = Duration.ofNanos(System.nanoTime() - start);
                assertThat(pages).as("copy %d of %s, seed %d", copy, file.getKey(), SEED).isNotEmpty();
                assertThat(taken).as("copy %d of %s, seed %d", copy, file.getKey(), SEED).isLessThan(LONGEST);
                for (ScanPage page : pages) {
                    if (page.content() instanceof ScanPage.Refused reason) {
                        assertThat(reason.reason()).isNotBlank();
                        refused++;
                    } else {
                        read++;
                    }
                }
            }
        }
        assertThat(read).as("pages still read").isPositive();
        assertThat(refused).as("pages refused").isPositive();
    }

    /** Some bytes changed, a piece cut out or doubled, or the end cut off. */
    private static byte[] damaged(byte[] whole, Random random) {
        byte[] copy = whole.clone();
        int changes = 1 + random.nextInt(20);
        switch (random.nextInt(4)) {
            case 0 -> {
                return java.util.Arrays.copyOf(copy, 1 + random.nextInt(copy.length));
            }
            case 1 -> {
                int from = random.nextInt(copy.length);
                int length = Math.min(copy.length - from, 1 + random.nextInt(200));
                byte[] shorter = new byte[copy.length - length];
                System.arraycopy(copy, 0, shorter, 0, from);
                System.arraycopy(copy, from + length, shorter, from, copy.length - from - length);
                return shorter;
            }
            case 2 -> {
                // Headers and tables stand at the beginning.
                for (int i = 0; i < changes; i++) {
                    copy[random.nextInt(Math.min(copy.length, 400))] = (byte) random.nextInt();
                }
                return copy;
            }
            default -> {
                for (int i = 0; i < changes; i++) {
                    copy[random.nextInt(copy.length)] = (byte) random.nextInt();
                }
                return copy;
            }
        }
    }

    private static Map<String, byte[]> files() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a.png", Scans.encoded(Scans.gradient(150, 100), "png"));
        files.put("b.jpg", Scans.jpegWithOrientation(Scans.gradient(150, 100), 6));
        files.put("c.tif", Scans.encoded(Scans.gradient(150, 100), "tiff"));
        files.put("d.bmp", Scans.encoded(Scans.gradient(50, 40), "bmp"));
        files.put("e.pdf", pdf());
        files.put("f.zip", Scans.zip("x.png", files.get("a.png"), "y.jpg", files.get("b.jpg")));
        return files;
    }

    private static byte[] pdf() throws IOException {
        try (PDDocument document = new PDDocument()) {
            for (int i = 0; i < 2; i++) {
                PDPage page = new PDPage(new PDRectangle(72, 48));
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    content.drawImage(
                            i == 0
                                    ? LosslessFactory.createFromImage(document, Scans.gradient(150, 100))
                                    : JPEGFactory.createFromImage(document, Scans.gradient(150, 100)),
                            0,
                            0,
                            72,
                            48);
                }
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }
}
