package wallplate.report.pdf;

import java.awt.Color;
import java.util.List;

/**
 * A way to draw lines.
 *
 * @param dashMm lengths of dashes and gaps in turn; none for an unbroken line
 */
record Pen(double widthMm, Color colour, List<Double> dashMm) {

    Pen {
        dashMm = List.copyOf(dashMm);
    }

    static Pen solid(double widthMm, Color colour) {
        return new Pen(widthMm, colour, List.of());
    }

    Pen withWidth(double newWidthMm) {
        return new Pen(newWidthMm, colour, dashMm);
    }
}
