package wallplate.marksheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The rules of {@link Reckoning}, each by an example worked out by hand. */
class ReckoningTest {

    /** (1 x 21/30 + 2 x 24/40) / 3 = (0.7 + 1.2) / 3 = 0.6333... */
    @Test
    void weighsTheSharesOfTheTasks() {
        assertThat(percent(0, weights("1", "2"), marked("21", "30"), marked("24", "40"))).isEqualTo("63.3");
    }

    /** 13/16 = 81.25 %: a half is rounded up; the even neighbour would be 81.2. */
    @Test
    void roundsAHalfUp() {
        assertThat(percent(0, weights("1"), marked("13", "16"))).isEqualTo("81.3");
    }

    /** 1/3 + 2/3 + 67/80 = 1.8375; a third of it is 61.25 % exactly, which no sum of rounded thirds need give. */
    @Test
    void reckonsInExactFractions() {
        assertThat(percent(0, weights("1", "1", "1"), marked("10", "30"), marked("20", "30"), marked("67", "80")))
                .isEqualTo("61.3");
    }

    /** 1/16 = 6.25 % and 3/16 = 18.75 %; the mean is 12.5 %, of shares rounded first it would be 12.55, so 12.6. */
    @Test
    void roundsOnceAtTheEnd() {
        assertThat(percent(0, weights("1", "1"), marked("1", "16"), marked("3", "16"))).isEqualTo("12.5");
    }

    /** 10 % of 30 are 3: 24 - 3 = 21 of 30 is 70 %. 2 - 3 would be below 0. */
    @Test
    void takesOffForLateAndNotBelowNothing() {
        assertThat(percent(10, weights("1"), late("24", "30"))).isEqualTo("70.0");
        assertThat(percent(10, weights("1"), late("2", "30"))).isEqualTo("0.0");
        assertThat(percent(0, weights("1"), late("24", "30"))).isEqualTo("80.0");
    }

    /** 18/20 = 90 % with a second task of the same weight: absent (90 + 0) / 2 = 45, excused 90. */
    @Test
    void countsAbsentAsNothingAndLeavesExcusedOut() {
        assertThat(percent(0, weights("1", "1"), marked("18", "20"), none(Standing.ABSENT))).isEqualTo("45.0");
        assertThat(percent(0, weights("1", "1"), marked("18", "20"), none(Standing.EXCUSED))).isEqualTo("90.0");
    }

    /** Weights of 0.5 and 1.5: (0.5 x 1 + 1.5 x 0.2) / 2 = 0.8 / 2 = 40 %. */
    @Test
    void takesWeightsWithDecimals() {
        assertThat(percent(0, weights("0.5", "1.5"), marked("7.5", "7.50"), marked("4", "20"))).isEqualTo("40.0");
    }

    @Test
    void hasNoPercentageWhereSomethingIsOpenOrNothingCounts() {
        Reckoning reckoning = new Reckoning(weights("1", "1"), 0);

        assertThat(reckoning.of(List.of(marked("1", "2"), Entry.open()))).isEqualTo(new Reckoning.NotYet(1));
        assertThat(reckoning.of(List.of(none(Standing.EXCUSED), none(Standing.EXCUSED))))
                .isEqualTo(new Reckoning.NothingCounts());
    }

    private static String percent(int latePercent, List<BigDecimal> weights, Entry... entries) {
        Reckoning.Result result = new Reckoning(weights, latePercent).of(List.of(entries));
        return ((Reckoning.Percentage) result).percent().toPlainString();
    }

    private static List<BigDecimal> weights(String... weights) {
        List<BigDecimal> list = new ArrayList<>();
        for (String weight : weights) {
            list.add(new BigDecimal(weight));
        }
        return list;
    }

    private static Entry marked(String awarded, String available) {
        return new Entry(Standing.MARKED, new BigDecimal(awarded), new BigDecimal(available));
    }

    private static Entry late(String awarded, String available) {
        return marked(awarded, available).as(Standing.LATE);
    }

    private static Entry none(Standing standing) {
        return new Entry(standing, BigDecimal.ZERO, BigDecimal.ZERO);
    }
}
