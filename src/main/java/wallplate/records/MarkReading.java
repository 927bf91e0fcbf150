package wallplate.records;

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
        if (expected instanceof Expected.Length length) {
            return asked("mm", length.exactMm(), length.drawnMm() == 0 ? length.exactMm() : length.drawnMm());
        }
        if (expected instanceof Expected.Angle angle) {
            return asked("deg", angle.degrees(), angle.degrees());
        }
        if (expected instanceof Expected.Count count) {
            return asked("count", count.number(), count.number());
        }
        if (expected instanceof Expected.YesNo yesNo) {
            return asked("yes-no", NO_NUMBER, NO_NUMBER, Optional.of(word(yesNo.yes())));
        }
        return asked("word", NO_NUMBER, NO_NUMBER, Optional.of(((Expected.Word) expected).word()));
    }

    private static Reading asked(String unit, double exact, double rounded) {
        return asked(unit, OptionalDouble.of(exact), OptionalDouble.of(rounded), Optional.empty());
    }

    private static Reading asked(String unit, OptionalDouble exact, OptionalDouble rounded, Optional<String> word) {
        return new Reading(
                unit, exact, rounded, word, "none", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.empty());
    }

    private static Reading found(Reading asked, Finding finding) {
        if (finding instanceof Finding.Quantity quantity) {
            return measured(asked, OptionalDouble.of(quantity.value()), OptionalDouble.of(quantity.uncertainty()));
        }
        if (finding instanceof Finding.Count count) {
            return measured(asked, OptionalDouble.of(count.number()), NO_NUMBER);
        }
        if (finding instanceof Finding.YesNo yesNo) {
            return found(asked, "measured", NO_NUMBER, NO_NUMBER, Optional.of(word(yesNo.yes())), Optional.empty());
        }
        if (finding instanceof Finding.Word word) {
            return found(asked, "measured", NO_NUMBER, NO_NUMBER, Optional.of(word.word()), Optional.empty());
        }
        if (finding instanceof Finding.Uncertain uncertain) {
            return found(asked, "uncertain", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.of(uncertain.reason()));
        }
        return found(asked, "absent", NO_NUMBER, NO_NUMBER, Optional.empty(), Optional.empty());
    }

    private static Reading measured(Reading asked, OptionalDouble value, OptionalDouble uncertainty) {
        return found(asked, "measured", value, uncertainty, Optional.empty(), Optional.empty());
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
