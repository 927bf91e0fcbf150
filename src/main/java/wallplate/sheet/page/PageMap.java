package wallplate.sheet.page;

import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;

/**
 * From millimetres on a page to pixels of the picture: a projective map followed by one radial term of the lens.
 *
 * <p>Millimetres run x right and y up, pixels x right and y down with whole numbers at pixel corners. A scan's map is
 * affine and has no radial term.
 *
 * @param matrix nine numbers, row by row
 */
public record PageMap(double[] matrix, Lens lens) implements PlaneMap {

    private static final int INVERSE_STEPS = 12;

    /**
     * How a lens bends straight lines: a point at distance r from the centre is seen at {@code r (1 + k (r/R)^2)}.
     *
     * @param bend k, positive where the corners are drawn outwards
     * @param radiusPx R, half the picture's diagonal
     */
    public record Lens(double bend, double centreX, double centreY, double radiusPx) {

        public static final Lens STRAIGHT = new Lens(0, 0, 0, 1);

        public Point seen(Point ideal) {
            if (bend == 0) {
                return ideal;
            }
            double x = ideal.x() - centreX;
            double y = ideal.y() - centreY;
            double factor = 1 + bend * (x * x + y * y) / (radiusPx * radiusPx);
            return new Point(centreX + x * factor, centreY + y * factor);
        }

        public Point ideal(Point seen) {
            if (bend == 0) {
                return seen;
            }
            double x = seen.x() - centreX;
            double y = seen.y() - centreY;
            double factor = 1;
            for (int step = 0; step < INVERSE_STEPS; step++) {
                factor = 1 + bend * (x * x + y * y) / (factor * factor * radiusPx * radiusPx);
            }
            return new Point(centreX + x / factor, centreY + y / factor);
        }
    }

    public static PageMap affine(double xx, double xy, double x, double yx, double yy, double y) {
        return new PageMap(new double[] {xx, xy, x, yx, yy, y, 0, 0, 1}, Lens.STRAIGHT);
    }

    @Override
    public Point apply(Point point) {
        return lens.seen(project(matrix, point));
    }

    @Override
    public PlaneMap inverse() {
        double[] back = inverted(matrix);
        PageMap forward = this;
        return new PlaneMap() {
            @Override
            public Point apply(Point point) {
                return project(back, lens.ideal(point));
            }

            @Override
            public PlaneMap inverse() {
                return forward;
            }
        };
    }

    /** This map for a page whose millimetres are first carried to this map's millimetres by the given affine map. */
    public PageMap after(PageMap millimetres) {
        return new PageMap(product(matrix, millimetres.matrix), lens);
    }

    /** Pixels to a millimetre at a place, as the square root of the area that a square millimetre covers. */
    public double pixelsPerMmAt(Point point) {
        Point origin = apply(point);
        Point right = apply(new Point(point.x() + 1, point.y()));
        Point up = apply(new Point(point.x(), point.y() + 1));
        return Math.sqrt(Math.abs(right.minus(origin).cross(up.minus(origin))));
    }

    public static Point project(double[] m, Point point) {
        double w = m[6] * point.x() + m[7] * point.y() + m[8];
        return new Point(
                (m[0] * point.x() + m[1] * point.y() + m[2]) / w, (m[3] * point.x() + m[4] * point.y() + m[5]) / w);
    }

    public static double[] product(double[] a, double[] b) {
        double[] result = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int k = 0; k < 3; k++) {
                    result[row * 3 + column] += a[row * 3 + k] * b[k * 3 + column];
                }
            }
        }
        return result;
    }

    public static double[] inverted(double[] m) {
        double a = m[4] * m[8] - m[5] * m[7];
        double b = m[5] * m[6] - m[3] * m[8];
        double c = m[3] * m[7] - m[4] * m[6];
        double determinant = m[0] * a + m[1] * b + m[2] * c;
        if (determinant == 0) {
            throw new ArithmeticException("the page map is flat and has no inverse");
        }
        double[] inverse = {
            a, m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            b, m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            c, m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
        for (int i = 0; i < 9; i++) {
            inverse[i] /= determinant;
        }
        return inverse;
    }
}
