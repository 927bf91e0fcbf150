package wallplate.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wallplate.sheet.TruthCheck.Errors;
import wallplate.sheet.TruthCheck.Outcome;

/** The test sheets with truth that lie beside the project, where they are there. */
class DevSheetsTest {

    private static final Path SHEETS = Path.of("../shared/scans/dev");

    private static final List<Outcome> OUTCOMES = new ArrayList<>();

    @BeforeAll
    static void readEverySheet() throws IOException {
        assumeTrue(Files.isDirectory(SHEETS), "the test sheets are not there: " + SHEETS);
        for (TruthSheet sheet : TruthSheet.under(SHEETS)) {
            OUTCOMES.add(TruthCheck.check(sheet));
        }
    }

    @Test
    void refusesEveryHopelessSheet() {
        assertThat(OUTCOMES)
                .filteredOn(outcome -> outcome.sheet().hopeless())
                .isNotEmpty()
                .noneMatch(Outcome::readable);
    }

    @Test
    void readsEveryOtherSheet() {
        assertThat(OUTCOMES)
                .filteredOn(outcome -> !outcome.sheet().hopeless())
                .filteredOn(outcome -> !outcome.readable())
                .extracting(TruthCheck::line)
                .isEmpty();
    }

    @Test
    void turnsNoSheetTheWrongWay() {
        assertThat(errors(true)).allMatch(Errors::upright);
        assertThat(errors(false)).allMatch(Errors::upright);
    }

    /** Lines along a T-square differ among themselves by 0.07 degrees, which limits what any sheet can tell. */
    @Test
    void findsTheDrawingsLevel() {
        assertThat(percentile(errors(false), Errors::rotationDegrees)).isLessThan(0.05);
        assertThat(percentile(errors(true), Errors::rotationDegrees)).isLessThan(0.09);
    }

    @Test
    void scalesByTheBarAsDrawn() {
        assertThat(percentile(errors(false), Errors::scalePercent)).isLessThan(0.25);
        assertThat(percentile(errors(true), Errors::scalePercent)).isLessThan(0.6);
    }

    @Test
    void keepsShapesTrue() {
        assertThat(percentile(errors(false), Errors::placeMm)).isLessThan(0.1);
        assertThat(percentile(errors(true), Errors::placeMm)).isLessThan(0.1);
    }

    private static List<Errors> errors(boolean photographs) {
        return OUTCOMES.stream()
                .filter(outcome -> outcome.sheet().photograph() == photographs)
                .flatMap(outcome -> outcome.errors().stream())
                .toList();
    }

    private static double percentile(List<Errors> errors, ToDoubleFunction<Errors> value) {
        return TruthCheck.percentile(
                errors.stream().map(value::applyAsDouble).toList(), 0.95);
    }
}
