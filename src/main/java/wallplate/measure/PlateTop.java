package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.stroke.Edge;

/**
 * The top of a wall plate on which no tie beam lies: the level line from side to side that the rafter's underside crosses
 * or leaves at a small angle. It is read only where the rafter's own ink is clear of it.
 */
final class PlateTop {

    /** How far the line's own place lies from where it was found as one of a few. */
    private static final double REACH_MM = 0.6;
    private static final double STEP_MM = 0.05;
    /** Half a line's breadth of each, and the blur of a scan. */
    private static final double CLEAR_OF_RAFTER_MM = 0.5;
    private static final double SAME_LINE_MM = 0.25;
    /** What a line off its height by a millimetre costs against its coverage. */
    private static final double OFF_COST = 0.25;
    private static final double LEAST_COVERAGE = 0.6;
    private static final double LEAST_CLEAR_MM = 0.8;
    /** A line read on a piece not much longer than it is broad. */
    private static final double SHORT_PIECE_SIGMA_MM = 0.08;

    /**
     * What is seen of a level line where it is clear of the rafter.
     *
     * @param isClear whether enough of it is clear to tell
     */
    record Seen(boolean isClear, double coverage, double ink) {}

    private final DrawingView view;
    private final Edge rafter;

    PlateTop(DrawingView view, Edge rafter) {
        this.view = view;
        this.rafter = rafter;
    }

    /**
     * The line between two sides; empty where no level line is dark enough on what is clear of the rafter.
     *
     * @param aboutY where it was found
     * @param lowestY above the plate's underside
     */
    Optional<Edge> between(double left, double right, double aboutY, double lowestY) {
        double best = 0;
        double bestY = 0;
        for (double y = Math.max(lowestY, aboutY - REACH_MM); y < aboutY + REACH_MM; y += STEP_MM) {
            double[] clear = clear(left + 0.3, right - 0.3, y);
            if (clear[1] - clear[0] < LEAST_CLEAR_MM) {
                continue;
            }
            double coverage = view.fit().coverage(Level.levelAt(y), clear[0], clear[1], DrawingView.OUTLINE_PART);
            double likely = coverage + meanInk(clear, y) / view.outlineInk() - OFF_COST * Math.abs(y - aboutY);
            if (coverage >= LEAST_COVERAGE && likely > best) {
                best = likely;
                bestY = y;
            }
        }
        return best == 0 ? Optional.empty() : Optional.of(fitted(left, right, bestY));
    }

    /** What is seen of the line between two sides near a height, at the height at which it is darkest. */
    Seen seen(double left, double right, double aboutY) {
        Seen best = new Seen(false, 0, 0);
        for (double y = aboutY - SAME_LINE_MM; y <= aboutY + SAME_LINE_MM; y += STEP_MM) {
            double[] clear = clear(left + 0.3, right - 0.3, y);
            if (clear[1] - clear[0] >= LEAST_CLEAR_MM) {
                double ink = meanInk(clear, y);
                if (!best.isClear || ink > best.ink) {
                    best = new Seen(
                            true,
                            view.fit().coverage(Level.levelAt(y), clear[0], clear[1], DrawingView.OUTLINE_PART),
                            ink);
                }
            }
        }
        return best;
    }

    private Edge fitted(double left, double right, double y) {
        double[] clear = clear(left + 0.3, right - 0.3, y);
        Edge piece = view.fit().fit(Level.levelAt(y), clear[0], clear[1], 0.06, 0.2, List.of(rafter.line()));
        return piece.within(piece.line().positionOf(Level.uprightAt(left).intersection(piece.line(), 1e-6).orElseThrow()),
                        piece.line().positionOf(Level.uprightAt(right).intersection(piece.line(), 1e-6).orElseThrow()))
                .lessSure(SHORT_PIECE_SIGMA_MM);
    }

    /** The longer stretch of the height between two places on which the rafter is clear of it. */
    private double[] clear(double from, double to, double y) {
        double half = CLEAR_OF_RAFTER_MM / Math.max(0.1, view.slope().y());
        double crossing = rafter.xAt(y);
        double[] before = {from, Math.min(to, crossing - half)};
        double[] after = {Math.max(from, crossing + half), to};
        return after[1] - after[0] >= before[1] - before[0] ? after : before;
    }

    private double meanInk(double[] stretch, double y) {
        double sum = 0;
        int count = 0;
        for (double x = stretch[0]; x <= stretch[1]; x += 0.1) {
            sum += view.ink().at(x, y);
            count++;
        }
        return sum / count;
    }
}
