package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static wallplate.sheet.Scans.bilevel;
import static wallplate.sheet.Scans.encoded;
import static wallplate.sheet.Scans.gradient;
import static wallplate.sheet.Scans.grey;
import static wallplate.sheet.Scans.pages;
import static wallplate.sheet.Scans.picture;
import static wallplate.sheet.Scans.refusal;
import static wallplate.sheet.Scans.zip;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;

/** Files of every kind that is read, and every kind of bad file; general-purpose decoders are the reference. */
class ScanFileTest {

    @Test
    void readsPngBitByBit() {
        BufferedImage image = gradient(301, 203);

        Picture picture = picture(encoded(image, "png"));

        assertThat(picture.widthPx()).isEqualTo(301);
        assertThat(picture.grey()).isEqualTo(grey(image));
    }

    @Test
    void readsBmpBitByBit() {
        BufferedImage image = gradient(300, 200);

        assertThat(picture(encoded(image, "bmp")).grey()).isEqualTo(grey(image));
    }

    /** The reference is the JDK's own decoder; decoders may differ by rounding. */
    @Test
    void readsJpegAsTheJdkDoes() throws IOException {
        byte[] jpeg = encoded(gradient(320, 240), "jpg");

        Picture picture = picture(jpeg);

        byte[] expected = grey(ImageIO.read(new ByteArrayInputStream(jpeg)));
        for (int i = 0; i < expected.length; i++) {
            assertThat(picture.grey()[i] & 0xff).isCloseTo(expected[i] & 0xff, within(2));
        }
    }

    /** The smallest lossless WebP there is: one pixel, after the WebP lossless bitstream specification. */
    @Test
    void readsWebp() {
        byte[] webp = java.util.HexFormat.of()
                .parseHex("524946461a000000574542505650384c0d0000002f00000010071011118888fe0700");

        Picture picture = picture(webp);

        assertThat(picture.widthPx()).isEqualTo(1);
        assertThat(picture.heightPx()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"None", "LZW", "Deflate", "PackBits"})
    void readsTiffAsTwelveMonkeysDoes(String compression) throws IOException {
        BufferedImage image = gradient(257, 131);

        Picture picture = picture(tiff(compression, image));

        assertThat(picture.grey()).isEqualTo(grey(image));
    }

    @Test
    void readsFaxTiffAsTwelveMonkeysDoes() throws IOException {
        BufferedImage image = bilevel(400, 300);
        byte[] tiff = tiff("CCITT T.6", image);

        Picture picture = picture(tiff);

        BufferedImage reference = ImageIO.read(new ByteArrayInputStream(tiff));
        for (int y = 0; y < 300; y++) {
            for (int x = 0; x < 400; x++) {
                int expected = (reference.getRGB(x, y) & 0xff) > 127 ? 255 : 0;
                assertThat(picture.grey()[y * 400 + x] & 0xff).as("pixel %d, %d", x, y).isEqualTo(expected);
            }
        }
    }

    @Test
    void readsEveryPageOfATiffInOrder() throws IOException {
        byte[] tiff = tiff("Deflate", gradient(100, 50), gradient(60, 90), bilevel(70, 70));

        List<ScanPage> pages = pages("set.tif", tiff);

        assertThat(pages).extracting(ScanPage::page).containsExactly(1, 2, 3);
        assertThat(pages)
                .extracting(page -> ((Picture) page.content()).widthPx())
                .containsExactly(100, 60, 70);
        try (ImageInputStream stream = ImageIO.createImageInputStream(new ByteArrayInputStream(tiff))) {
            ImageReader reader = ImageIO.getImageReaders(stream).next();
            reader.setInput(stream);
            assertThat(((Picture) pages.get(1).content()).grey()).isEqualTo(grey(reader.read(1)));
        }
    }

    /** Orientations after EXIF 2.3: 6 is turned 90 degrees clockwise for viewing, 3 half a turn, 8 anticlockwise. */
    @Test
    void turnsPhotographsAsTheirNoteAsks() throws IOException {
        BufferedImage image = new BufferedImage(64, 32, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setSamples(0, 0, 8, 8, 0, filled(64, 255));

        assertThat(brightest(picture(Scans.jpegWithOrientation(image, 1)))).isEqualTo("left top of 64 x 32");
        assertThat(brightest(picture(Scans.jpegWithOrientation(image, 6)))).isEqualTo("right top of 32 x 64");
        assertThat(brightest(picture(Scans.jpegWithOrientation(image, 3)))).isEqualTo("right bottom of 64 x 32");
        assertThat(brightest(picture(Scans.jpegWithOrientation(image, 8)))).isEqualTo("left bottom of 32 x 64");
    }

    @Test
    void refusesTextWithThePictureName() {
        assertThat(refusal("This is no picture.".getBytes(StandardCharsets.UTF_8))).contains("holds text");
    }

    @Test
    void refusesEmptyFile() {
        assertThat(refusal(new byte[0])).contains("empty");
    }

    @Test
    void refusesHugePictureBeforeDecodingIt() throws IOException {
        assertThat(refusal(Scans.pngOfSize(40_000, 40_000))).contains("40000 x 40000 pixels").contains("300 dpi");
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg"})
    void refusesPictureThatWasCutShort(String format) {
        byte[] whole = encoded(gradient(400, 400), format);

        assertThat(refusal(Arrays.copyOf(whole, whole.length / 2))).contains("damaged or cut short");
    }

    @Test
    void refusesTiffThatAsksForTooMuch() throws IOException {
        byte[] tiff = tiff("None", gradient(10, 10));
        boolean bigEndian = tiff[0] == 'M';
        replaceTag(tiff, 256, 100_000, bigEndian);
        replaceTag(tiff, 257, 100_000, bigEndian);

        assertThat(refusal(tiff)).contains("100000 x 100000 pixels");
    }

    @Test
    void saysWhatToDoAboutHeic() {
        byte[] heic = {0, 0, 0, 24, 'f', 't', 'y', 'p', 'h', 'e', 'i', 'c', 0, 0, 0, 0, 'm', 'i', 'f', '1'};

        assertThat(refusal(heic)).contains("HEIC").contains("JPEG");
    }

    @Test
    void readsEveryFileInAZipUnderItsOwnName() throws IOException {
        byte[] zip = zip(
                "class/sheet-01.png", encoded(gradient(20, 20), "png"),
                "../../etc/sheet-02.png", encoded(gradient(30, 20), "png"),
                "C:\\scans\\sheet-03.txt", "hello".getBytes(StandardCharsets.UTF_8),
                "__MACOSX/._sheet-01.png", new byte[] {1, 2, 3},
                "..", encoded(gradient(40, 20), "png"));

        List<ScanPage> pages = pages("set.zip", zip);

        assertThat(pages)
                .extracting(ScanPage::scan)
                .containsExactly("sheet-01.png", "sheet-02.png", "sheet-03.txt", "unnamed");
        assertThat(pages.get(2).content()).isInstanceOf(Refused.class);
    }

    @Test
    void refusesZipInZip() throws IOException {
        byte[] inner = zip("a.png", encoded(gradient(20, 20), "png"));

        List<ScanPage> pages = pages("outer.zip", zip("inner.zip", inner, "b.png", encoded(gradient(9, 9), "png")));

        assertThat(((Refused) pages.get(0).content()).reason()).contains("ZIP file in a ZIP file");
        assertThat(pages.get(1).content()).isInstanceOf(Picture.class);
    }

    @Test
    void refusesZipEntryThatUnpacksWithoutEnd() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("bomb.png"));
            writeZeros(zip, 260);
            zip.closeEntry();
        }

        List<ScanPage> pages = pages("bomb.zip", bytes.toByteArray());

        assertThat(bytes.size()).isLessThan(400_000);
        assertThat(((Refused) pages.get(0).content()).reason()).contains("larger than 200 megabytes");
    }

    @Test
    void refusesDamagedZip() throws IOException {
        byte[] whole = zip("a.png", encoded(gradient(200, 200), "png"));

        List<ScanPage> pages = pages("cut.zip", Arrays.copyOf(whole, whole.length / 2));

        assertThat(pages).singleElement().satisfies(page ->
                assertThat(((Refused) page.content()).reason()).contains("ZIP file is damaged"));
    }

    private static void writeZeros(OutputStream out, int megabytes) throws IOException {
        byte[] block = new byte[1_000_000];
        for (int i = 0; i < megabytes; i++) {
            out.write(block);
        }
    }

    private static int[] filled(int count, int value) {
        int[] values = new int[count];
        Arrays.fill(values, value);
        return values;
    }

    private static String brightest(Picture picture) {
        long right = 0;
        long left = 0;
        long top = 0;
        long bottom = 0;
        for (int y = 0; y < picture.heightPx(); y++) {
            for (int x = 0; x < picture.widthPx(); x++) {
                int value = picture.grey()[y * picture.widthPx() + x] & 0xff;
                left += x < picture.widthPx() / 2 ? value : 0;
                right += x < picture.widthPx() / 2 ? 0 : value;
                top += y < picture.heightPx() / 2 ? value : 0;
                bottom += y < picture.heightPx() / 2 ? 0 : value;
            }
        }
        return (left > right ? "left" : "right") + (top > bottom ? " top" : " bottom") + " of " + picture.widthPx() + " x "
                + picture.heightPx();
    }

    private static byte[] tiff(String compression, BufferedImage... pages) throws IOException {
        ImageWriter writer = null;
        var writers = ImageIO.getImageWritersByFormatName("tiff");
        while (writers.hasNext()) {
            ImageWriter next = writers.next();
            if (next.getClass().getName().startsWith("com.twelvemonkeys")) {
                writer = next;
            }
        }
        assertThat(writer).as("the TwelveMonkeys TIFF writer").isNotNull();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(stream);
            ImageWriteParam parameters = writer.getDefaultWriteParam();
            parameters.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            parameters.setCompressionType(compression);
            writer.prepareWriteSequence(null);
            for (BufferedImage page : pages) {
                writer.writeToSequence(new IIOImage(page, null, null), parameters);
            }
            writer.endWriteSequence();
        }
        return bytes.toByteArray();
    }

    /** Overwrites the value of a tag in the first directory of a TIFF file. */
    private static void replaceTag(byte[] tiff, int tag, int value, boolean bigEndian) {
        java.nio.ByteBuffer buffer = java.nio.ByteBuffer.wrap(tiff)
                .order(bigEndian ? java.nio.ByteOrder.BIG_ENDIAN : java.nio.ByteOrder.LITTLE_ENDIAN);
        int directory = buffer.getInt(4);
        int count = buffer.getShort(directory);
        for (int i = 0; i < count; i++) {
            int entry = directory + 2 + 12 * i;
            if (buffer.getShort(entry) == tag) {
                buffer.putShort(entry + 2, (short) 4);
                buffer.putInt(entry + 8, value);
            }
        }
    }
}
