package wallplate.samples;

import java.util.Map;
import wallplate.geometry.Point;

/** Where a place on the sheet comes to lie in the picture, and back. Pixels have whole numbers at their corners. */
interface PixelMap {

    Point toPixels(double xMm, double yMm);

    Point toSheet(double xPx, double yPx);

    /** The map as a truth file writes it. */
    Map<String, Object> truth();
}
