package wallplate.samples;

import java.util.List;
import java.util.Map;
import wallplate.geometry.Point;

/** An affine map: x' = a x + b y + c, y' = d x + e y + f. */
record FlatbedMap(double a, double b, double c, double d, double e, double f) implements PixelMap {

    /** This map followed by the other one, which takes this one's pixels. */
    FlatbedMap then(FlatbedMap next) {
        return new FlatbedMap(
                next.a * a + next.b * d, next.a * b + next.b * e, next.a * c + next.b * f + next.c,
                next.d * a + next.e * d, next.d * b + next.e * e, next.d * c + next.e * f + next.f);
    }

    static FlatbedMap rotation(double degrees) {
        double cosine = Math.cos(Math.toRadians(degrees));
        double sine = Math.sin(Math.toRadians(degrees));
        return new FlatbedMap(cosine, -sine, 0, sine, cosine, 0);
    }

    static FlatbedMap scaling(double x, double y) {
        return new FlatbedMap(x, 0, 0, 0, y, 0);
    }

    static FlatbedMap shift(double x, double y) {
        return new FlatbedMap(1, 0, x, 0, 1, y);
    }

    @Override
    public Point toPixels(double x, double y) {
        return new Point(a * x + b * y + c, d * x + e * y + f);
    }

    @Override
    public Point toSheet(double xPx, double yPx) {
        double determinant = a * e - b * d;
        double x = xPx - c;
        double y = yPx - f;
        return new Point((e * x - b * y) / determinant, (a * y - d * x) / determinant);
    }

    @Override
    public Map<String, Object> truth() {
        return Map.of("affine", List.of(List.of(a, b, c), List.of(d, e, f)));
    }
}
