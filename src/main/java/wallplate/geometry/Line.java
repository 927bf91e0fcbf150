package wallplate.geometry;

import java.util.Optional;

/**
 * An endless directed line: a point on it and its unit direction.
 *
 * <p>Distances are signed: positive to the left of the direction. Positions along the line are counted from its point.
 */
public record Line(Point origin, Vector direction) {

    public Line {
        direction = direction.unit();
    }

    /** The line from one point towards another; the points must differ. */
    public static Line through(Point first, Point second) {
        return new Line(first, second.minus(first));
    }

    /** The line through a point at an angle, in degrees anticlockwise from the x axis. */
    public static Line at(Point point, double angleDegrees) {
        return new Line(point, Vector.atDegrees(angleDegrees));
    }

    /** How far the point lies to the left of the line (negative: to the right). */
    public double distanceTo(Point point) {
        return direction.cross(point.minus(origin));
    }

    /** Where along the line the foot of the perpendicular from the point lies. */
    public double positionOf(Point point) {
        return direction.dot(point.minus(origin));
    }

    public Point pointAt(double position) {
        return origin.plus(direction.times(position));
    }

    /** The piece of the line between two positions along it. */
    public Segment between(double from, double to) {
        return new Segment(pointAt(from), pointAt(to));
    }

    /** The parallel that lies the given distance to the left. */
    public Line offset(double distance) {
        return new Line(origin.plus(direction.leftNormal().times(distance)), direction);
    }

    /** The direction in degrees without regard to which way it points, in (-90, 90]. */
    public double inclinationDegrees() {
        return Angles.inclination(direction.angleDegrees());
    }

    /**
     * Where the two lines cross; empty where they are parallel within the tolerance.
     *
     * @param parallelSine the sine of the angle below which two lines count as parallel
     */
    public Optional<Point> intersection(Line other, double parallelSine) {
        double sine = direction.cross(other.direction);
        if (Math.abs(sine) <= parallelSine) {
            return Optional.empty();
        }
        double position = other.origin.minus(origin).cross(other.direction) / sine;
        return Optional.of(pointAt(position));
    }
}
