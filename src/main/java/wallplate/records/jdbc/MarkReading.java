package wallplate.records.jdbc;

import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.measure.Finding;
import wallplate.records.MarkEntry.Reading;
import wallplate.solver.Expected;

/** What was asked and what was found, laid flat for a table row. */
final class MarkReading {

    private static final OptionalDouble NO_NUMBER = OptionalDouble.empty();

    private MarkReading() {}

    static Reading of(Optional<Expected> expected, Optional<Finding> measured) {
        Reading asked = expected.map(MarkReading::asked).orElseGet(() -> asked("", NO_NUMBER, NO_NUMBER, Optional.empty()));
        return measured.map(finding -> found(asked, finding)).orElse(asked);
    }

    private static Reading asked(Expected expected) {
        return switch (expected) {
            case Expected.Length length ->
                asked(
                        "mm",
                        OptionalDouble.of(length.exactMm()),
                        OptionalDouble.of(length.drawnMm() == 0 ? length.exactMm() : length.drawnMm()),
                        Optional.empty());
            case Expected.Angle angle ->
                asked("deg", OptionalDouble.of(angle.degrees()), OptionalDouble.of(angle.degrees()), Optional.empty());
            case Expected.Count count ->
                asked("count", OptionalDouble.of(count.number()), OptionalDouble.of(count.number()), Optional.empty());
            case Expected.YesNo yesNo -> asked("yes-no", NO_NUMBER, NO_NUMBER, Optional.of(word(yesNo.yes())));
            case Expected.Word word -> asked("word", NO_NUMBER, NO_NUMBER, Optional.of(word.word()));
        };
    }

    private static Reading asked(String unit, OptionalDouble exact, OptionalDouble rounded, Optional<String> word) {
        return new Reading(
                unit, exact, rounded, word, "none", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.empty());
    }

    private static Reading found(Reading asked, Finding finding) {
        return switch (finding) {
            case Finding.Quantity quantity ->
                found(
                        asked,
                        "measured",
                        OptionalDouble.of(quantity.value()),
                        OptionalDouble.of(quantity.uncertainty()),
                        Optional.empty(),
                        Optional.empty());
            case Finding.Count count ->
                found(asked, "measured", OptionalDouble.of(count.number()), NO_NUMBER, Optional.empty(), Optional.empty());
            case Finding.YesNo yesNo ->
                found(asked, "measured", NO_NUMBER, NO_NUMBER, Optional.of(word(yesNo.yes())), Optional.empty());
            case Finding.Word word ->
                found(asked, "measured", NO_NUMBER, NO_NUMBER, Optional.of(word.word()), Optional.empty());
            case Finding.Absent absent ->
                found(asked, "absent", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.empty());
            case Finding.Uncertain uncertain ->
                found(asked, "uncertain", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.of(uncertain.reason()));
        };
    }

    private static Reading found(
            Reading asked,
            String finding,
            OptionalDouble measured,
            OptionalDouble uncertainty,
            Optional<String> word,
            Optional<String> reason) {
        return new Reading(
                asked.unit(),
                asked.expected(),
                asked.expectedRounded(),
                asked.expectedWord(),
                finding,
                measured,
                uncertainty,
                word,
                reason);
    }

    private static String word(boolean yes) {
        return yes ? "yes" : "no";
    }
}
