package wallplate.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KappaTest {

    /** Cohen (1968), 200 patients by two psychiatrists; read in the help of R's psych::cohen.kappa. */
    private static final RatingTable COHEN_1968 =
            RatingTable.ofCounts(new int[] {88, 14, 18}, new int[] {10, 40, 10}, new int[] {2, 6, 12});

    /** Bortz (1990), p. 459; read in the help of R's DescTools::CohenKappa. */
    private static final RatingTable BORTZ_1990 =
            RatingTable.ofCounts(new int[] {53, 5, 2}, new int[] {11, 14, 5}, new int[] {1, 6, 3});

    /** Westlund and Kurland, diagnoses of multiple sclerosis; the data set MSPatients of R's vcd, first table. */
    private static final RatingTable DIAGNOSES = RatingTable.ofCounts(
            new int[] {38, 5, 0, 1}, new int[] {33, 11, 3, 0}, new int[] {10, 14, 5, 6}, new int[] {3, 7, 3, 10});

    @Test
    void agreesWithCohensExampleOfUnevenWeights() {
        Disagreement even = Disagreement.given(new double[] {0, 1, 3}, new double[] {1, 0, 6}, new double[] {3, 6, 0});
        Disagreement uneven = Disagreement.given(new double[] {0, 1, 4}, new double[] {1, 0, 6}, new double[] {2, 2, 0});

        // Published as .492, .348 and .353.
        assertThat(value(COHEN_1968, Disagreement.ALIKE)).isEqualTo(29.0 / 59, within(1e-12));
        assertThat(value(COHEN_1968, even)).isEqualTo(8.0 / 23, within(1e-12));
        assertThat(value(COHEN_1968, uneven)).isEqualTo(0.353, within(0.0005));
    }

    @Test
    void agreesWithKappasOfRecordedTables() {
        // By R's vcd 1.4-11 Kappa() and by exact fractions.
        assertThat(value(BORTZ_1990, Disagreement.ALIKE)).isEqualTo(3.0 / 7, within(1e-12));
        assertThat(value(BORTZ_1990, Disagreement.LINEAR)).isEqualTo(0.492308, within(5e-7));
        assertThat(value(BORTZ_1990, Disagreement.QUADRATIC)).isEqualTo(0.566667, within(5e-7));
        assertThat(value(DIAGNOSES, Disagreement.ALIKE)).isEqualTo(0.207942, within(5e-7));
        assertThat(value(DIAGNOSES, Disagreement.LINEAR)).isEqualTo(0.379731, within(5e-7));
    }

    /**
     * The variance of a smooth function of multinomial proportions by differences instead of by the printed formula:
     * the delta method (Bishop, Fienberg and Holland 1975, Discrete Multivariate Analysis, section 14.6).
     */
    @Test
    void hasTheStandardErrorThatTheDeltaMethodGives() {
        for (Disagreement weights : List.of(Disagreement.ALIKE, Disagreement.LINEAR, Disagreement.QUADRATIC)) {
            for (RatingTable table : List.of(COHEN_1968, BORTZ_1990, DIAGNOSES)) {
                double error = Kappa.of(table, weights).told().orElseThrow().standardError();
                assertThat(error).isEqualTo(byDifferences(table, weights), within(1e-6));
            }
        }
    }

    /** A weighted kappa with squared weights is Lin's (1989) concordance coefficient, computed here without a table. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void withSquaredWeightsIsTheConcordanceCoefficient(long seed) {
        Random random = new Random(seed);
        List<Double> first = halves(random, 40);
        List<Double> second = first.stream()
                .map(mark -> Math.max(0, mark + (random.nextInt(3) - 1) / 2.0))
                .toList();

        Kappa kappa = Kappa.of(RatingTable.of(first, second), Disagreement.QUADRATIC).told().orElseThrow();

        assertThat(kappa.value()).isEqualTo(concordance(first, second), within(1e-10));
        assertThat(kappa.interval().told().orElseThrow().contains(kappa.value())).isTrue();
    }

    @Test
    void takesDistancesFromTheMarksAndNotFromTheirPlaces() {
        List<Double> first = List.of(0.0, 0.0, 5.0, 5.0);
        List<Double> near = List.of(0.0, 0.5, 5.0, 4.5);
        List<Double> far = List.of(0.0, 5.0, 5.0, 0.0);

        assertThat(Kappa.of(RatingTable.of(first, near), Disagreement.LINEAR).told().orElseThrow().value())
                .isGreaterThan(0.8);
        assertThat(Kappa.of(RatingTable.of(first, far), Disagreement.LINEAR).told().orElseThrow().value())
                .isEqualTo(0, within(1e-12));
    }

    @Test
    void cannotBeToldWithoutVariationOrSheets() {
        List<Double> same = List.of(1.0, 1.0, 1.0);

        assertThat(Kappa.of(RatingTable.of(same, same), Disagreement.QUADRATIC).because()).contains("same mark");
        assertThat(Kappa.of(RatingTable.of(same, List.of(1.0, 0.5, 1.0)), Disagreement.QUADRATIC).because())
                .contains("same mark");
        assertThat(Kappa.of(RatingTable.of(List.of(), List.of()), Disagreement.ALIKE).because()).contains("two sheets");
        assertThat(Kappa.of(RatingTable.of(List.of(1.0), List.of(2.0)), Disagreement.ALIKE).because())
                .contains("two sheets");
    }

    @Test
    void isOneWithoutAnIntervalWhereMarkersAgreeOnEverySheet() {
        List<Double> marks = List.of(0.0, 1.0, 1.0, 0.5);

        Kappa kappa = Kappa.of(RatingTable.of(marks, marks), Disagreement.QUADRATIC).told().orElseThrow();

        assertThat(kappa.value()).isEqualTo(1, within(1e-12));
        assertThat(kappa.interval().told()).isEmpty();
    }

    @Test
    void refusesMarksThatDoNotPair() {
        assertThatThrownBy(() -> RatingTable.of(List.of(1.0), List.of())).hasMessageContaining("1 first marks and 0 second");
        assertThatThrownBy(() -> RatingTable.ofCounts(new int[] {1, 2})).hasMessageContaining("categories");
    }

    private static double value(RatingTable table, Disagreement weights) {
        return Kappa.of(table, weights).told().orElseThrow().value();
    }

    private static double byDifferences(RatingTable table, Disagreement weights) {
        double[][] parts = table.proportions();
        double step = 1e-6;
        double sum = 0;
        double sumOfSquares = 0;
        for (int row = 0; row < parts.length; row++) {
            for (int column = 0; column < parts.length; column++) {
                double part = parts[row][column];
                parts[row][column] = part + step;
                double above = kappa(table, parts, weights);
                parts[row][column] = part - step;
                double below = kappa(table, parts, weights);
                parts[row][column] = part;
                double slope = (above - below) / (2 * step);
                sum += part * slope;
                sumOfSquares += part * slope * slope;
            }
        }
        return Math.sqrt((sumOfSquares - sum * sum) / table.total());
    }

    /** One minus the seen by the expected disagreement, as Cohen (1968) writes it, of parts that need not sum to 1. */
    private static double kappa(RatingTable table, double[][] parts, Disagreement weights) {
        double seen = 0;
        double expected = 0;
        double whole = 0;
        for (int row = 0; row < parts.length; row++) {
            for (int column = 0; column < parts.length; column++) {
                whole += parts[row][column];
                seen += weights.of(table, row, column) * parts[row][column];
                for (int other = 0; other < parts.length; other++) {
                    for (int another = 0; another < parts.length; another++) {
                        expected += weights.of(table, row, column) * parts[row][other] * parts[another][column];
                    }
                }
            }
        }
        return 1 - seen * whole / expected;
    }

    private static List<Double> halves(Random random, int count) {
        return IntStream.range(0, count).mapToObj(sheet -> random.nextInt(9) / 2.0).toList();
    }

    private static double concordance(List<Double> first, List<Double> second) {
        int count = first.size();
        double firstMean = first.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        double secondMean = second.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        double together = 0;
        double apart = Math.pow(firstMean - secondMean, 2);
        for (int sheet = 0; sheet < count; sheet++) {
            double one = first.get(sheet) - firstMean;
            double other = second.get(sheet) - secondMean;
            together += 2 * one * other / count;
            apart += (one * one + other * other) / count;
        }
        return together / apart;
    }
}
