package wallplate.samples;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;

/** Parallel strokes over a convex outline, as unevenly spaced as a hand does it. */
final class Hatching {

    private Hatching() {}

    /** The strokes in order across the outline; each is directed by the angle, in degrees. */
    static List<PlannedLine> over(List<Point> outline, double angleDegrees, double spacing, Chance chance) {
        Vector along = Vector.atDegrees(angleDegrees);
        Vector across = along.leftNormal();
        double low = outline.stream().mapToDouble(point -> dot(across, point)).min().orElseThrow();
        double high = outline.stream().mapToDouble(point -> dot(across, point)).max().orElseThrow();
        List<PlannedLine> strokes = new ArrayList<>();
        for (double at = low + spacing * 0.6; at < high - 0.4; at += spacing * (1 + chance.error(0.15))) {
            addStroke(strokes, outline, along, across, at);
        }
        return strokes;
    }

    private static void addStroke(List<PlannedLine> strokes, List<Point> outline, Vector along, Vector across, double at) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int corner = 0; corner < outline.size(); corner++) {
            Point one = outline.get(corner);
            Point other = outline.get((corner + 1) % outline.size());
            double here = dot(across, one) - at;
            double there = dot(across, other) - at;
            if (here * there > 0 || here == there) {
                continue;
            }
            double fraction = here / (here - there);
            double position = dot(along, one) + fraction * (dot(along, other) - dot(along, one));
            from = Math.min(from, position);
            to = Math.max(to, position);
        }
        if (to - from > 0.5) {
            strokes.add(new PlannedLine("", point(along, across, from, at), point(along, across, to, at), PlannedLine.Weight.THIN));
        }
    }

    private static Point point(Vector along, Vector across, double position, double offset) {
        return Point.ORIGIN.plus(along.times(position)).plus(across.times(offset));
    }

    private static double dot(Vector direction, Point point) {
        return direction.dot(point.minus(Point.ORIGIN));
    }
}
