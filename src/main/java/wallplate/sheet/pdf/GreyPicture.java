package wallplate.sheet.pdf;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;

/** Grey bytes of a decoded image, without the gamma that {@code java.awt} applies to grey images. */
final class GreyPicture {

    private GreyPicture() {}

    static byte[] of(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        byte[] grey = new byte[width * height];
        if (image.getType() == BufferedImage.TYPE_BYTE_GRAY) {
            Raster raster = image.getRaster();
            int[] row = new int[width];
            for (int y = 0; y < height; y++) {
                raster.getSamples(0, y, width, 1, 0, row);
                for (int x = 0; x < width; x++) {
                    grey[y * width + x] = (byte) row[x];
                }
            }
            return grey;
        }
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            image.getRGB(0, y, width, 1, row, 0, width);
            for (int x = 0; x < width; x++) {
                grey[y * width + x] = (byte) luminance(row[x]);
            }
        }
        return grey;
    }

    /** Luma after ITU-R BT.601, as JPEG files and OpenCV have it. */
    static int luminance(int rgb) {
        int red = rgb >> 16 & 0xff;
        int green = rgb >> 8 & 0xff;
        int blue = rgb & 0xff;
        return (299 * red + 587 * green + 114 * blue + 500) / 1000;
    }
}
