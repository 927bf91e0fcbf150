package wallplate.sheet.page;

/**
 * A page's grey picture at a known resolution, x right and y up from its lower left corner in millimetres.
 *
 * @param grey row by row from the top, 0 black to 255 white; shared, never written to after it was made
 */
public record GreyPage(int widthPx, int heightPx, double pixelsPerMm, byte[] grey) {

    public double widthMm() {
        return widthPx / pixelsPerMm;
    }

    public double heightMm() {
        return heightPx / pixelsPerMm;
    }
}
