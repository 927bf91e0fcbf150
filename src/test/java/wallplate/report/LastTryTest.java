package wallplate.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.report.LastTry.Change;
import wallplate.report.LastTry.Kind;
import wallplate.solver.Expected;

class LastTryTest {

    /** 45 mm is asked; all values have a standard deviation of 0.1 mm. */
    @ParameterizedTest
    @CsvSource({
        "not-met, 42,   met,     45,   RIGHT_NOW",
        "met,     45,   not-met, 42,   WRONG_NOW",
        "not-met, 40,   not-met, 42,   NEARER",
        "not-met, 50,   not-met, 42,   NEARER",
        "not-met, 42,   not-met, 40,   FURTHER",
        "not-met, 42,   not-met, 42.2, ",
        "met,     45.4, met,     45,   ",
        "undecided, 42, met,     45,   ",
    })
    void saysWhatIsDifferent(String was, double before, String is, double now, Kind kind) {
        LastTry last = LastTry.read(LastTry.texts(sheet(was, before)));

        List<Change> changes = last.changes(sheet(is, now));

        assertThat(changes).extracting(Change::kind).isEqualTo(kind == null ? List.of() : List.of(kind));
        changes.forEach(change -> assertThat(change.was()).hasValue(before));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "perhaps 3 4", "not-met x y", "not-met 1e999 0.1", "not-met 3"})
    void takesNoHarmFromTextsThatItDidNotWrite(String text) {
        LastTry last = LastTry.read(Map.of("spacing", text, "unknown", "met 3 4"));

        assertThat(last.changes(sheet("not-met", 40))).isEmpty();
    }

    @Test
    void isNoneWithoutTexts() {
        assertThat(LastTry.read(Map.of()).isNone()).isTrue();
        assertThat(LastTry.read(LastTry.texts(sheet("met", 45))).isNone()).isFalse();
    }

    private static MarkedSheet sheet(String verdict, double value) {
        Verdict given = List.of(Verdict.values()).stream()
                .filter(one -> one.word().equals(verdict))
                .findFirst()
                .orElseThrow();
        Mark mark = new Mark(
                "spacing",
                "Purlin spacing",
                Optional.of("support.spacing"),
                given,
                given == Verdict.MET ? 1 : 0,
                1,
                Optional.of(new Expected.Length("support.spacing", 900, 45, 45, "900 / 20 = 45 mm")),
                Optional.of(new Finding.Quantity(value, 0.1)),
                Optional.of(1.0),
                List.of(),
                "");
        return new MarkedSheet("default", List.of(mark), List.of());
    }
}
