package wallplate.measure;

import java.util.List;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.CrossLines.Crossing;

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
