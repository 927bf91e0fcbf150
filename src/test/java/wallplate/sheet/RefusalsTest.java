package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A refusal must say what to do with the device that made the picture. */
class RefusalsTest {

    @Test
    void tellsPhotographersToTakeInTheWholePaper() {
        assertThat(Refusals.nothingToMeasureBy(80, true))
                .contains("80 mm")
                .contains("all four edges")
                .doesNotContain("scan it");
    }

    @Test
    void tellsScannersToScanAgain() {
        assertThat(Refusals.nothingToMeasureBy(100, false)).contains("100 mm").endsWith("and scan it again.");
    }

    @Test
    void saysWhichResolutionIsThereAndWhichIsNeeded() {
        assertThat(Refusals.tooCoarse(60 / 25.4, false))
                .contains("only 60 dots")
                .contains("at least 100")
                .contains("300 dpi");
        assertThat(Refusals.tooCoarse(60 / 25.4, true)).contains("from nearer").doesNotContain("Scan");
    }
}
