package wallplate.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.hipparchus.stat.descriptive.moment.Mean;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ItemAnalysisTest {

    private static final int LEARNERS = 233;

    /**
     * Eight items of a real examination of 233 people (Sleeper 2011, "Item analysis", slides): difficulty, upper and
     * lower quarter, discrimination, standard deviation, in percent. Its groups are 59 people: a quarter, rounded up.
     */
    @ParameterizedTest
    @CsvSource({
        "50, 25, 7, 21.46, 42.37, 11.86, 30.51, 41.14",
        "134, 41, 24, 57.51, 69.49, 40.68, 28.81, 49.54",
        "105, 29, 17, 45.06, 49.15, 28.81, 20.34, 49.86",
        "90, 17, 27, 38.63, 28.81, 45.76, -16.95, 48.79",
        "132, 45, 18, 56.65, 76.27, 30.51, 45.76, 49.66",
        "159, 51, 34, 68.24, 86.44, 57.63, 28.81, 46.65",
        "132, 47, 18, 56.65, 79.66, 30.51, 49.15, 49.66",
        "13, 4, 7, 5.58, 6.78, 11.86, -5.08, 23.00"
    })
    void agreesWithAPublishedItemAnalysis(
            int right, int upperRight, int lowerRight, double difficulty, double upper, double lower, double index, double deviation) {
        double[] marks = new double[LEARNERS];
        fill(marks, 0, lowerRight);
        fill(marks, 59, right - upperRight - lowerRight);
        fill(marks, LEARNERS - 59, upperRight);
        double[] totals = new double[LEARNERS];
        Arrays.setAll(totals, learner -> learner);

        assertThat(100 * Discrimination.of(marks, totals, 1, 0.25).told().orElseThrow()).isEqualTo(index, within(0.006));
        assertThat(upper - lower).isEqualTo(index, within(0.011));
        assertThat(100 * new Mean().evaluate(marks)).isEqualTo(difficulty, within(0.006));
        assertThat(100 * new StandardDeviation().evaluate(marks)).isEqualTo(deviation, within(0.006));
    }

    /** Fifteen of the upper and five of the lower fifteen had it right: .67 (a published exercise on item analysis). */
    @Test
    void agreesWithAPublishedExercise() {
        double[] marks = new double[30];
        fill(marks, 0, 5);
        fill(marks, 15, 15);
        double[] totals = new double[30];
        Arrays.setAll(totals, learner -> learner);

        assertThat(Discrimination.of(marks, totals, 1, 0.5).told().orElseThrow()).isEqualTo(0.67, within(0.005));
    }

    @Test
    void sharesThePlacesOfAGroupAmongEqualTotals() {
        double[] totals = {1, 2, 2, 2, 3, 3, 4, 5};
        double[] marks = {0, 1, 0, 0, 1, 0, 1, 1};

        // Groups of three of eight: the lower one holds the first and two of three with 2 marks, the upper 5, 4 and half of 3, 3.
        double lower = (0 + 2 * (1 / 3.0)) / 3;
        double upper = (1 + 1 + 0.5) / 3;
        assertThat(Discrimination.of(marks, totals, 1, Discrimination.GROUP).told().orElseThrow())
                .isEqualTo(upper - lower, within(1e-12));
    }

    /**
     * Three right-or-wrong items with variances .24, .16, .24 and totals of 1.44: alpha .833 (item analysis guide of
     * visualstatistics.net). Twenty-five learners who give just these variances.
     */
    @Test
    void hasThePublishedAlpha() {
        List<List<Double>> rows = new ArrayList<>();
        rows.addAll(Collections.nCopies(13, List.of(1.0, 1.0, 1.0)));
        rows.addAll(Collections.nCopies(2, List.of(1.0, 1.0, 0.0)));
        rows.addAll(Collections.nCopies(2, List.of(0.0, 1.0, 1.0)));
        rows.addAll(Collections.nCopies(3, List.of(0.0, 1.0, 0.0)));
        rows.addAll(Collections.nCopies(5, List.of(0.0, 0.0, 0.0)));

        assertThat(CronbachAlpha.of(table(rows)).told().orElseThrow().value()).isEqualTo(0.833, within(0.0005));
    }

    /**
     * Feldt's interval is the F distribution of (1 - true) / (1 - found) with n - 1 and (n - 1)(k - 1) degrees of
     * freedom; the quantiles here were computed with SciPy 1.17 (scipy.stats.f.ppf).
     */
    @Test
    void hasFeldtsInterval() {
        Interval interval = CronbachAlpha.interval(0.79, 41, 26);

        assertThat(interval.lower()).isEqualTo(0.6851372816667141, within(1e-6));
        assertThat(interval.upper()).isEqualTo(0.8725839361273218, within(1e-6));
    }

    @Test
    void tellsAnItemThatRunsAgainstTheRest() {
        ScoreTable table = table(
                List.of(2.0, 1.0, 0.0), List.of(1.5, 1.0, 0.0), List.of(1.0, 0.5, 1.0), List.of(0.5, 0.0, 1.0),
                List.of(0.0, 0.0, 1.0));

        ItemAnalysis found = ItemAnalysis.of(table);

        ItemFigures against = found.items().get(2);
        assertThat(against.withRest().told().orElseThrow()).isNegative();
        assertThat(against.withTotal().told().orElseThrow()).isGreaterThan(against.withRest().told().orElseThrow());
        assertThat(against.alphaWithout().told().orElseThrow())
                .isGreaterThan(found.alpha().told().orElseThrow().value());
    }

    /** For an item that is right or wrong: (mean of right - mean of wrong) / deviation x root(p q), the textbook form. */
    @Test
    void hasThePointBiserialCorrelation() {
        ScoreTable table = table(
                List.of(1.0, 5.0), List.of(0.0, 3.0), List.of(1.0, 4.0), List.of(1.0, 6.0), List.of(0.0, 2.0));

        double correlation = ItemAnalysis.of(table).items().get(0).withRest().told().orElseThrow();

        double deviation = Math.sqrt(2);
        assertThat(correlation).isEqualTo((5 - 2.5) / deviation * Math.sqrt(0.6 * 0.4), within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"1", "2", "3"})
    void doesNotDependOnTheOrderOfTheLearners(long seed) {
        Random random = new Random(seed);
        List<List<Double>> rows = new ArrayList<>();
        for (int learner = 0; learner < 30; learner++) {
            rows.add(List.of(random.nextInt(3) / 2.0, random.nextInt(3) / 2.0, random.nextInt(3) / 2.0));
        }
        List<ItemFigures> before = ItemAnalysis.of(table(rows)).items();
        Collections.shuffle(rows, random);
        List<ItemFigures> after = ItemAnalysis.of(table(rows)).items();

        for (int item = 0; item < before.size(); item++) {
            assertThat(after.get(item).discrimination().told().orElseThrow())
                    .isEqualTo(before.get(item).discrimination().told().orElseThrow(), within(1e-12));
        }
    }

    @Test
    void leavesOutALearnerWithAMissingMarkAndSaysSo() {
        List<ScoredItem> items = List.of(new ScoredItem("a", "A", 1), new ScoredItem("b", "B", 1));
        Map<String, Double> missing = new HashMap<>(Map.of("a", 1.0));

        ScoreTable table = ScoreTable.of(items, List.of(Map.of("a", 1.0, "b", 0.0), missing));

        assertThat(table.learners()).isEqualTo(1);
        assertThat(table.leftOut()).isEqualTo(1);
    }

    @Test
    void saysWhyAFigureCannotBeTold() {
        ItemAnalysis nobody = ItemAnalysis.of(table());
        ItemAnalysis one = ItemAnalysis.of(table(List.of(1.0, 0.5)));
        ItemAnalysis alike = ItemAnalysis.of(table(List.of(1.0, 0.5), List.of(1.0, 0.5), List.of(1.0, 0.5), List.of(1.0, 0.5)));

        assertThat(nobody.alpha().because()).contains("two learners");
        assertThat(one.items().get(0).facility().told()).contains(1.0);
        assertThat(one.items().get(0).withRest().because()).contains("three learners");
        assertThat(alike.alpha().because()).contains("same total");
        assertThat(alike.items().get(0).discrimination().because()).contains("same total");
        assertThat(alike.items().get(0).withTotal().because()).contains("same mark");
    }

    private static void fill(double[] marks, int from, int count) {
        Arrays.fill(marks, from, from + count, 1);
    }

    @SafeVarargs
    private static ScoreTable table(List<Double>... rows) {
        return table(Arrays.asList(rows));
    }

    private static ScoreTable table(List<List<Double>> rows) {
        int items = rows.isEmpty() ? 2 : rows.get(0).size();
        List<ScoredItem> scored = new ArrayList<>();
        for (int item = 0; item < items; item++) {
            scored.add(new ScoredItem("item-" + item, "Item " + item, item == 0 ? 1 : 2));
        }
        return new ScoreTable(scored, rows, 0);
    }
}
