package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import wallplate.marking.Reasons;
import wallplate.sheet.ScanPage.Refused;
import wallplate.sheet.formats.FileFormat;
import wallplate.sheet.formats.PictureHeader;

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
    void saysThatTheBarIsCutOffAndWhatToDo() {
        assertThat(Refusals.barCutOff(100, false)).contains("Scan the whole sheet again").contains("100 mm");
        assertThat(Refusals.barCutOff(100, true)).contains("photograph again with the whole sheet").doesNotContain("Scan");
    }

    /** A learner reads the sentence in the language of the page or of the command. */
    @Test
    void hasGermanWordsForEachSentence() {
        List<String> sentences = new ArrayList<>(List.of(
                Refusals.DAMAGED,
                Refusals.tooSmall(3, 2),
                Refusals.tooLarge(new PictureHeader(40_000, 30_000, 0, 0, false), 200_000_000).reason(),
                ((Refused) ScanFile.tooManyBytes("scan.pdf", 500_000_000).content()).reason()));
        for (boolean photograph : new boolean[] {true, false}) {
            sentences.add(Refusals.blurred(photograph));
            sentences.add(Refusals.tooCoarse(2, photograph));
            sentences.add(Refusals.nothingToMeasureBy(80, photograph));
            sentences.add(Refusals.barCutOff(80, photograph));
        }
        for (FileFormat format : FileFormat.values()) {
            sentences.add(Refusals.of(format));
        }

        assertThat(sentences).allSatisfy(sentence -> assertThat(Reasons.in(Locale.GERMAN).say(sentence))
                .isNotEqualTo(sentence)
                .doesNotContain("{", "Scan it", "again"));
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
