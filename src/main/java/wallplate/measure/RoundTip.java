package wallplate.measure;

import java.util.Arrays;
import java.util.OptionalDouble;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/**
 * How far the middle of a pencil's point came at the free upper end of an upright.
 *
 * <p>The mark of a line ends as round as it is broad. Its tip and both its sides are read at the same share of its
 * darkness, so that blur and a soft edge move them alike and the point's middle lies half the breadth below the tip.
 */
final class RoundTip {

    /** So much of the darkness, from what lies beyond the end to the line's own, makes its edge: less than half, because graphite is patchy. */
    private static final double EDGE_SHARE = 0.25;

    /** How much nearer than half the breadth the tip of a round mark lies to its point's middle, blurred by 0.1 to 0.14 mm: reckoned for discs at the end of bands. */
    private static final double BLUNTED_MM = 0.05;

    private static final double STEP_MM = 0.025;
    private static final double NEAR_MM = 0.6;
    private static final double SMOOTHED_MM = 0.05;
    private static final double MIDDLE_MM = 0.08;
    /** Over so much of its length, and clear of its end by so much, the line's own breadth is read. */
    private static final double BODY_MM = 2.5;

    private static final double BODY_STEP_MM = 0.1;
    private static final double LEAST_BODY_MM = 0.6;
    private static final double CLEAR_OF_END_MM = 0.3;
    private static final double BEYOND_FROM_MM = 0.4;
    private static final double BEYOND_TO_MM = 1.2;
    private static final double LEAST_HALF_BREADTH_MM = 0.08;
    private static final double MOST_HALF_BREADTH_MM = 0.35;

    private final InkImage ink;
    private final Edge upright;
    private final double footY;

    /** The tip of an upright, as fitted over its length, that stands on a level line at footY. */
    RoundTip(InkImage ink, Edge upright, double footY) {
        this.ink = ink;
        this.upright = upright;
        this.footY = footY;
    }

    /** The height that the middle of the point reached near a height; none where tip or sides cannot be told. */
    OptionalDouble near(double endY) {
        double fromY = Math.max(footY + LeaningUpright.CLEAR_OF_FOOT_MM, endY - BODY_MM);
        double toY = endY - CLEAR_OF_END_MM;
        if (toY - fromY < LEAST_BODY_MM) {
            return OptionalDouble.empty();
        }
        double own = medianInk(0, fromY, toY);
        double beyond = medianInk(0, endY + BEYOND_FROM_MM, endY + BEYOND_TO_MM);
        double edge = beyond + EDGE_SHARE * (own - beyond);
        OptionalDouble half = halfBreadth(fromY, toY, own, edge);
        OptionalDouble tip = tip(endY, edge);
        return half.isPresent() && tip.isPresent()
                ? OptionalDouble.of(tip.getAsDouble() - half.getAsDouble() + BLUNTED_MM)
                : OptionalDouble.empty();
    }

    private OptionalDouble halfBreadth(double fromY, double toY, double own, double edge) {
        OptionalDouble left = side(-STEP_MM, fromY, toY, own, edge);
        OptionalDouble right = side(STEP_MM, fromY, toY, own, edge);
        if (left.isEmpty() || right.isEmpty()) {
            return OptionalDouble.empty();
        }
        double half = (right.getAsDouble() - left.getAsDouble()) / 2;
        return half < LEAST_HALF_BREADTH_MM || half > MOST_HALF_BREADTH_MM ? OptionalDouble.empty() : OptionalDouble.of(half);
    }

    private OptionalDouble side(double step, double fromY, double toY, double own, double edge) {
        double before = own;
        for (double off = step; Math.abs(off) < UprightEnds.BESIDE_MM; off += step) {
            double here = medianInk(off, fromY, toY);
            if (before >= edge && here < edge) {
                return OptionalDouble.of(off - step + step * (before - edge) / (before - here));
            }
            before = here;
        }
        return OptionalDouble.empty();
    }

    /** The highest place near the end where the upright's ink falls below the edge's. */
    private OptionalDouble tip(double endY, double edge) {
        double above = middleInk(endY + NEAR_MM);
        for (double y = endY + NEAR_MM - STEP_MM; y > endY - NEAR_MM; y -= STEP_MM) {
            double here = middleInk(y);
            if (here >= edge && above < edge) {
                return OptionalDouble.of(y + STEP_MM * (here - edge) / (here - above));
            }
            above = here;
        }
        return OptionalDouble.empty();
    }

    private double middleInk(double y) {
        double x = upright.xAt(y);
        double sum = 0;
        for (int off = -1; off <= 1; off++) {
            for (int up = -1; up <= 1; up++) {
                sum += ink.at(x + off * MIDDLE_MM, y + up * SMOOTHED_MM);
            }
        }
        return Math.max(0, sum / 9 - UprightEnds.besideInk(ink, x, y));
    }

    private double medianInk(double off, double fromY, double toY) {
        double[] values = new double[(int) Math.round((toY - fromY) / BODY_STEP_MM) + 1];
        for (int at = 0; at < values.length; at++) {
            double y = fromY + at * BODY_STEP_MM;
            values[at] = ink.at(upright.xAt(y) + off, y);
        }
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
