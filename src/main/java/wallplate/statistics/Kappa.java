package wallplate.statistics;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Agreement of two markers beyond what chance alone would bring: 1 is full agreement, 0 is no more than by chance.
 *
 * <p>Cohen (1968), "Weighted kappa", Psychological Bulletin 70, 213-220. The standard error is the large-sample one of
 * Fleiss, Cohen and Everitt (1969), "Large sample standard errors of kappa and weighted kappa", Psychological Bulletin
 * 72, 323-327; with a few sheets the interval is too narrow rather than too wide.
 *
 * @param value kappa
 * @param standardError of kappa, for its interval and not for a test against 0
 * @param observed the weighted part of agreement seen, 0 to 1
 * @param byChance the weighted part of agreement that the markers' habits would bring by chance, 0 to 1
 * @param interval value plus and minus 1.96 standard errors, cut at -1 and 1; unknown where the error comes out as 0
 */
public record Kappa(
        double value, double standardError, double observed, double byChance, Statistic<Interval> interval) {

    /** What rounding leaves of an error that is 0: a square root of differences of nearly equal numbers. */
    private static final double ROUNDING = 1e-6;

    /** The kappa of a table under a weighting of disagreement. */
    public static Statistic<Kappa> of(RatingTable table, Disagreement disagreement) {
        if (table.total() < 2) {
            return Statistic.unknown("it takes at least two sheets marked by both");
        }
        double[][] agreement = agreement(table, disagreement);
        double[][] parts = table.proportions();
        double[] rows = rowSums(parts);
        double[] columns = columnSums(parts);
        if (isConstant(rows) || isConstant(columns)) {
            return Statistic.unknown("a marker gave every sheet the same mark");
        }
        double observed = 0;
        double byChance = 0;
        for (int row = 0; row < rows.length; row++) {
            for (int column = 0; column < columns.length; column++) {
                observed += agreement[row][column] * parts[row][column];
                byChance += agreement[row][column] * rows[row] * columns[column];
            }
        }
        double kappa = (observed - byChance) / (1 - byChance);
        double error = standardError(agreement, parts, observed, byChance) / Math.sqrt(table.total());
        return Statistic.known(new Kappa(kappa, error, observed, byChance, interval(kappa, error)));
    }

    private static boolean isConstant(double[] sums) {
        return Arrays.stream(sums).filter(sum -> sum > 0).count() < 2;
    }

    /** Weights of agreement from 0 to 1, of which Fleiss, Cohen and Everitt write. */
    private static double[][] agreement(RatingTable table, Disagreement disagreement) {
        int size = table.size();
        double[][] weights = new double[size][size];
        double most = 0;
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                weights[row][column] = disagreement.of(table, row, column);
                most = Math.max(most, weights[row][column]);
            }
        }
        for (double[] row : weights) {
            for (int column = 0; column < size; column++) {
                row[column] = most == 0 ? 1 : 1 - row[column] / most;
            }
        }
        return weights;
    }

    /** The square root of n times the variance, equation 8 of Fleiss, Cohen and Everitt. */
    private static double standardError(double[][] agreement, double[][] parts, double observed, double byChance) {
        double[] rows = rowSums(parts);
        double[] columns = columnSums(parts);
        double sum = 0;
        for (int row = 0; row < rows.length; row++) {
            for (int column = 0; column < columns.length; column++) {
                double means = mean(agreement[row], columns) + meanOfColumn(agreement, column, rows);
                double term = agreement[row][column] * (1 - byChance) - means * (1 - observed);
                sum += parts[row][column] * term * term;
            }
        }
        double centre = observed * byChance - 2 * byChance + observed;
        return Math.sqrt(Math.max(0, sum - centre * centre)) / Math.pow(1 - byChance, 2);
    }

    private static double mean(double[] weights, double[] parts) {
        double sum = 0;
        for (int index = 0; index < parts.length; index++) {
            sum += weights[index] * parts[index];
        }
        return sum;
    }

    private static double meanOfColumn(double[][] weights, int column, double[] parts) {
        double sum = 0;
        for (int row = 0; row < parts.length; row++) {
            sum += weights[row][column] * parts[row];
        }
        return sum;
    }

    private static double[] rowSums(double[][] parts) {
        double[] sums = new double[parts.length];
        for (int row = 0; row < parts.length; row++) {
            for (double part : parts[row]) {
                sums[row] += part;
            }
        }
        return sums;
    }

    private static double[] columnSums(double[][] parts) {
        double[] sums = new double[parts.length];
        for (double[] row : parts) {
            for (int column = 0; column < row.length; column++) {
                sums[column] += row[column];
            }
        }
        return sums;
    }

    private static Statistic<Interval> interval(double kappa, double error) {
        if (error < ROUNDING) {
            return Statistic.unknown("the sheets all agree or disagree in the same way, so that nothing shows how far it may vary");
        }
        double reach = new NormalDistribution().inverseCumulativeProbability(Interval.UPPER_TAIL) * error;
        return Statistic.known(new Interval(Math.max(-1, kappa - reach), Math.min(1, kappa + reach)));
    }
}
