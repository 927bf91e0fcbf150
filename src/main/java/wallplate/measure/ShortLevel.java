package wallplate.measure;

import java.util.OptionalDouble;
import wallplate.sheet.InkImage;

/**
 * The height of a level line that is little longer than it is broad and stands between uprights, whose ink runs into its own.
 *
 * <p>At every place along it only the ink that goes beyond that above and beyond that below is taken for the line's own, so
 * that uprights which pass or end there do not draw the height to their side, and the overrun of its ends counts as well.
 */
final class ShortLevel {

    /** How far the line may run on beyond what it closes. */
    private static final double OVERRUN_MM = 0.8;

    private static final double ALONG_STEP_MM = 0.05;
    private static final double ACROSS_STEP_MM = 0.025;
    private static final double[] WINDOW_SIGMAS_MM = {0.25, 0.2, 0.16, 0.14, 0.14};
    private static final double REACH_MM = 0.4;
    /** Where the ink of an upright is read, above and below the line. */
    private static final double[] BESIDE_MM = {0.5, 0.6, 0.7};

    /** So much of the line's own ink, in millimetres of its length, must be seen. */
    private static final double LEAST_SEEN_MM = 0.35;

    private static final double SEEN = 0.25;
    private static final double HUBER_MM = 0.1;

    private final InkImage ink;
    private final double outlineInk;

    ShortLevel(InkImage ink, double outlineInk) {
        this.ink = ink;
        this.outlineInk = outlineInk;
    }

    /** The height of the line near a height, between two places; none where too little of it can be told from the uprights. */
    OptionalDouble height(double nearY, double leftX, double rightX) {
        int columns = (int) Math.round((rightX - leftX + 2 * OVERRUN_MM) / ALONG_STEP_MM);
        double y = nearY;
        for (double window : WINDOW_SIGMAS_MM) {
            double[] centre = new double[columns];
            double[] mass = new double[columns];
            for (int column = 0; column < columns; column++) {
                read(leftX - OVERRUN_MM + (column + 0.5) * ALONG_STEP_MM, y, window, column, centre, mass);
            }
            OptionalDouble shift = mean(centre, mass);
            if (shift.isEmpty()) {
                return shift;
            }
            y += shift.getAsDouble();
        }
        return Math.abs(y - nearY) > REACH_MM ? OptionalDouble.empty() : OptionalDouble.of(y);
    }

    private void read(double x, double y, double window, int column, double[] centre, double[] mass) {
        double above = 0;
        double below = 0;
        for (double beside : BESIDE_MM) {
            above += ink.at(x, y + beside) / BESIDE_MM.length;
            below += ink.at(x, y - beside) / BESIDE_MM.length;
        }
        double passing = Math.max(above, below);
        double sum = 0;
        double moment = 0;
        for (double off = -REACH_MM; off <= REACH_MM; off += ACROSS_STEP_MM) {
            double own = Math.max(0, ink.at(x, y + off) - passing) * Math.exp(-off * off / (2 * window * window));
            sum += own;
            moment += own * off;
        }
        mass[column] = sum * ACROSS_STEP_MM / outlineInk;
        // A window lying on the edge of a line sees its centre drawn half-way in; the factor undoes most of it.
        centre[column] = sum == 0 ? 0 : 1.4 * moment / sum;
    }

    private static OptionalDouble mean(double[] centre, double[] mass) {
        double offset = 0;
        for (int round = 0; round < 4; round++) {
            double weights = 0;
            double sum = 0;
            double seen = 0;
            for (int column = 0; column < centre.length; column++) {
                double off = Math.abs(centre[column] - offset);
                double weight = mass[column] * (round == 0 || off < HUBER_MM ? 1 : HUBER_MM / off);
                weights += weight;
                sum += weight * centre[column];
                seen += Math.min(1, mass[column] / SEEN) * ALONG_STEP_MM;
            }
            if (seen < LEAST_SEEN_MM) {
                return OptionalDouble.empty();
            }
            offset = sum / weights;
        }
        return OptionalDouble.of(offset);
    }
}
