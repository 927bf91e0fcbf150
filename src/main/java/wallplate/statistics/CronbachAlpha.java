package wallplate.statistics;

import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.stat.descriptive.moment.Variance;

/**
 * How far the items of a set measure the same thing: Cronbach's alpha.
 *
 * <p>Cronbach (1951), "Coefficient alpha and the internal structure of tests", Psychometrika 16, 297-334; for items that
 * are right or wrong it is Kuder and Richardson's formula 20. The interval is that of Feldt (1965), "The approximate
 * sampling distribution of Kuder-Richardson reliability coefficient twenty", Psychometrika 30, 357-370.
 */
public final class CronbachAlpha {

    private CronbachAlpha() {}

    public static Statistic<Estimate> of(ScoreTable table) {
        int learners = table.learners();
        int items = table.items().size();
        if (learners < 2) {
            return Statistic.unknown("it takes at least two learners with every mark");
        }
        if (items < 2) {
            return Statistic.unknown("it takes at least two criteria");
        }
        double ofTotals = new Variance().evaluate(table.totals());
        double ofItems = 0;
        for (int item = 0; item < items; item++) {
            ofItems += new Variance().evaluate(table.marks(item));
        }
        if (ofTotals <= 1e-12 * ofItems || ofTotals == 0) {
            return Statistic.unknown("every learner has the same total");
        }
        double alpha = items / (items - 1.0) * (1 - ofItems / ofTotals);
        return Statistic.known(new Estimate(alpha, Statistic.known(interval(alpha, learners, items))));
    }

    static Interval interval(double alpha, int learners, int items) {
        FDistribution f = new FDistribution(learners - 1, (learners - 1.0) * (items - 1));
        return new Interval(
                1 - (1 - alpha) * f.inverseCumulativeProbability(Interval.UPPER_TAIL),
                1 - (1 - alpha) * f.inverseCumulativeProbability(Interval.LOWER_TAIL));
    }
}
