package wallplate.stroke;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/**
 * Places a short stroke that others touch and cross, such as the side of a small box into whose corners its diagonals run.
 *
 * <p>The centre of all ink beside it would be drawn towards the others. So the ink that known others explain is left out,
 * and what remains, perhaps only one flank of the stroke, is compared with the profile of a stroke of the drawing's usual
 * breadth at every place near: the place with the least difference is the stroke's (template matching under a mask).
 */
public final class StrokeAmongOthers {

    private static final double ALONG_STEP_MM = 0.1;
    private static final double ACROSS_STEP_MM = 0.05;
    /** How far from where it was met the stroke is looked for. */
    private static final double REACH_MM = 0.4;

    private static final double PLACE_STEP_MM = 0.02;
    /** How softly a stroke's ink ends, as the steepness of a hyperbolic tangent, on a page of ten pixels to the millimetre. */
    private static final double SOFT_MM = 0.1;
    /** Another line lies so near to where it is known to be. */
    private static final double OTHERS_STRAY_MM = 0.05;
    /** A sample that differs by more than this share of the ink is explained by something unknown. */
    private static final double UNEXPLAINED = 0.5;

    private static final double PALEST = 0.5;
    private static final double DARKEST = 1.6;
    /** The samples, out of all, that the others must leave. */
    private static final double LEAST_LEFT = 0.1;
    /** Pencil lies in grains: so many samples are one observation. */
    private static final double SAMPLES_OF_GRAIN = 30;

    private final InkImage ink;
    private final double outlineInk;
    private final double halfBreadth;

    /**
     * @param outlineInk the usual ink of this drawing's outlines
     * @param breadthMm the usual breadth of its strokes at half their ink
     */
    public StrokeAmongOthers(InkImage ink, double outlineInk, double breadthMm) {
        this.ink = ink;
        this.outlineInk = outlineInk;
        this.halfBreadth = breadthMm / 2;
    }

    /**
     * The stroke at its place; empty where the others leave too little of it.
     *
     * @param rough the stroke as it was met, in its true direction and over the length to look at
     * @param others the lines that touch or cross it
     */
    public Optional<Edge> place(Edge rough, List<Segment> others) {
        Samples samples = new Samples(rough, others);
        if (samples.left < LEAST_LEFT * samples.weight.length) {
            return Optional.empty();
        }
        int steps = (int) Math.round(REACH_MM / PLACE_STEP_MM);
        double[] cost = new double[2 * steps + 1];
        int best = 0;
        for (int step = 0; step < cost.length; step++) {
            cost[step] = samples.difference((step - steps) * PLACE_STEP_MM);
            best = cost[step] < cost[best] ? step : best;
        }
        if (best == 0 || best == cost.length - 1) {
            return Optional.empty();
        }
        double before = cost[best - 1];
        double after = cost[best + 1];
        double curvature = before + after - 2 * cost[best];
        double shift = curvature > 0 ? 0.5 * (before - after) / curvature : 0;
        double place = (best - steps + shift) * PLACE_STEP_MM;
        double noise = cost[best] / samples.left;
        double sigma = Math.sqrt(2 * noise * SAMPLES_OF_GRAIN / Math.max(curvature / (PLACE_STEP_MM * PLACE_STEP_MM), 1e-9));
        Line line = rough.line().offset(place);
        return Optional.of(new Edge(
                line, rough.from(), rough.to(), Math.hypot(sigma, 0.008), rough.residualMm(), rough.ink(), rough.coverage()));
    }

    /** The ink beside the rough stroke, by rows across it, as a part of an outline's, and how far each sample counts. */
    private final class Samples {

        private final int across;
        private final double[] value;
        private final double[] weight;
        private double left;

        Samples(Edge rough, List<Segment> others) {
            int along = Math.max(3, (int) Math.round(rough.length() / ALONG_STEP_MM));
            across = 2 * (int) Math.round((REACH_MM + halfBreadth + SOFT_MM) / ACROSS_STEP_MM) + 1;
            value = new double[along * across];
            weight = new double[along * across];
            Vector normal = rough.line().direction().leftNormal();
            for (int row = 0; row < along; row++) {
                Point foot = rough.line().pointAt(rough.from() + (row + 0.5) * rough.length() / along);
                for (int column = 0; column < across; column++) {
                    Point point = foot.plus(normal.times(offset(column)));
                    int index = row * across + column;
                    value[index] = ink.at(point.x(), point.y()) / outlineInk;
                    weight[index] = others.stream()
                            .mapToDouble(other -> beside(other.distanceTo(point)))
                            .reduce(1, (one, next) -> one * next);
                    left += weight[index];
                }
            }
        }

        private double offset(int column) {
            return (column - across / 2) * ACROSS_STEP_MM;
        }

        /** How much of a sample counts so far from another line's centre. */
        private double beside(double distance) {
            double free = distance - halfBreadth - OTHERS_STRAY_MM;
            return Math.min(1, Math.max(0, free / SOFT_MM));
        }

        /** By how much the samples differ from a stroke at a place, whatever its ink. */
        double difference(double place) {
            double[] stroke = new double[across];
            for (int column = 0; column < across; column++) {
                double off = offset(column) - place;
                stroke[column] = 0.5 * (Math.tanh((off + halfBreadth) / SOFT_MM) - Math.tanh((off - halfBreadth) / SOFT_MM));
            }
            double both = 0;
            double square = 0;
            for (int index = 0; index < value.length; index++) {
                double expected = stroke[index % across];
                both += weight[index] * value[index] * expected;
                square += weight[index] * expected * expected;
            }
            double darkness = square == 0 ? 1 : Math.min(DARKEST, Math.max(PALEST, both / square));
            double sum = 0;
            for (int index = 0; index < value.length; index++) {
                double off = value[index] - darkness * stroke[index % across];
                sum += weight[index] * Math.min(off * off, UNEXPLAINED * UNEXPLAINED);
            }
            return sum;
        }
    }
}
