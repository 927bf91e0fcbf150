package wallplate.samples;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/** The straight line that lies closest to strokes, by least squares square to the line. */
final class BestFit {

    private BestFit() {}

    /** The line over the strokes' whole extent, in the direction in which the first one was drawn. */
    static Segment through(List<PencilStroke> strokes) {
        double weight = 0;
        double sumX = 0;
        double sumY = 0;
        for (PencilStroke stroke : strokes) {
            for (int at = 0; at < stroke.x().length; at++) {
                double mass = stroke.pressure()[at] > 0 ? 1 : 0;
                weight += mass;
                sumX += mass * stroke.x()[at];
                sumY += mass * stroke.y()[at];
            }
        }
        Point centre = new Point(sumX / weight, sumY / weight);
        Vector along = direction(strokes, centre);
        return extent(strokes, centre, along);
    }

    private static Vector direction(List<PencilStroke> strokes, Point centre) {
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (PencilStroke stroke : strokes) {
            for (int at = 0; at < stroke.x().length; at++) {
                double mass = stroke.pressure()[at] > 0 ? 1 : 0;
                double x = stroke.x()[at] - centre.x();
                double y = stroke.y()[at] - centre.y();
                xx += mass * x * x;
                xy += mass * x * y;
                yy += mass * y * y;
            }
        }
        double angle = 0.5 * Math.atan2(2 * xy, xx - yy);
        Vector along = new Vector(Math.cos(angle), Math.sin(angle));
        PencilStroke first = strokes.get(0);
        int last = first.x().length - 1;
        Vector drawn = new Vector(first.x()[last] - first.x()[0], first.y()[last] - first.y()[0]);
        return along.dot(drawn) < 0 ? along.negated() : along;
    }

    private static Segment extent(List<PencilStroke> strokes, Point centre, Vector along) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (PencilStroke stroke : strokes) {
            for (int at = 0; at < stroke.x().length; at++) {
                double position = along.dot(new Point(stroke.x()[at], stroke.y()[at]).minus(centre));
                from = Math.min(from, position);
                to = Math.max(to, position);
            }
        }
        return new Segment(centre.plus(along.times(from)), centre.plus(along.times(to)));
    }
}
