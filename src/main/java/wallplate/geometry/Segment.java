package wallplate.geometry;

/** A straight piece between two points, directed from its start to its end. It may have no length. */
public record Segment(Point start, Point end) {

    public static Segment between(Point start, Point end) {
        return new Segment(start, end);
    }

    public static Segment between(double startX, double startY, double endX, double endY) {
        return new Segment(new Point(startX, startY), new Point(endX, endY));
    }

    public double length() {
        return start.distanceTo(end);
    }

    public Vector vector() {
        return end.minus(start);
    }

    /** The direction in degrees without regard to which end is first, in (-90, 90]. */
    public double inclinationDegrees() {
        return Angles.inclination(vector().angleDegrees());
    }

    public Point midpoint() {
        return start.midpointTo(end);
    }

    /** The point at a fraction of the way: 0 at the start, 1 at the end, beyond them outside [0, 1]. */
    public Point at(double fraction) {
        return new Point(start.x() + (end.x() - start.x()) * fraction, start.y() + (end.y() - start.y()) * fraction);
    }

    public Segment reversed() {
        return new Segment(end, start);
    }

    /** The same segment mirrored in the y axis. */
    public Segment mirrored() {
        return new Segment(start.mirrored(), end.mirrored());
    }

    /** The endless line through both ends; the segment must have a length. */
    public Line line() {
        return Line.through(start, end);
    }

    /** The shortest distance from a point to any place on the segment. */
    public double distanceTo(Point point) {
        double squared = vector().dot(vector());
        if (squared == 0) {
            return start.distanceTo(point);
        }
        double fraction = point.minus(start).dot(vector()) / squared;
        return at(Math.max(0, Math.min(1, fraction))).distanceTo(point);
    }
}
