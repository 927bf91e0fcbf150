package wallplate.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class PairedDifferenceTest {

    /** Bland and Altman (1986), peak flow by two meters, first readings; data from memory, they give the published figures. */
    private static final List<Double> WRIGHT =
            values(494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427);

    private static final List<Double> MINI =
            values(512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451);

    @Test
    void agreesWithBlandAndAltman() {
        PairedDifference found = PairedDifference.of(MINI, WRIGHT).told().orElseThrow();

        // Published: mean -2.1, standard deviation 38.8; limits -78.1 to 73.9 with 1.96 deviations.
        assertThat(found.mean()).isEqualTo(-2.1, within(0.05));
        assertThat(found.standardDeviation()).isEqualTo(38.8, within(0.05));
        assertThat(found.limits().lower()).isEqualTo(-78.1, within(0.05));
        assertThat(found.limits().upper()).isEqualTo(73.9, within(0.05));
        // The interval of the mean, published as -22.0 to 17.8 (from memory).
        assertThat(found.interval().lower()).isEqualTo(-22.0, within(0.06));
        assertThat(found.interval().upper()).isEqualTo(17.8, within(0.06));
    }

    @Test
    void isExactWhereEverySheetDiffersAlike() {
        PairedDifference found =
                PairedDifference.of(values(1, 2, 3), values(1.5, 2.5, 3.5)).told().orElseThrow();

        assertThat(found.mean()).isEqualTo(0.5);
        assertThat(found.limits()).isEqualTo(new Interval(0.5, 0.5));
    }

    @Test
    void cannotBeToldFromOneSheet() {
        assertThat(PairedDifference.of(values(1), values(2)).because()).contains("two sheets");
    }

    private static List<Double> values(double... values) {
        return DoubleStream.of(values).boxed().toList();
    }
}
