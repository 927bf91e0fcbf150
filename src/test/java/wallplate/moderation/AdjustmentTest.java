package wallplate.moderation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import wallplate.marking.Verdict;
import wallplate.moderation.Adjustment.Standing;
import wallplate.moderation.Decision.Adjust;
import wallplate.records.MarkEntry;

class AdjustmentTest {

    private static final Adjust HALF_OFF = new Adjust("hatching", -0.5, 0, 30);

    @Test
    void takesTheSameOffEveryMark() {
        Adjustment adjustment = Adjustment.of(HALF_OFF, List.of(of(2, 20), of(1.5, 12)));

        assertThat(adjustment.changes()).extracting(Adjustment.Change::after).containsExactly(1.5, 1.0);
        assertThat(adjustment.words()).isEqualTo("Hatching, by −0.5: 2 sheets changed.");
    }

    @Test
    void staysBetweenNothingAndTheMaximum() {
        Adjustment down = Adjustment.of(new Adjust("hatching", -1, 0, 30), List.of(of(0.5, 20), of(0, 9)));
        Adjustment up = Adjustment.of(new Adjust("hatching", 1, 0, 30), List.of(of(1.5, 20), of(2, 21)));

        assertThat(down.changes()).extracting(Adjustment.Change::after).containsExactly(0.0);
        assertThat(up.changes()).extracting(Adjustment.Change::after).containsExactly(2.0);
        assertThat(up.words())
                .isEqualTo("Hatching, by +1: 1 sheet changed (1 of them by less, at 0 or the maximum). "
                        + "1 sheet stood at 0 or the maximum already.");
    }

    @Test
    void leavesSheetsOutsideTheLimitsAndUndecidedMarksAlone() {
        Adjustment adjustment = Adjustment.of(
                new Adjust("hatching", -0.5, 10, 20), List.of(of(2, 9.5), of(2, 10), of(2, 20), of(2, 20.5), undecided()));

        assertThat(adjustment.changes()).hasSize(2);
        assertThat(adjustment.words())
                .isEqualTo("Hatching, by −0.5: 2 sheets changed. 1 sheet left alone, not decided yet. "
                        + "2 sheets left alone, total outside 10 to 20.");
    }

    @Test
    void refusesAnAdjustmentThatIsNone() {
        assertThatThrownBy(() -> new Adjust("hatching", 0, 0, 30)).hasMessageContaining("not 0");
        assertThatThrownBy(() -> new Adjust("hatching", 1, 20, 10)).hasMessageContaining("from low to high");
    }

    private static Standing of(double awarded, double total) {
        return new Standing(mark(awarded, Verdict.MET), total);
    }

    private static Standing undecided() {
        return new Standing(mark(0, Verdict.UNDECIDED), 15);
    }

    private static MarkEntry mark(double awarded, Verdict verdict) {
        MarkEntry.Reading nothing = new MarkEntry.Reading(
                "", OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), "none", OptionalDouble.empty(),
                OptionalDouble.empty(), Optional.empty(), Optional.empty());
        return new MarkEntry(
                1, "hatching", 1, "Hatching", Optional.empty(), verdict, awarded, 2, OptionalDouble.empty(), nothing,
                List.of(), "", Optional.empty());
    }
}
