package wallplate.geometry;

/** A place on paper, in millimetres, x to the right and y up unless the owner of the axes says otherwise. */
public record Point(double x, double y) {

    public static final Point ORIGIN = new Point(0, 0);

    public Point plus(Vector offset) {
        return new Point(x + offset.x(), y + offset.y());
    }

    /** The vector that leads from the other point to this one. */
    public Vector minus(Point other) {
        return new Vector(x - other.x, y - other.y);
    }

    public double distanceTo(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    public Point midpointTo(Point other) {
        return new Point((x + other.x) / 2, (y + other.y) / 2);
    }

    /** The same point mirrored in the y axis. */
    public Point mirrored() {
        return new Point(-x, y);
    }
}
