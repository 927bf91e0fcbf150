package wallplate.stroke;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import wallplate.sheet.InkImage;

/**
 * The direction in which most long sloping lines of a page run.
 *
 * <p>The dark pixels are summed along parallels at each angle (a Radon transform); the direction whose sums are most
 * unequal wins. The failure to know of: a page whose lettering or hatching outweighs its sloping lines; the caller
 * checks that long strokes run in the direction found.
 */
public final class SlopeDirection {

    private static final double BIN_MM = 0.3;
    private static final double COARSE_DEGREES = 0.25;

    private SlopeDirection() {}

    /**
     * The candidate directions, best first: degrees anticlockwise from x, positive for a slope that rises to the right.
     *
     * @param flattestDegrees the smallest slope looked at, either hand
     * @param steepestDegrees the largest
     */
    public static List<Double> candidates(InkImage ink, double flattestDegrees, double steepestDegrees) {
        float[][] dark = darkPixels(ink);
        List<double[]> scores = new ArrayList<>();
        for (double angle = flattestDegrees; angle <= steepestDegrees; angle += COARSE_DEGREES) {
            scores.add(new double[] {angle, inequality(ink, dark, angle)});
            scores.add(new double[] {-angle, inequality(ink, dark, -angle)});
        }
        scores.sort((a, b) -> Double.compare(b[1], a[1]));
        List<Double> best = new ArrayList<>();
        for (double[] score : scores) {
            if (best.size() < 4 && best.stream().noneMatch(angle -> Math.abs(angle - score[0]) < 2)) {
                best.add(finer(ink, dark, score[0]));
            }
        }
        return best;
    }

    private static double finer(InkImage ink, float[][] dark, double coarse) {
        double best = coarse;
        double highest = -1;
        for (double angle = coarse - COARSE_DEGREES; angle <= coarse + COARSE_DEGREES + 1e-9; angle += 0.05) {
            double score = inequality(ink, dark, angle);
            if (score > highest) {
                highest = score;
                best = angle;
            }
        }
        return best;
    }

    /** Positions and ink of the darker cells of three by three pixels. */
    private static float[][] darkPixels(InkImage ink) {
        int cell = Math.max(1, (int) Math.round(0.3 * ink.pixelsPerMm()));
        int columns = ink.widthPx() / cell;
        int rows = ink.heightPx() / cell;
        byte[] bytes = ink.bytes();
        float[] x = new float[columns * rows];
        float[] y = new float[columns * rows];
        float[] weight = new float[columns * rows];
        int count = 0;
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int sum = 0;
                for (int j = 0; j < cell; j++) {
                    int index = (row * cell + j) * ink.widthPx() + column * cell;
                    for (int i = 0; i < cell; i++) {
                        sum += bytes[index + i] & 0xff;
                    }
                }
                float mean = sum / (float) (cell * cell);
                if (mean > 25) {
                    x[count] = (float) ((column + 0.5) * cell / ink.pixelsPerMm());
                    y[count] = (float) ((ink.heightPx() - (row + 0.5) * cell) / ink.pixelsPerMm());
                    weight[count] = Math.min(mean, 80);
                    count++;
                }
            }
        }
        return new float[][] {
            Arrays.copyOf(x, count), Arrays.copyOf(y, count), Arrays.copyOf(weight, count)
        };
    }

    private static double inequality(InkImage ink, float[][] dark, double angleDegrees) {
        double sine = Math.sin(Math.toRadians(angleDegrees));
        double cosine = Math.cos(Math.toRadians(angleDegrees));
        double lowest = Math.min(0, -sine * ink.widthMm()) + Math.min(0, cosine * ink.heightMm());
        double highest = Math.max(0, -sine * ink.widthMm()) + Math.max(0, cosine * ink.heightMm());
        double[] bins = new double[(int) ((highest - lowest) / BIN_MM) + 2];
        float[] x = dark[0];
        float[] y = dark[1];
        float[] weight = dark[2];
        for (int pixel = 0; pixel < x.length; pixel++) {
            bins[(int) ((-sine * x[pixel] + cosine * y[pixel] - lowest) / BIN_MM)] += weight[pixel];
        }
        double sum = 0;
        for (double bin : bins) {
            sum += bin * bin * bin;
        }
        return sum;
    }
}
