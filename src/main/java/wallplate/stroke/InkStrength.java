package wallplate.stroke;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.InkImage;

/**
 * How strongly the same pencil line shows at each place of a photographed page.
 *
 * <p>Graphite mirrors the lamp or the window: over some centimetres every line fades, outlines as well as construction
 * lines, sometimes to a quarter of its ink. A learner's hand does not do that, for it changes from one line to the next. So
 * the ink of all long strokes is taken for the product of each stroke's own weight and of a smooth field that all share, and
 * both are fitted together by robust least squares on the logarithm of the ink (Holland and Welsch 1977, iteratively
 * reweighted), with the field's second differences held small as in smoothing splines (Whittaker 1923).
 */
public final class InkStrength {

    /** From one node of the field to the next. */
    private static final double NODE_MM = 24;
    /** The length of stroke whose median ink is one sample. */
    private static final double SAMPLE_MM = 4;

    private static final double SHORTEST_STROKE_MM = 25;
    /** A stroke whose ink changes so abruptly was drawn with two weights: where an outline ends its construction line runs on. */
    private static final double ABRUPT = Math.log(1.5);
    /** Less than this is gaps and paper. */
    private static final double LEAST_INK = 12;

    private static final double SMOOTHNESS = 3;
    private static final double TOWARDS_NOTHING = 0.02;
    private static final double SCATTER = 0.15;
    private static final int REWEIGHTINGS = 6;
    private static final int LEAST_SAMPLES = 40;
    /** Ink that differs less between the strongest and the weakest place is left as it is. */
    private static final double WORTH_EVENING = Math.log(1.6);

    private static final double MOST_GAIN = 4;
    /** The field is nowhere taken for stronger than at all but so many of the samples. */
    private static final double STRONGEST_SHARE = 0.9;

    private final int columns;
    private final double[] gains;

    private InkStrength(int columns, double[] gains) {
        this.columns = columns;
        this.gains = gains;
    }

    private record Sample(int piece, Point place, double logInk) {}

    /** The field that the strokes of a page share; empty where they show about equally everywhere, or are too few. */
    public static Optional<InkStrength> of(List<Stroke> strokes, double widthMm, double heightMm) {
        List<Sample> samples = new ArrayList<>();
        int pieces = 0;
        for (Stroke stroke : strokes) {
            if (stroke.length() >= SHORTEST_STROKE_MM) {
                pieces = addSamples(stroke, pieces, samples);
            }
        }
        if (samples.size() < LEAST_SAMPLES) {
            return Optional.empty();
        }
        int columns = 2 + (int) Math.ceil(widthMm / NODE_MM);
        int rows = 2 + (int) Math.ceil(heightMm / NODE_MM);
        double[] field = new Fit(samples, columns, rows, pieces).fitted();
        InkStrength unscaled = new InkStrength(columns, field);
        double[] seen = samples.stream().mapToDouble(sample -> unscaled.at(sample.place)).sorted().toArray();
        double strongest = seen[(int) (STRONGEST_SHARE * (seen.length - 1))];
        if (strongest - seen[seen.length / 50] < WORTH_EVENING) {
            return Optional.empty();
        }
        double[] gains = Arrays.stream(field)
                .map(value -> Math.max(1, Math.min(MOST_GAIN, Math.exp(strongest - value))))
                .toArray();
        return Optional.of(new InkStrength(columns, gains));
    }

    /** The ink as it would be if every place showed it as strongly as the strongest. */
    public InkImage evened(InkImage ink) {
        byte[] from = ink.bytes();
        byte[] to = new byte[from.length];
        int index = 0;
        for (int row = 0; row < ink.heightPx(); row++) {
            double y = (ink.heightPx() - row - 0.5) / ink.pixelsPerMm();
            for (int column = 0; column < ink.widthPx(); column++) {
                int here = from[index] & 0xff;
                if (here > 0) {
                    double gain = at(new Point((column + 0.5) / ink.pixelsPerMm(), y));
                    to[index] = (byte) Math.min(255, Math.round(here * gain));
                }
                index++;
            }
        }
        return new InkImage(ink.widthPx(), ink.heightPx(), ink.pixelsPerMm(), to);
    }

    /** The field between its four nearest nodes. */
    private double at(Point place) {
        double right = place.x() / NODE_MM;
        double up = place.y() / NODE_MM;
        int node = (int) up * columns + (int) right;
        double x = right - (int) right;
        double y = up - (int) up;
        return (gains[node] * (1 - x) + gains[node + 1] * x) * (1 - y)
                + (gains[node + columns] * (1 - x) + gains[node + columns + 1] * x) * y;
    }

    /** Adds the medians along a stroke, a new piece after each abrupt change, and returns the pieces so far. */
    private static int addSamples(Stroke stroke, int pieces, List<Sample> samples) {
        int perSample = (int) Math.round(SAMPLE_MM / Stroke.STEP_MM);
        InkAlong along = stroke.inkAlong();
        Segment line = stroke.centreLine();
        int piece = pieces;
        double before = Double.NaN;
        for (int first = 0; first + perSample <= along.steps(); first += perSample) {
            double[] inks = new double[perSample];
            for (int step = 0; step < perSample; step++) {
                inks[step] = along.at(first + step);
            }
            Arrays.sort(inks);
            double median = inks[perSample / 2];
            if (median < LEAST_INK) {
                continue;
            }
            double logInk = Math.log(median);
            if (Math.abs(logInk - before) > ABRUPT) {
                piece++;
            }
            before = logInk;
            double part = (first + perSample / 2.0) / along.steps();
            samples.add(new Sample(piece, line.start().plus(line.vector().times(part)), logInk));
        }
        return piece + 1;
    }

    /** The fit of the field's nodes and of each piece's own weight. */
    private static final class Fit {

        private final List<Sample> samples;
        private final int columns;
        private final int rows;
        private final int nodes;
        private final int unknowns;

        Fit(List<Sample> samples, int columns, int rows, int pieces) {
            this.samples = samples;
            this.columns = columns;
            this.rows = rows;
            this.nodes = columns * rows;
            this.unknowns = nodes + pieces;
        }

        double[] fitted() {
            double[] solution = new double[unknowns];
            double[] weights = new double[samples.size()];
            Arrays.fill(weights, 1);
            for (int turn = 0; turn < REWEIGHTINGS; turn++) {
                solution = solved(weights);
                for (int i = 0; i < weights.length; i++) {
                    double off = residual(samples.get(i), solution) / SCATTER;
                    weights[i] = 1 / (1 + off * off);
                }
            }
            return Arrays.copyOf(solution, nodes);
        }

        private double residual(Sample sample, double[] solution) {
            double sum = solution[nodes + sample.piece];
            int[] corners = corners(sample.place);
            double[] shares = shares(sample.place);
            for (int i = 0; i < 4; i++) {
                sum += shares[i] * solution[corners[i]];
            }
            return sample.logInk - sum;
        }

        private int[] corners(Point place) {
            int node = (int) (place.y() / NODE_MM) * columns + (int) (place.x() / NODE_MM);
            return new int[] {node, node + 1, node + columns, node + columns + 1};
        }

        private static double[] shares(Point place) {
            double x = place.x() / NODE_MM - (int) (place.x() / NODE_MM);
            double y = place.y() / NODE_MM - (int) (place.y() / NODE_MM);
            return new double[] {(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y};
        }

        private double[] solved(double[] weights) {
            RealMatrix normal = new Array2DRowRealMatrix(unknowns, unknowns);
            RealVector right = new ArrayRealVector(unknowns);
            for (int i = 0; i < weights.length; i++) {
                Sample sample = samples.get(i);
                int[] corners = corners(sample.place);
                int[] at = {corners[0], corners[1], corners[2], corners[3], nodes + sample.piece};
                double[] shares = shares(sample.place);
                double[] share = {shares[0], shares[1], shares[2], shares[3], 1};
                add(normal, at, share, weights[i]);
                for (int k = 0; k < at.length; k++) {
                    right.addToEntry(at[k], weights[i] * share[k] * sample.logInk);
                }
            }
            smooth(normal);
            for (int node = 0; node < nodes; node++) {
                normal.addToEntry(node, node, TOWARDS_NOTHING);
            }
            return new CholeskyDecomposition(normal).getSolver().solve(right).toArray();
        }

        private void smooth(RealMatrix normal) {
            double[] second = {1, -2, 1};
            double[] twist = {1, -1, -1, 1};
            for (int row = 0; row < rows; row++) {
                for (int column = 0; column < columns; column++) {
                    int node = row * columns + column;
                    if (column + 2 < columns) {
                        add(normal, new int[] {node, node + 1, node + 2}, second, SMOOTHNESS);
                    }
                    if (row + 2 < rows) {
                        add(normal, new int[] {node, node + columns, node + 2 * columns}, second, SMOOTHNESS);
                    }
                    if (column + 1 < columns && row + 1 < rows) {
                        int[] square = {node, node + 1, node + columns, node + columns + 1};
                        add(normal, square, twist, 2 * SMOOTHNESS);
                    }
                }
            }
        }

        private static void add(RealMatrix normal, int[] at, double[] share, double weight) {
            for (int i = 0; i < at.length; i++) {
                for (int k = 0; k < at.length; k++) {
                    normal.addToEntry(at[i], at[k], weight * share[i] * share[k]);
                }
            }
        }
    }
}
