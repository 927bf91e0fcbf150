package wallplate.drafting.layout;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** An upright rectangle, in millimetres; it may have no area. */
record Box(double left, double bottom, double right, double top) {

    static Box around(List<Segment> segments) {
        double left = Double.POSITIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (Segment segment : segments) {
            left = Math.min(left, Math.min(segment.start().x(), segment.end().x()));
            right = Math.max(right, Math.max(segment.start().x(), segment.end().x()));
            bottom = Math.min(bottom, Math.min(segment.start().y(), segment.end().y()));
            top = Math.max(top, Math.max(segment.start().y(), segment.end().y()));
        }
        return new Box(left, bottom, right, top);
    }

    double width() {
        return right - left;
    }

    double height() {
        return top - bottom;
    }

    Point centre() {
        return new Point((left + right) / 2, (bottom + top) / 2);
    }

    Box grown(double by) {
        return new Box(left - by, bottom - by, right + by, top + by);
    }

    Box union(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(bottom, other.bottom),
                Math.max(right, other.right),
                Math.max(top, other.top));
    }

    boolean overlaps(Box other) {
        return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
    }

    boolean contains(Point point) {
        return point.x() >= left && point.x() <= right && point.y() >= bottom && point.y() <= top;
    }

    boolean contains(Box other) {
        return other.left >= left && other.right <= right && other.bottom >= bottom && other.top <= top;
    }

    /** Whether any place of the segment lies inside. */
    boolean meets(Segment segment) {
        double from = 0;
        double to = 1;
        double[] starts = {segment.start().x(), segment.start().y()};
        double[] steps = {segment.end().x() - segment.start().x(), segment.end().y() - segment.start().y()};
        double[] lows = {left, bottom};
        double[] highs = {right, top};
        for (int axis = 0; axis < 2; axis++) {
            if (steps[axis] == 0) {
                if (starts[axis] < lows[axis] || starts[axis] > highs[axis]) {
                    return false;
                }
                continue;
            }
            double first = (lows[axis] - starts[axis]) / steps[axis];
            double second = (highs[axis] - starts[axis]) / steps[axis];
            from = Math.max(from, Math.min(first, second));
            to = Math.min(to, Math.max(first, second));
        }
        return from <= to;
    }
}
