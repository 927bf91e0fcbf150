package wallplate.sheet.page;

import java.util.function.DoubleBinaryOperator;
import wallplate.sheet.ScanPage.Picture;

/** Scans whose darkness is a formula of the place in millimetres, 60 mm wide and 30 mm high at 300 dpi. */
final class FormulaScan {

    private static final double PIXELS_PER_MM = 300 / 25.4;
    private static final double WIDTH = 60;
    private static final double HEIGHT = 30;
    private static final double PAPER = 230;
    private static final double HALF_STROKE = 0.17;

    private FormulaScan() {}

    /** A refit in the scan that a formula gives. */
    static LineRefit refit(DoubleBinaryOperator darkness) {
        return refit(WIDTH, darkness);
    }

    /** The same in a scan of another width in millimetres. */
    static LineRefit refit(double widthMm, DoubleBinaryOperator darkness) {
        return new LineRefit(picture(widthMm, darkness), map());
    }

    /** How dark a stroke is so far off its centre line. */
    static double stroke(double off, double darkness) {
        double soft = 0.08;
        return darkness * 0.5 * (Math.tanh((off + HALF_STROKE) / soft) - Math.tanh((off - HALF_STROKE) / soft));
    }

    private static PageMap map() {
        return PageMap.affine(PIXELS_PER_MM, 0, 0, 0, -PIXELS_PER_MM, Math.round(HEIGHT * PIXELS_PER_MM));
    }

    private static Picture picture(double widthMm, DoubleBinaryOperator darkness) {
        int width = (int) Math.round(widthMm * PIXELS_PER_MM);
        int height = (int) Math.round(HEIGHT * PIXELS_PER_MM);
        byte[] grey = new byte[width * height];
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                double x = (column + 0.5) / PIXELS_PER_MM;
                double y = (height - row - 0.5) / PIXELS_PER_MM;
                grey[row * width + column] = (byte) Math.round(PAPER * (1 - darkness.applyAsDouble(x, y)));
            }
        }
        return new Picture(width, height, grey, 300, 300);
    }
}
