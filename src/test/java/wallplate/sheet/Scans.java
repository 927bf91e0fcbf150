package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.ScanPage.Refused;

/** Files for tests, good and bad, and what comes of them. */
final class Scans {

    private Scans() {}

    static List<ScanPage> pages(String name, byte[] content) {
        List<ScanPage> pages = new ArrayList<>();
        ScanFile.forEachPage(name, content, pages::add);
        return pages;
    }

    static Picture picture(byte[] content) {
        List<ScanPage> pages = pages("scan", content);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).content()).as("%s", pages.get(0)).isInstanceOf(Picture.class);
        return (Picture) pages.get(0).content();
    }

    static String refusal(byte[] content) {
        List<ScanPage> pages = pages("scan", content);
        assertThat(pages).hasSize(1);
        assertThat(pages.get(0).content()).isInstanceOf(Refused.class);
        return ((Refused) pages.get(0).content()).reason();
    }

    /** A grey picture in which every pixel tells its place. */
    static BufferedImage gradient(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.getRaster().setSample(x, y, 0, (x * 7 + y * 13) % 251);
            }
        }
        return image;
    }

    /** A black and white picture of stripes and a block, as a fax has them. */
    static BufferedImage bilevel(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean black = (x + y) % 17 < 3 || (x > width / 3 && x < width / 2 && y > height / 2);
                image.getRaster().setSample(x, y, 0, black ? 0 : 1);
            }
        }
        return image;
    }

    static byte[] grey(BufferedImage image) {
        byte[] grey = new byte[image.getWidth() * image.getHeight()];
        int white = image.getType() == BufferedImage.TYPE_BYTE_BINARY ? 255 : 1;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                grey[y * image.getWidth() + x] = (byte) (image.getRaster().getSample(x, y, 0) * white);
            }
        }
        return grey;
    }

    static byte[] encoded(BufferedImage image, String format) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            assertThat(ImageIO.write(image, format, bytes)).as("a writer for %s", format).isTrue();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** A PNG header that asks for a picture of this size, with nothing in it. */
    static byte[] pngOfSize(int width, int height) throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        png.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        byte[] header = java.nio.ByteBuffer.allocate(13)
                .putInt(width)
                .putInt(height)
                .put(new byte[] {8, 0, 0, 0, 0})
                .array();
        chunk(png, "IHDR", header);
        chunk(png, "IEND", new byte[0]);
        return png.toByteArray();
    }

    private static void chunk(ByteArrayOutputStream png, String name, byte[] content) throws IOException {
        byte[] type = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 sum = new CRC32();
        sum.update(type);
        sum.update(content);
        png.write(java.nio.ByteBuffer.allocate(4).putInt(content.length).array());
        png.write(type);
        png.write(content);
        png.write(java.nio.ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
    }

    /** A JPEG with an EXIF note that the picture is to be turned. */
    static byte[] jpegWithOrientation(BufferedImage image, int orientation) throws IOException {
        byte[] jpeg = encoded(image, "jpg");
        byte[] exif = {
            (byte) 0xff, (byte) 0xe1, 0, 34, 'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0, 0,
            1, 0, (byte) orientation, 0, 0, 0, 0, 0, 0
        };
        ByteArrayOutputStream noted = new ByteArrayOutputStream();
        noted.write(jpeg, 0, 2);
        noted.write(exif);
        noted.write(jpeg, 2, jpeg.length - 2);
        return noted.toByteArray();
    }

    static byte[] zip(Object... namesAndContents) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndContents.length; i += 2) {
                zip.putNextEntry(new ZipEntry((String) namesAndContents[i]));
                zip.write((byte[]) namesAndContents[i + 1]);
                zip.closeEntry();
            }
        }
        return bytes.toByteArray();
    }
}
