package wallplate.sheet.page;

import wallplate.sheet.InkImage;

/**
 * Whether a page is so blurred that its lines are broad shades.
 *
 * <p>It looks at how much the ink changes over half a millimetre, two and six: over half a millimetre a pencil line
 * comes and goes, a shade hardly begins; over six a shade is gone and a smudge still there.
 */
public final class Sharpness {

    private static final double NEAR = 0.5;
    private static final double MIDDLE = 2;
    private static final double FAR = 6;
    /** A line blurred by a millimetre and more keeps less than this share of its change; sharp ones almost half. */
    private static final double MOST_NEAR = 0.2;
    /** Over two millimetres smudges and stains have less than this share of what they change over six. */
    private static final double LEAST_MIDDLE = 0.3;
    /** Folds, streaks and lines that are broad but not blurred have more. */
    private static final double MOST_MIDDLE = 0.75;
    /** Mean squared change of ink, from 0 to 255, below which the page shows nothing at all. */
    private static final double LEAST_CHANGE = 2;

    private Sharpness() {}

    /** Whether shades lie where lines should be; false for a blank page and for sharp writing. */
    public static boolean isBlurred(InkImage ink) {
        double[] smooth = smoothed(ink);
        double near = change(smooth, ink, NEAR);
        double middle = change(smooth, ink, MIDDLE);
        double far = change(smooth, ink, FAR);
        return far > LEAST_CHANGE && near < MOST_NEAR * middle && isBetween(middle / far);
    }

    private static boolean isBetween(double share) {
        return share > LEAST_MIDDLE && share < MOST_MIDDLE;
    }

    /** Means of three pixels by three, so that grain is not taken for lines. */
    private static double[] smoothed(InkImage ink) {
        int width = ink.widthPx();
        byte[] bytes = ink.bytes();
        double[] smooth = new double[bytes.length];
        for (int y = 1; y + 1 < ink.heightPx(); y++) {
            for (int x = 1; x + 1 < width; x++) {
                int sum = 0;
                for (int row = -1; row <= 1; row++) {
                    int at = (y + row) * width + x;
                    sum += (bytes[at - 1] & 0xff) + (bytes[at] & 0xff) + (bytes[at + 1] & 0xff);
                }
                smooth[y * width + x] = sum / 9.0;
            }
        }
        return smooth;
    }

    /** The mean squared difference between places so far apart, along and across the page. */
    private static double change(double[] smooth, InkImage ink, double distance) {
        int lag = (int) Math.round(distance * ink.pixelsPerMm());
        int width = ink.widthPx();
        double sum = 0;
        long count = 0;
        for (int y = 1; y + lag + 1 < ink.heightPx(); y++) {
            for (int x = 1; x + lag + 1 < width; x++) {
                int at = y * width + x;
                double along = smooth[at + lag] - smooth[at];
                double across = smooth[at + lag * width] - smooth[at];
                sum += along * along + across * across;
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }
}
