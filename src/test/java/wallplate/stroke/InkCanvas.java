package wallplate.stroke;

import java.util.Random;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.InkImage;

/**
 * Ink that is put down exactly: strokes with a blurred-box profile, then grain in the strokes and noise all over.
 *
 * <p>A stroke's ink across is a box of its breadth blurred by a Gaussian, the model of measuring practice for scanned
 * lines; the ink of strokes that overlap is added up, to black at most.
 */
public final class InkCanvas {

    private static final double BLUR_MM = 0.08;

    private final int widthPx;
    private final int heightPx;
    private final double pixelsPerMm;
    private final float[] ink;
    private final Random random;

    public InkCanvas(double widthMm, double heightMm, double pixelsPerMm, long seed) {
        this.widthPx = (int) Math.round(widthMm * pixelsPerMm);
        this.heightPx = (int) Math.round(heightMm * pixelsPerMm);
        this.pixelsPerMm = pixelsPerMm;
        this.ink = new float[widthPx * heightPx];
        this.random = new Random(seed);
    }

    /** Draws one straight stroke. */
    public InkCanvas stroke(Segment segment, double breadthMm, double darkness) {
        return put(segment, breadthMm, darkness, breadthMm / 4);
    }

    /** Draws a short piece of a bent stroke that its neighbours carry on: its ends meet theirs without doubling. */
    public InkCanvas piece(Segment segment, double breadthMm, double darkness) {
        return put(segment, breadthMm, darkness, 0);
    }

    private InkCanvas put(Segment segment, double breadthMm, double darkness, double beyondMm) {
        Line line = segment.line();
        double length = segment.length();
        double reach = breadthMm / 2 + 4 * BLUR_MM;
        int left = clamp((Math.min(segment.start().x(), segment.end().x()) - reach) * pixelsPerMm, widthPx);
        int right = clamp((Math.max(segment.start().x(), segment.end().x()) + reach) * pixelsPerMm + 1, widthPx);
        int top = clamp(heightPx - (Math.max(segment.start().y(), segment.end().y()) + reach) * pixelsPerMm, heightPx);
        int bottom = clamp(heightPx - (Math.min(segment.start().y(), segment.end().y()) - reach) * pixelsPerMm + 1, heightPx);
        for (int row = top; row < bottom; row++) {
            for (int column = left; column < right; column++) {
                Point point = new Point((column + 0.5) / pixelsPerMm, (heightPx - row - 0.5) / pixelsPerMm);
                double across = line.distanceTo(point);
                if (Math.abs(across) <= reach) {
                    double along = line.positionOf(point) - length / 2;
                    double share = box(across, breadthMm / 2) * box(along, length / 2 + beyondMm);
                    int index = row * widthPx + column;
                    ink[index] += (float) (share * darkness);
                }
            }
        }
        return this;
    }

    /** Draws a stroke that the pencil left out in places. */
    public InkCanvas broken(Segment segment, double breadthMm, double darkness, double drawnMm, double gapMm) {
        double length = segment.length();
        for (double from = 0; from < length; from += drawnMm + gapMm) {
            double to = Math.min(length, from + drawnMm);
            if (to - from > 0.2) {
                stroke(new Segment(segment.at(from / length), segment.at(to / length)), breadthMm, darkness);
            }
        }
        return this;
    }

    /** Draws a round dot whose ink falls off as a Gaussian, so that its centre is its ink's centre in every direction. */
    public InkCanvas dot(Point centre, double sigmaMm, double darkness) {
        for (int row = 0; row < heightPx; row++) {
            double y = (heightPx - row - 0.5) / pixelsPerMm;
            for (int column = 0; Math.abs(y - centre.y()) < 5 * sigmaMm && column < widthPx; column++) {
                double squared = Math.pow((column + 0.5) / pixelsPerMm - centre.x(), 2) + Math.pow(y - centre.y(), 2);
                ink[row * widthPx + column] += (float) (darkness * Math.exp(-squared / (2 * sigmaMm * sigmaMm)));
            }
        }
        return this;
    }

    /** What was drawn, without noise. */
    public InkImage clean() {
        return image(0, 0);
    }

    /**
     * What was drawn, on paper.
     *
     * @param grain how unevenly the paper takes the pencil: one standard deviation as a share of the ink
     * @param noise one standard deviation of every pixel; ink below nothing is cut off, as in a real ink image
     */
    public InkImage image(double grain, double noise) {
        byte[] bytes = new byte[ink.length];
        for (int index = 0; index < ink.length; index++) {
            double value = ink[index] * (1 + grain * random.nextGaussian()) + noise * random.nextGaussian();
            bytes[index] = (byte) Math.round(Math.max(0, Math.min(255, value)));
        }
        return new InkImage(widthPx, heightPx, pixelsPerMm, bytes);
    }

    private static int clamp(double value, int most) {
        return (int) Math.max(0, Math.min(most, value));
    }

    private static double box(double distance, double half) {
        return 0.5 * (erf((distance + half) / BLUR_MM) - erf((distance - half) / BLUR_MM));
    }

    /** The error function of x over the root of two; Abramowitz and Stegun, Handbook, 7.1.26, error below 1.5e-7. */
    private static double erf(double x) {
        double z = Math.abs(x) / Math.sqrt(2);
        double t = 1 / (1 + 0.3275911 * z);
        double series = t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
        return Math.signum(x) * (1 - series * Math.exp(-z * z));
    }
}
