package wallplate.report;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** An upright rectangle in millimetres, on a report's page or on a learner's sheet. */
public record Box(double left, double bottom, double width, double height) {

    /** The smallest box that holds every segment; there must be one. */
    public static Box around(List<Segment> segments) {
        double left = Double.POSITIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.NEGATIVE_INFINITY;
        for (Segment segment : segments) {
            for (Point end : List.of(segment.start(), segment.end())) {
                left = Math.min(left, end.x());
                bottom = Math.min(bottom, end.y());
                right = Math.max(right, end.x());
                top = Math.max(top, end.y());
            }
        }
        return new Box(left, bottom, right - left, top - bottom);
    }

    public double right() {
        return left + width;
    }

    public double top() {
        return bottom + height;
    }

    public Point centre() {
        return new Point(left + width / 2, bottom + height / 2);
    }

    public Box grown(double by) {
        return new Box(left - by, bottom - by, width + 2 * by, height + 2 * by);
    }

    /** The part of this box within another; the two must meet. */
    public Box within(Box limits) {
        double newLeft = Math.max(left, limits.left);
        double newBottom = Math.max(bottom, limits.bottom);
        double newRight = Math.min(right(), limits.right());
        double newTop = Math.min(top(), limits.top());
        return new Box(newLeft, newBottom, newRight - newLeft, newTop - newBottom);
    }

    /** The same box made wider or higher about its centre until it has the proportions of another. */
    public Box proportionedLike(Box other) {
        double wanted = other.width / other.height;
        double newWidth = Math.max(width, height * wanted);
        double newHeight = Math.max(height, width / wanted);
        return new Box(left - (newWidth - width) / 2, bottom - (newHeight - height) / 2, newWidth, newHeight);
    }

    public boolean overlaps(Box other) {
        return left < other.right() && other.left < right() && bottom < other.top() && other.bottom < top();
    }

    public boolean contains(Point point) {
        return point.x() >= left && point.x() <= right() && point.y() >= bottom && point.y() <= top();
    }

    public boolean contains(Box other) {
        return other.left >= left && other.right() <= right() && other.bottom >= bottom && other.top() <= top();
    }

    /** Where a place of this box comes to lie when the box is laid onto another one of like proportions. */
    public Point mapTo(Box target, Point place) {
        return new Point(
                target.left + (place.x() - left) / width * target.width,
                target.bottom + (place.y() - bottom) / height * target.height);
    }

    public Segment mapTo(Box target, Segment segment) {
        return new Segment(mapTo(target, segment.start()), mapTo(target, segment.end()));
    }
}
