package wallplate.measure;

import java.util.List;
import wallplate.sheet.InkImage;
import wallplate.stroke.Edge;

/**
 * Where an upright may end freely above: the heights that part its dark piece from the lighter one above. Broken lead and a
 * construction line that runs on are allowed for.
 */
final class UprightEnds {

    /**
     * A height at which the upright may end.
     *
     * @param at its place among the steps that the ink was read at
     * @param yMm the height
     * @param parted how much worse than the best height it parts the ink, as a logarithm; 0 for the best
     */
    record End(int at, double yMm, double parted) {}

    /** A height with one standard deviation, in millimetres. */
    record Place(double yMm, double sigmaMm) {}

    /** How far the mark of a pencil line runs on beyond where the point's centre stopped, at half darkness. */
    static final double ROUND_END_MM = 0.13;

    /** How far above its foot an end is looked for: no gutter is drawn deeper at the scales in use. */
    private static final double REACH_MM = 18;

    /** So far from its middle lies what is beside an upright. */
    static final double BESIDE_MM = 0.45;

    private static final double STEP_MM = 0.1;
    private static final int MOST_ENDS = 5;
    private static final int NEAR_STEPS = 12;

    private final InkImage ink;
    private final Edge upright;
    private final double footY;
    private final double[] own;

    /** The ends of an upright, leaning as it may, that stands on a level line at footY. */
    UprightEnds(InkImage ink, Edge upright, double footY) {
        this.ink = ink;
        this.upright = upright;
        this.footY = footY;
        this.own = new double[(int) Math.round(REACH_MM / STEP_MM)];
        for (int at = 0; at < own.length; at++) {
            own[at] = ownInk(heightOf(at));
        }
    }

    /** The likeliest heights, the best first. */
    List<End> ends() {
        Parting parting = new Parting(own);
        List<Integer> places = parting.places(MOST_ENDS);
        return places.stream()
                .map(at -> new End(
                        at,
                        heightOf(at) - STEP_MM / 2 - ROUND_END_MM,
                        Math.log((1 + parting.error(at)) / (1 + parting.error(places.get(0))))))
                .toList();
    }

    /** The mean ink just below an end, just above it, over all that is below and over all that is above. */
    double[] inkAround(End end) {
        int at = end.at;
        return new double[] {
            mean(Math.max(0, at - NEAR_STEPS), at - 1),
            mean(at + 1, Math.min(own.length, at + NEAR_STEPS)),
            mean(0, at),
            mean(at, own.length)
        };
    }

    /** An end refined to where the darkness is half-way between that below and that above it. */
    Place refined(End end) {
        int at = end.at;
        double half = (mean(Math.max(0, at - 25), Math.max(3, at - 4))
                        + mean(Math.min(own.length - 6, at + 4), Math.min(own.length, at + 14)))
                / 2;
        for (int near = Math.max(2, at - 6); near < Math.min(own.length - 3, at + 7); near++) {
            double smooth = mean(near - 2, near + 2);
            double next = mean(near - 1, near + 3);
            if (smooth >= half && next < half) {
                double part = (smooth - half) / Math.max(1e-6, smooth - next);
                // The pencil's point stopped before the end of the mark, which is as round as the line is broad.
                return new Place(heightOf(near) + (part - 0.5) * STEP_MM - ROUND_END_MM, 0.1);
            }
        }
        return new Place(end.yMm, 0.2);
    }

    private double heightOf(int at) {
        return footY + LeaningUpright.CLEAR_OF_FOOT_MM + (at + 0.5) * STEP_MM;
    }

    /**
     * The ink that the upright itself has at a height: what lies on its middle beyond what lies on both sides of it, so that
     * a line which crosses it does not count.
     */
    private double ownInk(double y) {
        double x = upright.xAt(y);
        double here = (ink.at(x - 0.08, y) + ink.at(x, y) + ink.at(x + 0.08, y)) / 3;
        return Math.max(0, here - besideInk(ink, x, y));
    }

    /** The ink beside an upright at a height, on the side that has less: that of lines that cross it, which lie on both. */
    static double besideInk(InkImage ink, double x, double y) {
        return Math.min(mostInk(ink, x - BESIDE_MM, y), mostInk(ink, x + BESIDE_MM, y));
    }

    private static double mostInk(InkImage ink, double x, double y) {
        return Math.max(ink.at(x, y), Math.max(ink.at(x, y + 0.25), ink.at(x, y - 0.25)));
    }

    private double mean(int from, int to) {
        double sum = 0;
        for (int index = from; index < to; index++) {
            sum += own[index];
        }
        return to > from ? sum / (to - from) : 0;
    }
}
