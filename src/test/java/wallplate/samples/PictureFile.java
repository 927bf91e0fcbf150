package wallplate.samples;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
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

    /** The picture in black and white alone: black where it is darker than the threshold, in grey levels. */
    static BufferedImage blackAndWhite(BufferedImage picture, int threshold) {
        BufferedImage binary = new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                boolean light = (picture.getRGB(x, y) >> 8 & 0xff) >= threshold;
                binary.setRGB(x, y, light ? 0xffffff : 0);
            }
        }
        return binary;
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
