package wallplate.drafting.layout;

import java.util.List;
import java.util.Optional;
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
        return clipped(segment).isPresent();
    }

    /** The piece of the segment that lies inside (Liang and Barsky's parametric clipping). */
    Optional<Segment> clipped(Segment segment) {
        double startX = segment.start().x();
        double startY = segment.start().y();
        double[] starts = {left - startX, bottom - startY, startX - right, startY - top};
        double stepX = segment.end().x() - startX;
        double stepY = segment.end().y() - startY;
        double[] steps = {stepX, stepY, -stepX, -stepY};
        double from = 0;
        double to = 1;
        for (int side = 0; side < 4; side++) {
            if (steps[side] == 0 && starts[side] > 0) {
                return Optional.empty();
            }
            if (steps[side] > 0) {
                from = Math.max(from, starts[side] / steps[side]);
            } else if (steps[side] < 0) {
                to = Math.min(to, starts[side] / steps[side]);
            }
        }
        return from <= to ? Optional.of(new Segment(segment.at(from), segment.at(to))) : Optional.empty();
    }
}
