package wallplate.measure;

import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/** Reads what fills an outline: two crossing diagonals, or hatching. */
final class Pattern {

    /** Half a line's breadth and the blur of a scan. */
    private static final double CLEAR_OF_OUTLINE_MM = 0.45;

    /** Half a line's breadth alone, within which a small box is read. */
    private static final double CLEAR_OF_LINE_MM = 0.38;

    /** How far to its side an end of a diagonal may lie, of the box's shorter side: further, it would lie in the outline. */
    private static final double SHIFT_PART = 0.15;

    private static final double MOST_SHIFT_MM = 0.6;

    private static final double SMALLEST_BOX_MM = 1;
    private static final double MIDDLE_MM = 0.1;
    private static final double REGION_STEP_MM = 0.15;
    private static final double LEAST_REGION_MM2 = 1.5;
    private static final double EDGE_STEP_MM = 0.1;
    private static final double AT_45_DEGREES = 10;

    private final InkImage ink;
    private final double outlineInk;

    Pattern(DrawingView view) {
        this.ink = view.ink();
        this.outlineInk = view.outlineInk();
    }

    /**
     * How surely a box is crossed by both diagonals, from 0 (no) to 1 (yes): the share of the weaker diagonal that is
     * inked, where it is clear of the box's own outline. Empty where the box is too small to have such a place.
     */
    OptionalDouble crossed(Point lowerLeft, Point lowerRight, Point upperLeft, Point upperRight) {
        double height = (lowerLeft.distanceTo(upperLeft) + lowerRight.distanceTo(upperRight)) / 2;
        double width = (lowerLeft.distanceTo(lowerRight) + upperLeft.distanceTo(upperRight)) / 2;
        double clear = Math.max(0.2, CLEAR_OF_OUTLINE_MM / Math.min(height, width));
        if (clear > 0.32) {
            return OptionalDouble.empty();
        }
        double reach = Math.min(MOST_SHIFT_MM, SHIFT_PART * Math.min(height, width));
        return OptionalDouble.of(
                Math.min(diagonal(lowerLeft, upperRight, clear, reach), diagonal(upperLeft, lowerRight, clear, reach)));
    }

    /** The ink in the middle of a box and the mean within it, as parts of an outline's ink. */
    record Fill(double middle, double mean) {}

    /** What fills a box that is too small for {@link #crossed}; empty where its own outline leaves nothing to be seen. */
    Optional<Fill> fillOf(Point lowerLeft, Point lowerRight, Point upperLeft, Point upperRight) {
        double height = (lowerLeft.distanceTo(upperLeft) + lowerRight.distanceTo(upperRight)) / 2;
        double width = (lowerLeft.distanceTo(lowerRight) + upperLeft.distanceTo(upperRight)) / 2;
        double clear = CLEAR_OF_LINE_MM / Math.min(height, width);
        if (Math.min(height, width) < SMALLEST_BOX_MM) {
            return Optional.empty();
        }
        double middle = 0;
        double sum = 0;
        int count = 0;
        double step = (1 - 2 * clear) / 20;
        for (double right = clear; right < 1 - clear + step / 2; right += step) {
            Vector low = lowerRight.minus(lowerLeft).times(right);
            Vector high = upperRight.minus(upperLeft).times(right);
            for (double up = clear; up < 1 - clear + step / 2; up += step) {
                Point place = lowerLeft.plus(low).plus(upperLeft.plus(high).minus(lowerLeft.plus(low)).times(up));
                double here = Math.min(1, ink.at(place.x(), place.y()) / outlineInk);
                sum += here;
                count++;
                boolean isMiddle = Math.abs(right - 0.5) * width < MIDDLE_MM && Math.abs(up - 0.5) * height < MIDDLE_MM;
                middle = isMiddle ? Math.max(middle, here) : middle;
            }
        }
        return Optional.of(new Fill(middle, sum / count));
    }

    /** The share of a diagonal's inner part with ink, the best of small shifts of its ends. */
    private double diagonal(Point from, Point to, double clear, double reach) {
        Vector across = to.minus(from).unit().leftNormal();
        double best = 0;
        for (double start = -reach; start <= reach + 1e-9; start += reach / 3) {
            for (double end = -reach; end <= reach + 1e-9; end += reach / 3) {
                best = Math.max(best, inked(from.plus(across.times(start)), to.plus(across.times(end)), clear));
            }
        }
        return best;
    }

    private double inked(Point from, Point to, double clear) {
        int samples = Math.max(8, (int) Math.round(from.distanceTo(to) / 0.1));
        int inked = 0;
        int counted = 0;
        for (int sample = 0; sample < samples; sample++) {
            double part = (sample + 0.5) / samples;
            if (part < clear || part > 1 - clear) {
                continue;
            }
            counted++;
            double x = from.x() + (to.x() - from.x()) * part;
            double y = from.y() + (to.y() - from.y()) * part;
            if (ink.at(x, y) > 0.3 * outlineInk) {
                inked++;
            }
        }
        return inked / (double) Math.max(1, counted);
    }

    /** Mean ink of a region, as a part of an outline's; empty where too little of it is free to tell. */
    OptionalDouble meanInk(Region region) {
        double sum = 0;
        int count = 0;
        for (double y = region.lowY(); y < region.highY(); y += REGION_STEP_MM) {
            for (double x = region.leftX(y); x < region.rightX(y); x += REGION_STEP_MM) {
                if (region.contains(x, y)) {
                    sum += ink.at(x, y);
                    count++;
                }
            }
        }
        return count * REGION_STEP_MM * REGION_STEP_MM < LEAST_REGION_MM2
                ? OptionalDouble.empty()
                : OptionalDouble.of(sum / count / outlineInk);
    }

    /**
     * The share of the edges of a region's ink, weighted by the square of their steepness, that run at 45 degrees to the
     * level to one side: most of those of hatching do, and few of those of a leader or of what stands beside the region.
     */
    double edgesAt45(Region region) {
        double all = 0;
        double rising = 0;
        double falling = 0;
        for (double y = region.lowY(); y < region.highY(); y += EDGE_STEP_MM) {
            for (double x = region.leftX(y); x < region.rightX(y); x += EDGE_STEP_MM) {
                if (region.contains(x, y)) {
                    double right = ink.at(x + EDGE_STEP_MM, y) - ink.at(x - EDGE_STEP_MM, y);
                    double up = ink.at(x, y + EDGE_STEP_MM) - ink.at(x, y - EDGE_STEP_MM);
                    double steepness = right * right + up * up;
                    // The gradient stands square to its edge: it leans like an edge at 45 degrees, to the other side.
                    boolean isAt45 = Math.abs(Math.toDegrees(Math.atan2(Math.abs(up), Math.abs(right))) - 45) < AT_45_DEGREES;
                    all += steepness;
                    rising += isAt45 && right * up < 0 ? steepness : 0;
                    falling += isAt45 && right * up > 0 ? steepness : 0;
                }
            }
        }
        return all == 0 ? 0 : Math.max(rising, falling) / all;
    }

    /** A region of the page between two heights, with its own left and right end at each height. */
    interface Region {
        double lowY();

        double highY();

        double leftX(double y);

        double rightX(double y);

        default boolean contains(double x, double y) {
            return true;
        }
    }
}
