package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Fault;

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

    @Test
    void saysWhatAGuidelineAcceptsInGerman() {
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        Map<String, Object> wrong = Map.of(
                "tolerance", Map.of("length", "wide", "depth", 1),
                "consistent-working", "perhaps",
                "groups", Map.of("some", Map.of("maximum", -1)),
                "criteria",
                        List.of(
                                Map.of("id", "Not An Id", "teacher", "Look."),
                                Map.of("id", "both", "teacher", "Look.", "measure", "roof.pitch"),
                                Map.of("id", "chimney", "part", "chimney"),
                                Map.of("measure", "chimney.height"),
                                Map.of("id", "one", "measure", List.of("roof.pitch")),
                                Map.of("measure", "roof.pitch", "tolerance", "3 mm", "marks", 0.3),
                                Map.of("measure", "wall.thickness", "group", "none"),
                                Map.of("measure", "drawing.eaves", "part-marks", List.of(Map.of("within", 1))),
                                Map.of(
                                        "measure",
                                        "rafter.overhang",
                                        "part-marks",
                                        List.of(Map.of("within", 2, "marks", 1))),
                                Map.of("measure", "support.spacing", "needs", Map.of("key", "roof.pitch"))));
        List<Fault> faults = ((GuidelineReading.Refused) Guideline.read(asked, wrong)).faults();
        assertThat(faults).hasSizeGreaterThan(12);
        assertThat(faults).allSatisfy(fault -> assertThat(Reasons.in(Locale.GERMAN).say(fault.accepted()))
                .isNotEqualTo(fault.accepted()));
        assertThat(faults)
                .anySatisfy(fault -> assertThat(Reasons.in(Locale.GERMAN).say(fault.accepted()))
                        .startsWith("eine Zahl von 0 bis"));
    }
}
