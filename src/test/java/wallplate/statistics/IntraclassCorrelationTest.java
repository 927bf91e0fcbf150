package wallplate.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class IntraclassCorrelationTest {

    /** Shrout and Fleiss (1979), table 2: six targets by four judges. */
    private static final double[][] SHROUT_AND_FLEISS = {
        {9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}
    };

    @Test
    void agreesWithShroutAndFleiss() {
        IntraclassCorrelation found = IntraclassCorrelation.of(SHROUT_AND_FLEISS).told().orElseThrow();

        // Mean squares and ICC(2,1) = .29 as published; interval .019 to .761 as published, further places by R's psych 2.2.9.
        assertThat(found.betweenSheets()).isEqualTo(11.24, within(0.005));
        assertThat(found.betweenMarkers()).isEqualTo(32.49, within(0.005));
        assertThat(found.residual()).isEqualTo(1.02, within(0.005));
        assertThat(found.estimate().value()).isEqualTo(0.289764, within(5e-7));
        Interval interval = found.estimate().interval().told().orElseThrow();
        assertThat(interval.lower()).isEqualTo(0.018787, within(5e-7));
        assertThat(interval.upper()).isEqualTo(0.761084, within(5e-7));
    }

    @Test
    void fallsWhereOneMarkerIsGenerousThroughout() {
        List<Double> first = List.of(10.0, 12.0, 15.0, 20.0, 23.0);
        List<Double> higher = first.stream().map(mark -> mark + 3).toList();

        IntraclassCorrelation found = IntraclassCorrelation.of(first, higher).told().orElseThrow();

        // By hand: mean squares 2 x 29.5 = 59, 2.5 x 9 = 22.5 and 0, so 59 / (59 + 2 x 22.5 / 5) = 59 / 68.
        assertThat(found.estimate().value()).isEqualTo(59.0 / 68, within(1e-12));
        assertThat(found.estimate().interval().told()).isPresent();
    }

    @Test
    void isOneWithoutAnIntervalWhereMarkersAgreeOnEverySheet() {
        List<Double> marks = List.of(3.0, 5.5, 7.0);

        Estimate estimate = IntraclassCorrelation.of(marks, marks).told().orElseThrow().estimate();

        assertThat(estimate.value()).isEqualTo(1, within(1e-12));
        assertThat(estimate.interval().because()).contains("agree on every sheet");
    }

    @Test
    void cannotBeToldFromOneSheetOneMarkerOrMarksThatDoNotVary() {
        assertThat(IntraclassCorrelation.of(List.of(1.0), List.of(2.0)).because()).contains("two sheets");
        assertThat(IntraclassCorrelation.of(new double[][] {{1}, {2}}).because()).contains("two markers");
        assertThat(IntraclassCorrelation.of(List.of(4.0, 4.0), List.of(4.0, 4.0)).because()).contains("do not vary");
        assertThat(IntraclassCorrelation.of(List.of(4.0, 4.0), List.of(5.0, 5.0)).because()).contains("do not vary");
    }

    /** The mean of many equal marks is not quite the mark: what rounding leaves must not be taken for variation. */
    @Test
    void takesNoRoundingForVariation() {
        List<Double> same = Collections.nCopies(12, 0.1);

        assertThat(IntraclassCorrelation.of(same, same).because()).contains("do not vary");
    }

    @Test
    void refusesSheetsThatNotEveryMarkerMarked() {
        assertThatThrownBy(() -> IntraclassCorrelation.of(new double[][] {{1, 2}, {1}}))
                .hasMessageContaining("1 marks beside one with 2");
    }
}
