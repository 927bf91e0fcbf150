package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.StatedLengths;
import wallplate.sheet.formats.TiffDirectory;
import wallplate.sheet.pdf.CodedPdf;
import wallplate.task.SheetFormat;

/**
 * Randomly damaged copies of files: each must come back as pages or refusals, soon, and never as an exception.
 *
 * <p>The number of copies is small by default; {@code -Dwallplate.damaged=10000} makes the long run.
 */
class DamagedFilesTest {

    private static final int COPIES = Integer.getInteger("wallplate.damaged", 400);
    private static final long SEED = Long.getLong("wallplate.seed", 20261125);
    private static final Path SHARED = Path.of("../shared/scans/dev");
    /** Reading a whole sheet takes about as long as decoding so many small files. */
    private static final int SHARE_OF_SCANS = 50;

    private static final int FEWEST_OF_SCANS = 12;
    private static final SheetFormat A4 = new SheetFormat("A4", 297, 210, 100);
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @Test
    void survivesDamage() throws IOException {
        Map<String, byte[]> files = files();
        Random random = new Random(SEED);
        long read = 0;
        long refused = 0;
        List<String> names = new ArrayList<>(files.keySet());
        for (int copy = 0; copy < COPIES; copy++) {
            String name = names.get(copy % names.size());
            byte[] damaged = damaged(files.get(name), random);
            long start = System.nanoTime();
            List<ScanPage> pages = Scans.pages(name, damaged);
            Duration taken = Duration.ofNanos(System.nanoTime() - start);
            assertThat(pages).as("copy %d of %s, seed %d", copy, name, SEED).isNotEmpty();
            assertThat(taken).as("copy %d of %s, seed %d", copy, name, SEED).isLessThan(LONGEST);
            for (ScanPage page : pages) {
                if (page.content() instanceof ScanPage.Refused reason) {
                    assertThat(reason.reason()).isNotBlank();
                    refused++;
                } else {
                    read++;
                }
            }
        }
        assertThat(read).as("pages still read").isPositive();
        assertThat(refused).as("pages refused").isPositive();
    }

    /** Damaged scans are also read to their level pages: what a decoder makes of them is no drawing any more. */
    @Test
    void survivesDamageOfRealScans() throws IOException {
        List<Path> scans = realScans();
        assumeFalse(scans.isEmpty(), "the shared test sheets are not beside the project: " + SHARED);
        Random random = new Random(SEED);
        long read = 0;
        long refused = 0;
        for (int copy = 0; copy < Math.max(FEWEST_OF_SCANS, COPIES / SHARE_OF_SCANS); copy++) {
            Path scan = scans.get(copy % scans.size());
            byte[] damaged = damaged(Files.readAllBytes(scan), random);
            long start = System.nanoTime();
            for (ScanPage page : Scans.pages(scan.getFileName().toString(), damaged)) {
                SheetReading reading = new SheetReader().read(page, A4);
                if (reading instanceof SheetReading.Unreadable unreadable) {
                    assertThat(unreadable.reason()).as("copy %d of %s, seed %d", copy, scan, SEED).isNotBlank();
                    refused++;
                } else {
                    read++;
                }
            }
            assertThat(Duration.ofNanos(System.nanoTime() - start))
                    .as("copy %d of %s, seed %d", copy, scan, SEED)
                    .isLessThan(LONGEST);
        }
        assertThat(read + refused).isPositive();
    }

    /** The smallest of each kind of file. */
    private static List<Path> realScans() throws IOException {
        if (!Files.isDirectory(SHARED)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(SHARED)) {
            Map<String, Path> smallest = new TreeMap<>();
            files.filter(file -> Files.isRegularFile(file) && file.getParent().endsWith("scans"))
                    .sorted(Comparator.comparingLong((Path file) -> file.toFile().length()))
                    .forEach(file -> smallest.putIfAbsent(file.toString().replaceAll(".*\\.", ""), file));
            return List.copyOf(smallest.values());
        }
    }

    /** Without a look at the length first, OpenCV sets aside four gigabytes and fills them for half a minute. */
    @Test
    void refusesPngWhoseChunkClaimsMoreThanTheFileHas() throws IOException {
        byte[] png = Scans.encoded(Scans.gradient(150, 100), "png");
        int name = indexOf(png, "IDAT");
        ByteBuffer.wrap(png).putInt(name - 4, (int) 4_060_086_966L);

        long start = System.nanoTime();
        String refusal = Scans.refusal(png);

        assertThat(refusal).contains("damaged or cut short");
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
        assertThat(StatedLengths.areWithin(FileFormat.PNG, png)).as("told before decoding").isFalse();
    }

    @Test
    void refusesJpegWithEndlessPasses() throws IOException {
        byte[] jpeg = Scans.encoded(Scans.gradient(150, 100), "jpg");
        ByteArrayOutputStream many = new ByteArrayOutputStream();
        many.write(jpeg, 0, jpeg.length - 2);
        for (int i = 0; i < 60_000; i++) {
            many.write(new byte[] {(byte) 0xff, (byte) 0xda, 0, 8, 1, 1, 0, 0, 63, 0});
        }
        many.write(jpeg, jpeg.length - 2, 2);

        assertThat(Scans.refusal(many.toByteArray())).contains("damaged or cut short");
    }

    /** A page of 20 x 20 pixels in one tile of 16,000 x 16,000, for which OpenCV sets aside a gigabyte. */
    @Test
    void refusesTiffWithTilesBeyondAllPages() {
        int[][] tags = {
            {256, 20}, {257, 20}, {258, 8}, {259, 1}, {262, 1}, {277, 1}, {322, 16_000}, {323, 16_000}, {324, 150}, {325, 400}
        };
        ByteBuffer tiff = ByteBuffer.allocate(600).order(ByteOrder.LITTLE_ENDIAN);
        tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8).putShort((short) tags.length);
        for (int[] tag : tags) {
            tiff.putShort((short) tag[0]).putShort((short) 4).putInt(1).putInt(tag[1]);
        }

        assertThat(Scans.refusal(tiff.array())).contains("damaged or cut short");
        assertThat(StatedLengths.areWithin(TiffDirectory.all(tiff.array()).get(0), ScanFile.MOST_PIXELS))
                .as("told before decoding")
                .isFalse();
    }

    private static int indexOf(byte[] content, String name) {
        return new String(content, StandardCharsets.ISO_8859_1).indexOf(name);
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
        files.put("g.webp", webp());
        files.put("h.pdf", CodedPdf.jbig2(Scans.bilevel(300, 200)));
        files.put("i.pdf", CodedPdf.jpeg2000(Scans.gradient(300, 200)));
        files.put("f.zip", Scans.zip("x.png", files.get("a.png"), "y.jpg", files.get("b.jpg")));
        return files;
    }

    /** Made by OpenCV's encoder: the JDK has none. */
    private static byte[] webp() {
        NativeLibraries.load();
        BufferedImage image = Scans.gradient(150, 100);
        Mat grey = new Mat(image.getHeight(), image.getWidth(), CvType.CV_8UC1);
        MatOfByte encoded = new MatOfByte();
        try {
            grey.put(0, 0, Scans.grey(image));
            assertThat(Imgcodecs.imencode(".webp", grey, encoded)).isTrue();
            return encoded.toArray();
        } finally {
            grey.release();
            encoded.release();
        }
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
