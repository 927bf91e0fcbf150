package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.stroke.Edge;

/**
 * How the drawing's own level lies on the page.
 *
 * @param degrees anticlockwise
 * @param deviation one standard deviation, in degrees
 */
record DrawnLevel(double degrees, double deviation) {

    /** How truly a single line is laid against the T-square, one standard deviation; common practice, no source. */
    private static final double SQUARE_SIGMA_DEGREES = 0.09;

    /** The page's level was taken from the same lines, so it says little that is new. */
    private static final double PAGE_LEVEL_SIGMA_DEGREES = 0.1;

    private static final double SHORTEST_MM = 6;

    /** A line further off is not laid against the square at all. */
    private static final double FARTHEST_DEGREES = 0.6;

    /** How far a pencil's line wavers from straight, one standard deviation; found on the samples. */
    private static final double WAVER_MM = 0.06;

    /** Neighbouring places of one line waver together, so it tells its direction less well than as many free ones would. */
    private static final double TOGETHER = 1.5;

    /**
     * The mean over level and upright lines, each weighed by how well its length lets its direction be known and how truly
     * a T-square or set square is laid.
     */
    static DrawnLevel of(List<Optional<Edge>> lines, double pageLevelSigmaDegrees) {
        double pageSigma = Math.max(PAGE_LEVEL_SIGMA_DEGREES, pageLevelSigmaDegrees);
        double weights = 1 / (pageSigma * pageSigma);
        double sum = 0;
        for (Edge edge : lines.stream().flatMap(Optional::stream).toList()) {
            double off = offAxis(edge);
            if (edge.length() < SHORTEST_MM || Math.abs(off) >= FARTHEST_DEGREES) {
                continue;
            }
            double byLength = Math.toDegrees(WAVER_MM * Math.sqrt(12 * TOGETHER) / Math.pow(edge.length(), 1.5));
            double weight = 1 / (SQUARE_SIGMA_DEGREES * SQUARE_SIGMA_DEGREES + byLength * byLength);
            weights += weight;
            sum += weight * off;
        }
        return new DrawnLevel(sum / weights, 1 / Math.sqrt(weights));
    }

    private static double offAxis(Edge edge) {
        double inclination = edge.line().inclinationDegrees();
        return Math.abs(inclination) > 45 ? Angles.inclination(inclination - 90) : inclination;
    }
}
