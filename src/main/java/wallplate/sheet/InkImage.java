package wallplate.sheet;

/**
 * How much ink lies where on a level page: 0 is bare paper, 255 as dark as black.
 *
 * <p>Places are millimetres, x to the right and y up from the lower left corner of the picture. The ink is
 * {@code (background - grey) / background} after the light has been flattened, so that a shadowed photograph and a clean
 * scan give the same line the same ink. The array is shared, not copied, because a page is large: it is never written
 * to after the image was made.
 */
public final class InkImage {

    private final int widthPx;
    private final int heightPx;
    private final double pixelsPerMm;
    private final byte[] ink;

    /**
     * @param ink row by row from the top, {@code widthPx * heightPx} unsigned bytes; handed over, not copied
     */
    public InkImage(int widthPx, int heightPx, double pixelsPerMm, byte[] ink) {
        if (ink.length != widthPx * heightPx) {
            throw new IllegalArgumentException(
                    "%d x %d pixels need as many bytes, not %d".formatted(widthPx, heightPx, ink.length));
        }
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.pixelsPerMm = pixelsPerMm;
        this.ink = ink;
    }

    public int widthPx() {
        return widthPx;
    }

    public int heightPx() {
        return heightPx;
    }

    public double pixelsPerMm() {
        return pixelsPerMm;
    }

    public double widthMm() {
        return widthPx / pixelsPerMm;
    }

    public double heightMm() {
        return heightPx / pixelsPerMm;
    }

    /** The ink bytes, row by row from the top. Not to be written to. */
    public byte[] bytes() {
        return ink;
    }

    /** The ink at a place in millimetres, from 0 to 255, interpolated between the four nearest pixels; 0 outside. */
    public double at(double xMm, double yMm) {
        double column = xMm * pixelsPerMm - 0.5;
        double row = heightPx - yMm * pixelsPerMm - 0.5;
        int left = (int) Math.floor(column);
        int top = (int) Math.floor(row);
        if (left < 0 || top < 0 || left + 1 >= widthPx || top + 1 >= heightPx) {
            return 0;
        }
        double right = column - left;
        double down = row - top;
        int index = top * widthPx + left;
        double upper = (ink[index] & 0xff) * (1 - right) + (ink[index + 1] & 0xff) * right;
        double lower = (ink[index + widthPx] & 0xff) * (1 - right) + (ink[index + widthPx + 1] & 0xff) * right;
        return upper * (1 - down) + lower * down;
    }
}
