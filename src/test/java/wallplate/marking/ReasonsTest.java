package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class ReasonsTest {

    private static final String DOUBT = "there is ink where the first post should be, but no clear one";

    @Test
    void saysInGermanWhatWasSaidInEnglish() {
        assertThat(Reasons.in(Locale.GERMAN).say(DOUBT))
                .isEqualTo("Wo der erste Pfosten sein soll, ist etwas gezeichnet, aber nichts Deutliches.");
    }

    @Test
    void keepsAReasonThatItHasNoWordsFor() {
        assertThat(Reasons.in(Locale.GERMAN).say("the paper is wet")).isEqualTo("the paper is wet");
        assertThat(Reasons.in(Locale.ENGLISH).say(DOUBT)).isEqualTo(DOUBT);
        assertThat(Reasons.in(Locale.FRENCH).say(DOUBT)).isEqualTo(DOUBT);
    }

    @Test
    void keepsFigures() {
        assertThat(Reasons.in(Locale.GERMAN)
                        .say("This picture shows only 72 dots to the inch of paper, too few to measure thin lines; at"
                                + " least 100 are needed. Scan it again at 300 dpi."))
                .contains("nur 72 Punkte");
    }

    @Test
    void writesNumbersAsTheLanguageDoes() {
        assertThat(Reasons.in(Locale.GERMAN)
                        .say("By the edges of the paper the reference bar is 97.3 mm long and not as long as asked; the"
                                + " millimetres were taken from the bar."))
                .contains("Messstrecke 97,3 mm lang");
    }
}
