package wallplate.web.sheet;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.task.PlainNumber;

/** What a teacher fills in to decide about one mark. */
record MarkForm(@Nullable String verdict, @Nullable String awarded, @Nullable String reason) {

    /** What is wrong with the form, in a sentence; empty where it can stand. */
    Optional<String> fault(MarkEntry mark) {
        if (chosen().isEmpty()) {
            return Optional.of("Choose met, not met, consistent working, or leave it open.");
        }
        Optional<Double> marks = marks(mark);
        if (marks.isEmpty() || marks.get() < 0 || marks.get() > mark.available()) {
            return Optional.of("Marks found: \"%s\"; right would be a number from 0 to %s."
                    .formatted(awarded, PlainNumber.text(mark.available())));
        }
        if (reasonText().isEmpty() && mark.guidelineVerdict() != Verdict.UNDECIDED) {
            return Optional.of("Say in a few words why the mark is changed: the learner and the department will ask.");
        }
        return Optional.empty();
    }

    Optional<Verdict> chosen() {
        for (Verdict candidate : Verdict.values()) {
            if (candidate.word().equals(verdict)) {
                return Optional.of(candidate);
            }
        }
        return Optional.empty();
    }

    /** The marks typed, or where none were, all of them for what is met and none for what is not. */
    Optional<Double> marks(MarkEntry mark) {
        if (awarded == null || awarded.isBlank()) {
            return chosen().map(verdict ->
                    verdict == Verdict.MET || verdict == Verdict.CARRIED ? mark.available() : 0.0);
        }
        OptionalDouble number = PlainNumber.read(awarded);
        return number.isPresent() && Double.isFinite(number.getAsDouble())
                ? Optional.of(number.getAsDouble())
                : Optional.empty();
    }

    String reasonText() {
        return reason == null ? "" : reason.strip();
    }
}
