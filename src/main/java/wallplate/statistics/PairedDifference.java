package wallplate.statistics;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

/**
 * By how much one marker's marks lie above another's for the same sheets.
 *
 * @param mean the mean of second minus first; above 0 where the second marker gave more
 * @param standardDeviation of the differences
 * @param interval of the mean, by the paired t interval
 * @param limits between which about 95 % of single differences lie: mean plus and minus 1.96 standard deviations, the
 *     limits of agreement of Bland and Altman (1986), The Lancet 327, 307-310
 */
public record PairedDifference(double mean, double standardDeviation, Interval interval, Interval limits) {

    public static Statistic<PairedDifference> of(List<Double> first, List<Double> second) {
        Pairs.requireSameSize(first, second);
        if (first.size() < 2) {
            return Statistic.unknown("it takes at least two sheets marked by both");
        }
        double[] differences = new double[first.size()];
        for (int sheet = 0; sheet < differences.length; sheet++) {
            differences[sheet] = second.get(sheet) - first.get(sheet);
        }
        double mean = new Mean().evaluate(differences);
        double deviation = new StandardDeviation().evaluate(differences);
        double t = new TDistribution(differences.length - 1).inverseCumulativeProbability(Interval.UPPER_TAIL);
        double normal = new NormalDistribution().inverseCumulativeProbability(Interval.UPPER_TAIL);
        return Statistic.known(new PairedDifference(
                mean,
                deviation,
                about(mean, t * deviation / Math.sqrt(differences.length)),
                about(mean, normal * deviation)));
    }

    private static Interval about(double mean, double reach) {
        return new Interval(mean - reach, mean + reach);
    }
}
