package wallplate.measure;

import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/** Directions and distances as a draughtsman says them, on a drawing with its eaves on the left. */
final class Level {

    static final Vector RIGHT = new Vector(1, 0);
    static final Vector UP = new Vector(0, 1);

    private Level() {}

    /** How far the second upright stands to the right of the first. */
    static double rightOf(Edge first, Edge second) {
        return -first.distanceTo(second, UP);
    }

    /** How far the second level line lies above the first. */
    static double above(Edge first, Edge second) {
        return first.distanceTo(second, RIGHT);
    }

    static Line uprightAt(double x) {
        return new Line(new Point(x, 0), UP);
    }

    static Line levelAt(double y) {
        return new Line(new Point(0, y), RIGHT);
    }

    /** Where two edges' lines cross; they must not be parallel. */
    static Point crossing(Edge first, Edge second) {
        return first.line()
                .intersection(second.line(), 1e-6)
                .orElseThrow(() -> new IllegalArgumentException("the edges are parallel"));
    }
}
