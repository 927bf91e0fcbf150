package wallplate.samples;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;
import org.w3c.dom.Element;

/** Pictures as the bytes of the usual files. */
final class PictureFile {

    private PictureFile() {}

    /**
     * A JPEG file.
     *
     * @param quality 0 to 1
     * @param dpi the resolution noted in the file, 0 for none
     */
    static byte[] jpeg(BufferedImage picture, float quality, int dpi) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam settings = writer.getDefaultWriteParam();
        settings.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        settings.setCompressionQuality(quality);
        IIOMetadata metadata = writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(picture), settings);
        if (dpi > 0) {
            noteResolution(metadata, dpi);
        }
        return write(writer, settings, new IIOImage(picture, null, metadata));
    }

    private static void noteResolution(IIOMetadata metadata, int dpi) {
        String format = "javax_imageio_jpeg_image_1.0";
        IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(format);
        Element jfif = (Element) root.getElementsByTagName("app0JFIF").item(0);
        jfif.setAttribute("resUnits", "1");
        jfif.setAttribute("Xdensity", String.valueOf(dpi));
        jfif.setAttribute("Ydensity", String.valueOf(dpi));
        try {
            metadata.setFromTree(format, root);
        } catch (IIOInvalidTreeException e) {
            throw new IllegalStateException("the JPEG writer refused its own metadata", e);
        }
    }

    /**
     * A JPEG file as a telephone writes it: the pixels as the sensor lies, and a note that the picture is to be turned a
     * quarter turn clockwise to be seen as given here (Exif orientation 6, from memory of the Exif standard).
     */
    static byte[] turnedJpeg(BufferedImage picture, float quality) {
        BufferedImage turned = new BufferedImage(picture.getHeight(), picture.getWidth(), picture.getType());
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                turned.setRGB(y, picture.getWidth() - 1 - x, picture.getRGB(x, y));
            }
        }
        byte[] plain = jpeg(turned, quality, 0);
        byte[] note = {
            (byte) 0xff, (byte) 0xe1, 0, 34, 'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 1, 0x12, 0, 3, 0, 0,
            0, 1, 0, 6, 0, 0, 0, 0, 0, 0
        };
        byte[] file = new byte[plain.length + note.length];
        System.arraycopy(plain, 0, file, 0, 2);
        System.arraycopy(note, 0, file, 2, note.length);
        System.arraycopy(plain, 2, file, 2 + note.length, plain.length - 2);
        return file;
    }

    static byte[] png(BufferedImage picture) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        return write(writer, writer.getDefaultWriteParam(), new IIOImage(picture, null, null));
    }

    /** A TIFF file of one page; a picture in black and white alone is compressed as a fax is. */
    static byte[] tiff(BufferedImage picture) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        ImageWriteParam settings = writer.getDefaultWriteParam();
        settings.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        boolean blackAndWhite = picture.getType() == BufferedImage.TYPE_BYTE_BINARY;
        settings.setCompressionType(blackAndWhite ? "CCITT T.6" : "LZW");
        return write(writer, settings, new IIOImage(picture, null, null));
    }

    /**
     * The picture in black and white alone, as an office scanner's text setting makes it.
     *
     * @param darker by how many grey levels a place must be darker than the picture's usual grey to come out black
     */
    static BufferedImage blackAndWhite(BufferedImage picture, int darker) {
        int threshold = usualGrey(picture) - darker;
        BufferedImage binary = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                binary.setRGB(x, y, grey(picture, x, y) >= threshold ? 0xffffff : 0);
            }
        }
        return binary;
    }

    private static int usualGrey(BufferedImage picture) {
        int[] counts = new int[256];
        for (int y = 0; y < picture.getHeight(); y += 5) {
            for (int x = 0; x < picture.getWidth(); x += 5) {
                counts[grey(picture, x, y)]++;
            }
        }
        int seen = 0;
        int grey = 0;
        int half = Arrays.stream(counts).sum() / 2;
        while (seen < half) {
            seen += counts[grey++];
        }
        return grey;
    }

    private static int grey(BufferedImage picture, int x, int y) {
        return picture.getRaster().getSample(x, y, picture.getRaster().getNumBands() == 1 ? 0 : 1);
    }

    private static byte[] write(ImageWriter writer, ImageWriteParam settings, IIOImage image) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, image, settings);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
