package wallplate.samples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.geometry.Point;

/**
 * A homography followed by a radial term: a place p of the homography's picture moves to c + (p - c)(1 + k1 r^2 / rc^2),
 * r being its distance from the picture's middle c and rc half the picture's diagonal.
 */
final class PhoneMap implements PixelMap {

    private final double[] forward;
    private final double[] back;
    private final double k1;
    private final double centreX;
    private final double centreY;
    private final double halfDiagonal;

    /** The homography's nine numbers row by row, from sheet millimetres to pixels. */
    PhoneMap(double[] homography, double k1, int widthPx, int heightPx) {
        this.forward = homography.clone();
        this.back = inverse(homography);
        this.k1 = k1;
        this.centreX = widthPx / 2.0;
        this.centreY = heightPx / 2.0;
        this.halfDiagonal = Math.hypot(centreX, centreY);
    }

    @Override
    public Point toPixels(double x, double y) {
        Point flat = apply(forward, x, y);
        double dx = flat.x() - centreX;
        double dy = flat.y() - centreY;
        double factor = 1 + k1 * (dx * dx + dy * dy) / (halfDiagonal * halfDiagonal);
        return new Point(centreX + dx * factor, centreY + dy * factor);
    }

    @Override
    public Point toSheet(double xPx, double yPx) {
        double dx = xPx - centreX;
        double dy = yPx - centreY;
        double factor = 1;
        for (int round = 0; round < 4; round++) {
            double squared = (dx * dx + dy * dy) / (factor * factor);
            factor = 1 + k1 * squared / (halfDiagonal * halfDiagonal);
        }
        return apply(back, centreX + dx / factor, centreY + dy / factor);
    }

    @Override
    public Map<String, Object> truth() {
        Map<String, Object> radial = new LinkedHashMap<>();
        radial.put("k1", k1);
        radial.put("cx", centreX);
        radial.put("cy", centreY);
        radial.put("rc", halfDiagonal);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("homography", List.of(row(0), row(1), row(2)));
        map.put("radial", radial);
        return map;
    }

    private List<Double> row(int number) {
        return List.of(forward[3 * number], forward[3 * number + 1], forward[3 * number + 2]);
    }

    private static Point apply(double[] h, double x, double y) {
        double w = h[6] * x + h[7] * y + h[8];
        return new Point((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w);
    }

    private static double[] inverse(double[] h) {
        return new double[] {
            h[4] * h[8] - h[5] * h[7], h[2] * h[7] - h[1] * h[8], h[1] * h[5] - h[2] * h[4],
            h[5] * h[6] - h[3] * h[8], h[0] * h[8] - h[2] * h[6], h[2] * h[3] - h[0] * h[5],
            h[3] * h[7] - h[4] * h[6], h[1] * h[6] - h[0] * h[7], h[0] * h[4] - h[1] * h[3]
        };
    }
}
