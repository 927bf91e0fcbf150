package wallplate.marking;

import java.util.List;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.solver.Expected;

/**
 * One criterion's verdict for one sheet.
 *
 * @param criterion the criterion's id, such as {@code roof-pitch}
 * @param title what the criterion asks, in words
 * @param key the measured key that it judges; empty where it rests on several or on the teacher
 * @param awarded marks given; half marks are allowed
 * @param available marks that could be had
 * @param tolerance the tolerance applied, in millimetres on paper or degrees
 * @param slips ids of the known slips that a wrong value fits
 * @param feedback one or two sentences to the learner
 */
public record Mark(
        String criterion,
        String title,
        Optional<String> key,
        Verdict verdict,
        double awarded,
        double available,
        Optional<Expected> expected,
        Optional<Finding> measured,
        Optional<Double> tolerance,
        List<String> slips,
        String feedback) {

    public Mark {
        slips = List.copyOf(slips);
    }

    /** Whether the marks are fewer than what is met brings, which only a person can have decided. */
    public boolean isLowered() {
        return verdict == Verdict.MET && awarded < available;
    }

    /** Whether another mark for the same criterion differs in its words at most. */
    boolean saysTheSameAs(Mark other) {
        return verdict == other.verdict
                && awarded == other.awarded
                && available == other.available
                && expected.equals(other.expected)
                && measured.equals(other.measured);
    }
}
