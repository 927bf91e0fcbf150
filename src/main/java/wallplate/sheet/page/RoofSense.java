package wallplate.sheet.page;

import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Which way up a section through a roof is: tie beam, ceiling, wall and posts lie under its slope, never over it.
 *
 * <p>Only lines below or above the slope's own stretch count; a title or a bar beside it says nothing. Where none is
 * there, the slopes' mean height against that of all the lines decides.
 */
public final class RoofSense {

    private RoofSense() {}

    /**
     * Whether, with the page turned so, the slope lies above the level and upright lines; true where there is nothing to
     * tell.
     */
    public static boolean slopesAbove(Turn turn, List<Segment> sloping, List<Segment> lines) {
        return shareUnder(turn, sloping, lines) >= 0.5;
    }

    /**
     * How much of the lines' length over and under the slope lies under it with the page turned so, from 0 to 1; where no
     * line is there, 1 or 0 by the slopes' mean height, and 1 where there is nothing to tell.
     */
    public static double shareUnder(Turn turn, List<Segment> sloping, List<Segment> lines) {
        if (sloping.isEmpty() || lines.isEmpty()) {
            return 1;
        }
        Vector up = turn.up();
        Line slope = sloping.stream()
                .max(Comparator.comparingDouble(Segment::length))
                .orElseThrow()
                .line();
        DoubleSummaryStatistics stretch = sloping.stream()
                .flatMap(line -> Stream.of(line.start(), line.end()))
                .mapToDouble(end -> across(end, up))
                .summaryStatistics();
        double upwards = Math.signum(slope.direction().leftNormal().dot(up));
        double under = 0;
        double over = 0;
        for (Segment line : lines) {
            double place = across(line.midpoint(), up);
            if (place > stretch.getMin() && place < stretch.getMax()) {
                double above = slope.distanceTo(line.midpoint()) * upwards;
                under += above < 0 ? line.length() : 0;
                over += above < 0 ? 0 : line.length();
            }
        }
        if (under == over) {
            return turn.meanHeight(sloping) > turn.meanHeight(lines) ? 1 : 0;
        }
        return under / (under + over);
    }

    /** The place of a point along the drawing's level. */
    private static double across(Point point, Vector up) {
        return point.x() * up.y() - point.y() * up.x();
    }
}
