package wallplate.web.moderation;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import wallplate.moderation.Agreement;
import wallplate.moderation.AgreementReport;
import wallplate.moderation.Decision;
import wallplate.moderation.Marks;
import wallplate.task.PlainNumber;

/** What a person fills in to decide about the marks of a set. */
record DecisionForm(
        @Nullable String decision,
        @Nullable String criterion,
        @Nullable String by,
        @Nullable String from,
        @Nullable String to,
        @Nullable String reason) {

    private static final int LONGEST_REASON = 900;

    static DecisionForm empty() {
        return new DecisionForm(null, null, null, null, null, null);
    }

    /** What is wrong with the form, in a sentence; empty where it can be carried out. */
    Optional<String> fault(AgreementReport report) {
        if (!List.of("accept", "adjust", "mark-again").contains(text(decision))) {
            return Optional.of("Choose whether the marks stand, are adjusted, or the set is marked again.");
        }
        if (reasonText().isEmpty() || reasonText().length() > LONGEST_REASON) {
            return Optional.of("Say why, in at most 900 letters: the decision is kept with its reason.");
        }
        return text(decision).equals("adjust") ? adjustmentFault(report) : Optional.empty();
    }

    private Optional<String> adjustmentFault(AgreementReport report) {
        Optional<Agreement> chosen = report.criteria().stream()
                .filter(one -> one.id().equals(text(criterion)))
                .findFirst();
        if (chosen.isEmpty()) {
            return Optional.of("Choose the criterion that is adjusted.");
        }
        double most = chosen.get().available();
        double number = number(by, 0);
        if (!(Math.abs(number) >= 0.01 && Math.abs(number) <= most) || !Marks.isKept(number)) {
            return Optional.of("Adjusted by: found \"%s\"; right would be a number from −%s to %s that is not 0, to a hundredth."
                    .formatted(text(by), PlainNumber.text(most), PlainNumber.text(most)));
        }
        if (!(number(from, 0) >= 0 && number(from, 0) <= number(to, report.total().available()))) {
            return Optional.of("Limits: found \"%s\" to \"%s\"; right would be totals from low to high.".formatted(text(from), text(to)));
        }
        return Optional.empty();
    }

    /** The decision of a form without a fault. */
    Decision chosen(AgreementReport report) {
        return switch (text(decision)) {
            case "accept" -> new Decision.Accept();
            case "mark-again" -> new Decision.MarkAgain();
            default -> new Decision.Adjust(
                    text(criterion), number(by, 0), number(from, 0), number(to, report.total().available()));
        };
    }

    String reasonText() {
        return text(reason);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    /** The number that was typed; NaN where it is none. */
    private static double number(@Nullable String typed, double otherwise) {
        if (text(typed).isEmpty()) {
            return otherwise;
        }
        return PlainNumber.read(text(typed).replace('−', '-')).orElse(Double.NaN);
    }
}
