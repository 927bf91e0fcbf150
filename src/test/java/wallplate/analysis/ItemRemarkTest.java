package wallplate.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import wallplate.statistics.ItemFigures;
import wallplate.statistics.ScoredItem;
import wallplate.statistics.Statistic;

class ItemRemarkTest {

    @Test
    void remarksOnHardEasyAndBackwardCriteria() {
        assertThat(ItemRemark.on(figures(0.95, 0.1))).containsExactly(ItemRemark.EASY);
        assertThat(ItemRemark.on(figures(0.2, 0.4))).containsExactly(ItemRemark.HARD);
        assertThat(ItemRemark.on(figures(0.6, -0.3))).containsExactly(ItemRemark.AGAINST);
        assertThat(ItemRemark.on(figures(0.6, 0.1))).containsExactly(ItemRemark.TELLS_LITTLE);
        assertThat(ItemRemark.on(figures(0.6, 0.4))).isEmpty();
    }

    @Test
    void saysEverybodyAndNobodyOnlyWhereItIsSo() {
        assertThat(ItemRemark.on(figures(1, 0))).containsExactly(ItemRemark.ALL);
        assertThat(ItemRemark.on(figures(199 / 200.0, 0))).containsExactly(ItemRemark.EASY);
        assertThat(ItemRemark.on(figures(1 / 200.0, 0))).containsExactly(ItemRemark.HARD);
        assertThat(ItemRemark.on(figures(0, 0))).containsExactly(ItemRemark.NONE);
    }

    @Test
    void remarksOnNothingThatCannotBeTold() {
        Statistic<Double> unknown = Statistic.unknown("there is one learner");

        assertThat(ItemRemark.on(new ItemFigures(
                        1, new ScoredItem("a", "A", 1), unknown, unknown, unknown, unknown, unknown, unknown)))
                .isEmpty();
    }

    private static ItemFigures figures(double facility, double discrimination) {
        Statistic<Double> other = Statistic.known(0.5);
        return new ItemFigures(
                1, new ScoredItem("a", "A", 1), Statistic.known(facility), other, Statistic.known(discrimination), other,
                other, other);
    }
}
