package wallplate.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.solver.Expected;

/**
 * What a drawing was like the last time, by criterion, and how another try differs from it.
 *
 * <p>It travels with the learner's own page as short texts, because nothing of it is kept for longer.
 */
public record LastTry(Map<String, Was> byCriterion) {

    /** A value counts as changed where it moved by more than this many of its standard deviations. */
    private static final double DEVIATIONS = 2;
    /** Less than this is no change that a pencil could aim at: millimetres on paper, or degrees. */
    private static final double LEAST_CHANGE = 0.2;

    public LastTry {
        byCriterion = Map.copyOf(byCriterion);
    }

    /**
     * One criterion the last time.
     *
     * @param value in millimetres on paper or degrees; empty where none was measured
     * @param uncertainty one standard deviation of the value
     */
    public record Was(Verdict verdict, OptionalDouble value, double uncertainty) {

        static Was of(Mark mark) {
            Optional<Finding.Quantity> quantity = quantity(mark);
            return new Was(
                    mark.verdict(),
                    quantity.map(found -> OptionalDouble.of(found.value())).orElse(OptionalDouble.empty()),
                    quantity.map(Finding.Quantity::uncertainty).orElse(0.0));
        }

        private String text() {
            return value.isEmpty() ? verdict.word() : verdict.word() + " " + value.getAsDouble() + " " + uncertainty;
        }

        private static Optional<Was> read(String text) {
            String[] words = text.strip().split(" ");
            for (Verdict verdict : Verdict.values()) {
                if (verdict.word().equals(words[0])) {
                    return Optional.of(withValue(verdict, words));
                }
            }
            return Optional.empty();
        }

        /** A value that cannot be read is none: the text came from outside. */
        private static Was withValue(Verdict verdict, String[] words) {
            try {
                double value = words.length == 3 ? Double.parseDouble(words[1]) : Double.NaN;
                double uncertainty = words.length == 3 ? Double.parseDouble(words[2]) : Double.NaN;
                if (Double.isFinite(value) && Double.isFinite(uncertainty)) {
                    return new Was(verdict, OptionalDouble.of(value), Math.abs(uncertainty));
                }
            } catch (NumberFormatException noNumber) {
                return new Was(verdict, OptionalDouble.empty(), 0);
            }
            return new Was(verdict, OptionalDouble.empty(), 0);
        }
    }

    /** How a criterion differs from the last time. */
    public enum Kind {
        /** Met now and not before. */
        RIGHT_NOW,
        /** Not met now, and met before. */
        WRONG_NOW,
        /** Not met, but its value lies nearer to what is asked. */
        NEARER,
        /** Not met, and its value lies further off. */
        FURTHER
    }

    /** @param was the value the last time; empty where none was measured */
    public record Change(Mark mark, Kind kind, OptionalDouble was) {}

    /** The texts that travel with the page, by criterion. */
    public static Map<String, String> texts(MarkedSheet sheet) {
        Map<String, String> texts = new HashMap<>();
        sheet.marks().forEach(mark -> texts.put(mark.criterion(), Was.of(mark).text()));
        return texts;
    }

    /** What such texts say; what cannot be read is left out. */
    public static LastTry read(Map<String, String> texts) {
        Map<String, Was> byCriterion = new HashMap<>();
        texts.forEach((criterion, text) -> Was.read(text).ifPresent(was -> byCriterion.put(criterion, was)));
        return new LastTry(byCriterion);
    }

    /** Whether there was none. */
    public boolean isNone() {
        return byCriterion.isEmpty();
    }

    /** What is different now, in the guideline's order. */
    public List<Change> changes(MarkedSheet now) {
        List<Change> changes = new ArrayList<>();
        for (Mark mark : now.marks()) {
            Optional.ofNullable(byCriterion.get(mark.criterion()))
                    .flatMap(was -> kind(was, mark).map(kind -> new Change(mark, kind, was.value())))
                    .ifPresent(changes::add);
        }
        return changes;
    }

    private static Optional<Kind> kind(Was was, Mark mark) {
        boolean right = mark.verdict() == Verdict.MET;
        boolean wrong = mark.verdict() == Verdict.NOT_MET;
        if (right && was.verdict() == Verdict.NOT_MET) {
            return Optional.of(Kind.RIGHT_NOW);
        }
        if (wrong && was.verdict() == Verdict.MET) {
            return Optional.of(Kind.WRONG_NOW);
        }
        return wrong && was.verdict() == Verdict.NOT_MET ? moved(was, mark) : Optional.empty();
    }

    private static Optional<Kind> moved(Was was, Mark mark) {
        Optional<Finding.Quantity> now = quantity(mark);
        if (now.isEmpty() || was.value().isEmpty() || mark.expected().isEmpty()) {
            return Optional.empty();
        }
        double before = deviation(mark.expected().get(), was.value().getAsDouble());
        double after = deviation(mark.expected().get(), now.get().value());
        double noise = DEVIATIONS * Math.hypot(was.uncertainty(), now.get().uncertainty());
        if (Math.abs(before - after) <= Math.max(noise, LEAST_CHANGE)) {
            return Optional.empty();
        }
        return Optional.of(after < before ? Kind.NEARER : Kind.FURTHER);
    }

    private static double deviation(Expected expected, double value) {
        return expected instanceof Expected.Size size ? size.deviation(value) : 0;
    }

    private static Optional<Finding.Quantity> quantity(Mark mark) {
        return mark.measured()
                .filter(Finding.Quantity.class::isInstance)
                .map(Finding.Quantity.class::cast);
    }
}
