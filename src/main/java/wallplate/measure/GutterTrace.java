package wallplate.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * Whether a level line beside the fascia's face may be what is left of a gutter's bottom. Leaders, construction lines and
 * the barge board cross the place where a gutter hangs, too, but they run at a slope: along that there is more ink than on
 * the level.
 */
final class GutterTrace {

    /** The band right beside the face, and the one beyond, where a bottom whose lead broke is seen again. */
    private static final double[] BESIDE_MM = {-2.6, -0.4};

    private static final double[] BEYOND_MM = {-6, -2.4};
    private static final double LEAST_BESIDE = 0.4;
    private static final double LEAST_BEYOND = 0.5;

    private static final double MOST_OF_WIDTH = 0.7;
    private static final double LEAST_ALONG = 0.5;

    private static final double LEAST_SLOPE_DEGREES = 8;
    private static final double MOST_SLOPE_DEGREES = 70;
    private static final double SLOPE_STEP_DEGREES = 3;
    private static final double OFF_MM = 0.4;
    private static final double STEP_MM = 0.1;
    /** So much more of a sloping line's length must be dark. */
    private static final double CLEARLY_MORE = 0.15;

    /** So short a piece of an upright is looked for, and so much of it must be dark. */
    private static final double UPRIGHT_MM = 2;

    private static final double LEAST_UPRIGHT = 0.85;
    private static final double UPRIGHT_STEP_MM = 0.5;
    private static final double NEAREST_SIDE_MM = -1.2;
    private static final double CLEAR_OF_SIDE_MM = 0.4;
    /** So much of the way from an upright to the face must be dark, even where lead or a label broke the bottom. */
    private static final double LEAST_JOINED = 0.35;
    private static final double MOST_ABOVE_COVERING_MM = 1;
    private static final double CLEAR_OF_BARGE_MM = 0.45;

    private final EavesPlace place;
    private final double faceX;

    GutterTrace(EavesPlace place, double faceX) {
        this.place = place;
        this.faceX = faceX;
    }

    /** Whether such a line lies between two heights. */
    boolean isThere(double fromY, double toY) {
        return Stream.concat(
                        rows(fromY, toY, BESIDE_MM, LEAST_BESIDE)
                                .filter(row -> runsOn(row.position()) && !isSloping(row.position(), BESIDE_MM)),
                        rows(fromY, toY, BEYOND_MM, LEAST_BEYOND).filter(row -> !isSloping(row.position(), BEYOND_MM)))
                .findAny()
                .isPresent();
    }

    /**
     * Whether an upright that may be a gutter's outer side stands on a level line before the face, below the covering.
     * Nothing that a leader, a dimension or a construction line leaves there is a gutter without one.
     *
     * @param bargeEnd the barge board's end, which is none
     */
    boolean hasUpright(double fromY, double toY, Optional<Edge> bargeEnd) {
        return Stream.concat(rows(fromY, toY, BESIDE_MM, LEAST_BESIDE), rows(fromY, toY, BEYOND_MM, LEAST_BEYOND))
                .anyMatch(row -> hasUprightOn(row.position(), bargeEnd));
    }

    private boolean hasUprightOn(double bottomY, Optional<Edge> bargeEnd) {
        double furthest = 3 * place.expectation().exactOr("gutter.width", 6) + 4;
        for (double above = 0; above <= UPRIGHT_MM; above += UPRIGHT_STEP_MM) {
            double foot = bottomY + above;
            List<Crossing> columns = place.crossLines().find(
                    Level.levelAt(foot), faceX - furthest, faceX + NEAREST_SIDE_MM, Level.UP, x -> 0, x -> UPRIGHT_MM, LEAST_UPRIGHT);
            boolean isOne = columns.stream()
                    .map(Crossing::position)
                    .filter(x -> place.view().levelInk(bottomY, x + CLEAR_OF_SIDE_MM, faceX - CLEAR_OF_SIDE_MM) > LEAST_JOINED)
                    .anyMatch(x -> isFree(x, bottomY, foot, bargeEnd));
            if (isOne) {
                return true;
            }
        }
        return false;
    }

    /** Whether a piece of an upright over a bottom is neither of the covering's end nor of the barge board's. */
    private boolean isFree(double x, double bottomY, double foot, Optional<Edge> bargeEnd) {
        boolean isBelowCovering = place.roof().coveringBottom()
                .map(edge -> edge.yAt(x))
                .map(y -> bottomY < y && (foot == bottomY || foot + UPRIGHT_MM < y + MOST_ABOVE_COVERING_MM))
                .orElse(true);
        return isBelowCovering && !EavesPlace.standsAt(bargeEnd, x, bottomY, CLEAR_OF_BARGE_MM);
    }

    private Stream<Crossing> rows(double fromY, double toY, double[] band, double leastCoverage) {
        List<Crossing> rows = place.crossLines().find(
                Level.uprightAt(faceX), fromY, toY, Level.RIGHT, y -> band[0], y -> band[1], leastCoverage);
        return rows.stream();
    }

    /** Whether a line goes on over most of a gutter's width; where two sloping ones cross it looks level for a short way. */
    private boolean runsOn(double y) {
        double width = MOST_OF_WIDTH * place.expectation().exactOr("gutter.width", 6);
        double half = (width + BESIDE_MM[1]) / 2;
        return best(faceX + BESIDE_MM[1] - half, y, 0, half) >= LEAST_ALONG;
    }

    private boolean isSloping(double y, double[] band) {
        double half = (band[1] - band[0]) / 2;
        double x = faceX + (band[0] + band[1]) / 2;
        double level = best(x, y, 0, half);
        for (double degrees = LEAST_SLOPE_DEGREES; degrees <= MOST_SLOPE_DEGREES; degrees += SLOPE_STEP_DEGREES) {
            if (Math.max(best(x, y, degrees, half), best(x, y, -degrees, half)) > level + CLEARLY_MORE) {
                return true;
            }
        }
        return false;
    }

    /** The share of ink on the darkest line of a slope through a place or just beside it. */
    private double best(double x, double y, double degrees, double half) {
        Vector direction = Level.RIGHT.rotatedDegrees(degrees);
        double best = 0;
        for (double off = -OFF_MM; off <= OFF_MM + 1e-9; off += STEP_MM) {
            Line line = new Line(new Point(x, y + off), direction);
            best = Math.max(best, place.view().fit().coverage(line, -half, half, DrawingView.OUTLINE_PART));
        }
        return best;
    }
}
