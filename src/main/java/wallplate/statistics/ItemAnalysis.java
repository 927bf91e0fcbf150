package wallplate.statistics;

import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.stat.correlation.PearsonsCorrelation;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;

/**
 * What the marks of a class say about the items and about the set as a whole.
 *
 * @param learners those whose every mark is there
 * @param leftOut those who were left out because a mark is missing
 */
public record ItemAnalysis(int learners, int leftOut, Statistic<Estimate> alpha, List<ItemFigures> items) {

    private static final String NO_LEARNER = "no learner has every mark";

    public ItemAnalysis {
        items = List.copyOf(items);
    }

    public static ItemAnalysis of(ScoreTable table) {
        return new ItemAnalysis(
                table.learners(),
                table.leftOut(),
                CronbachAlpha.of(table),
                IntStream.range(0, table.items().size())
                        .mapToObj(item -> figures(table, item))
                        .toList());
    }

    private static ItemFigures figures(ScoreTable table, int index) {
        ScoredItem item = table.items().get(index);
        double[] marks = table.marks(index);
        ScoreTable rest = table.without(index);
        return new ItemFigures(
                index + 1,
                item,
                facility(marks, item.maximum()),
                marks.length < 2
                        ? Statistic.unknown("it takes at least two learners with every mark")
                        : Statistic.known(new StandardDeviation().evaluate(marks)),
                Discrimination.of(marks, table.totals(), item.maximum(), Discrimination.GROUP),
                correlation(marks, table.totals()),
                rest.items().isEmpty()
                        ? Statistic.unknown("there is no other criterion")
                        : correlation(marks, rest.totals()),
                CronbachAlpha.of(rest).map(Estimate::value));
    }

    private static Statistic<Double> facility(double[] marks, double maximum) {
        if (marks.length == 0) {
            return Statistic.unknown(NO_LEARNER);
        }
        return maximum <= 0
                ? Statistic.unknown("it brings no marks")
                : Statistic.known(new Mean().evaluate(marks) / maximum);
    }

    private static Statistic<Double> correlation(double[] marks, double[] totals) {
        if (marks.length < 3) {
            return Statistic.unknown("it takes at least three learners with every mark");
        }
        if (isConstant(marks)) {
            return Statistic.unknown("every learner got the same mark for it");
        }
        if (isConstant(totals)) {
            return Statistic.unknown("every learner has the same total otherwise");
        }
        return Statistic.known(new PearsonsCorrelation().correlation(marks, totals));
    }

    private static boolean isConstant(double[] values) {
        for (double value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }
}
