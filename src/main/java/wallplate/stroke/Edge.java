package wallplate.stroke;

import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * A drawn straight edge, fitted to its own ink.
 *
 * @param line the centre line
 * @param from where the edge begins, as a position along the line in millimetres
 * @param to where it ends
 * @param offsetSigmaMm one standard deviation of its place across, at its middle
 * @param residualMm root mean square distance of the ink's own centre from the line
 * @param ink median ink on the centre line, from 0 to 255
 * @param coverage the share of its length with ink of an outline
 */
public record Edge(
        Line line, double from, double to, double offsetSigmaMm, double residualMm, double ink, double coverage) {

    public Segment segment() {
        return line.between(from, to);
    }

    public double length() {
        return to - from;
    }

    public Point middle() {
        return line.pointAt((from + to) / 2);
    }

    /** The same line between the feet of two positions on another line that runs nearly along it. */
    public Edge extendedTo(double otherFrom, double otherTo, Line other) {
        return within(line.positionOf(other.pointAt(otherFrom)), line.positionOf(other.pointAt(otherTo)));
    }

    /** The same line from one position to another. */
    public Edge within(double newFrom, double newTo) {
        return new Edge(line, newFrom, newTo, offsetSigmaMm, residualMm, ink, coverage);
    }

    /** The parallel edge that lies the given distance to the left of this one's direction. */
    public Edge offsetBy(double distance) {
        return new Edge(line.offset(distance), from, to, offsetSigmaMm, residualMm, ink, coverage);
    }

    /** The same edge with at least the given standard deviation across. */
    public Edge lessSure(double sigmaMm) {
        return new Edge(line, from, to, Math.max(offsetSigmaMm, sigmaMm), residualMm, ink, coverage);
    }

    /** The height of the line at x; the line must not be upright. */
    public double yAt(double x) {
        double slope = line.direction().y() / line.direction().x();
        return line.origin().y() + slope * (x - line.origin().x());
    }

    /** The place of the line at y; the line must not be level. */
    public double xAt(double y) {
        double slope = line.direction().x() / line.direction().y();
        return line.origin().x() + slope * (y - line.origin().y());
    }

    /**
     * How far the other edge lies to the left of this one, seen along a direction: the mean over the extent that both
     * share in that direction, or, where they share none, the value half-way between them.
     */
    public double distanceTo(Edge other, Vector direction) {
        Vector along = direction.unit();
        double[] mine = extent(along);
        double[] theirs = other.extent(along);
        double from = Math.max(mine[0], theirs[0]);
        double to = Math.min(mine[1], theirs[1]);
        double middle = (from + to) / 2;
        return other.offsetAt(middle, along) - offsetAt(middle, along);
    }

    private double[] extent(Vector along) {
        double start = along.dot(line.pointAt(from).minus(Point.ORIGIN));
        double end = along.dot(line.pointAt(to).minus(Point.ORIGIN));
        return new double[] {Math.min(start, end), Math.max(start, end)};
    }

    /** The offset to the left of the axis through the origin at a position along it. */
    private double offsetAt(double position, Vector along) {
        Vector across = along.leftNormal();
        Vector origin = line.origin().minus(Point.ORIGIN);
        double slope = across.dot(line.direction()) / along.dot(line.direction());
        return across.dot(origin) + slope * (position - along.dot(origin));
    }
}
