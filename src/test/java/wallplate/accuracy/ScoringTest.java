package wallplate.accuracy;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The counting rules, each from the description of the measured keys and the shared scoring program. */
class ScoringTest {

    @Test
    void sizeBetweenExactAndRoundedDoesNotDeviate() {
        assertThat(Scoring.deviation(6.25, 6.25)).isZero();
        assertThat(Scoring.deviation(6.1, 6.25)).isZero();
        assertThat(Scoring.deviation(6.5, 6.25)).isEqualTo(0.25);
        assertThat(Scoring.deviation(1.9, 1.5)).isZero();
        assertThat(Scoring.deviation(5.4, 6.25)).isCloseTo(0.6, org.assertj.core.data.Offset.offset(1e-9));
    }

    @Test
    void tinySizeIsNotRoundedToNothing() {
        assertThat(Scoring.deviation(0, 0.4)).isEqualTo(0.4);
    }

    @Test
    void widthsDepthsAndThicknessesHaveTheFinerTolerance() {
        assertThat(Scoring.tolerance("gutter.width")).isEqualTo(0.5);
        assertThat(Scoring.tolerance("covering.thickness")).isEqualTo(0.5);
        assertThat(Scoring.tolerance("support.spacing")).isEqualTo(1);
        assertThat(Scoring.tolerance("roof.pitch")).isEqualTo(1);
    }

    @Test
    void tableSurvivesWritingAndReading() {
        Scoring empty = new Scoring();
        AccuracyTable table = AccuracyTable.of(empty);

        assertThat(AccuracyTable.parse(table.text())).isEqualTo(table);
    }

    @Test
    void fallInCoverageAndRiseInErrorsAreWorse() {
        AccuracyTable kept = AccuracyTable.parse("key/a 50 50 0 50 0.030\nkey/b 50 50 1 50 0.030\nkey/c 50 50 0 50 0.030\n");
        AccuracyTable now = AccuracyTable.parse("key/a 50 46 0 50 0.030\nkey/b 50 50 4 50 0.030\nkey/c 50 50 0 50 0.100\n");

        assertThat(now.worseThan(kept)).hasSize(3);
        assertThat(kept.worseThan(kept)).isEmpty();
    }
}
