package wallplate.sheet.page;

import wallplate.sheet.ScanPage.Picture;

/**
 * Turns a picture by quarter turns, after mirroring it where asked.
 *
 * @param clockwiseQuarters how often it is turned by 90 degrees clockwise, 0 to 3
 * @param mirrored whether it is first flipped top to bottom
 */
public record PictureTurn(int clockwiseQuarters, boolean mirrored) {

    /** The picture turned; the resolutions change places with the sides. */
    public Picture apply(Picture picture) {
        Picture flipped = mirrored ? flipped(picture) : picture;
        return switch (clockwiseQuarters) {
            case 0 -> flipped;
            case 2 -> halfTurned(flipped);
            default -> quarterTurned(flipped, clockwiseQuarters == 1);
        };
    }

    private static Picture flipped(Picture picture) {
        int width = picture.widthPx();
        int height = picture.heightPx();
        byte[] grey = new byte[width * height];
        for (int y = 0; y < height; y++) {
            System.arraycopy(picture.grey(), y * width, grey, (height - 1 - y) * width, width);
        }
        return new Picture(width, height, grey, picture.dpiX(), picture.dpiY());
    }

    private static Picture halfTurned(Picture picture) {
        byte[] grey = picture.grey().clone();
        for (int low = 0, high = grey.length - 1; low < high; low++, high--) {
            byte kept = grey[low];
            grey[low] = grey[high];
            grey[high] = kept;
        }
        return new Picture(picture.widthPx(), picture.heightPx(), grey, picture.dpiX(), picture.dpiY());
    }

    private static Picture quarterTurned(Picture picture, boolean clockwise) {
        int width = picture.widthPx();
        int height = picture.heightPx();
        byte[] from = picture.grey();
        byte[] grey = new byte[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int row = clockwise ? x : width - 1 - x;
                int column = clockwise ? height - 1 - y : y;
                grey[row * height + column] = from[y * width + x];
            }
        }
        return new Picture(height, width, grey, picture.dpiY(), picture.dpiX());
    }
}
