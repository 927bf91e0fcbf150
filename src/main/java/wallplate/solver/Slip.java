package wallplate.solver;

import java.util.List;
import java.util.function.Predicate;

/**
 * A mistake that learners are known to make, as data: what it does to a value, and what to say about it.
 *
 * @param id as in result files, such as {@code spacing-level}
 * @param name in a few words, for the teacher
 * @param reach how much a fitting value says
 * @param appliesTo the keys that it can happen to
 * @param formula what it makes of the right size
 * @param sentence to the learner, kindly. {@code {what}} is the key's label, {@code {asked}} the right value, {@code
 *     {drawn}} the measured one, {@code {detail}} what the reading adds
 */
public record Slip(
        String id, String name, Reach reach, Predicate<Expected> appliesTo, Formula formula, String sentence) {

    /** How much it says that a value fits the slip. */
    public enum Reach {
        /** The slip gives a value of its own, from the way this key is measured. */
        PARTICULAR,
        /** The slip gives a value of its own, and can happen to any size. */
        GENERAL,
        /** Many values fit: it is named only where nothing else fits. */
        LOOSE
    }

    /** What a slip makes of a right size. */
    @FunctionalInterface
    public interface Formula {

        /**
         * The readings for one right value.
         *
         * @param size the right paper length or angle, exact or rounded as drawn
         * @param drawing all else that is right, the pitch among it
         */
        List<Reading> readings(Expected expected, double size, ExpectedDrawing drawing);
    }

    /**
     * A value, or a range of values, that a slip gives.
     *
     * @param isRange whether any value between the two is as likely as another
     * @param detail what the sentence adds for this reading; may be empty
     */
    public record Reading(double from, double to, boolean isRange, String detail) {

        public static Reading exactly(double value) {
            return exactly(value, "");
        }

        public static Reading exactly(double value, String detail) {
            return new Reading(value, value, false, detail);
        }

        public static Reading between(double from, double to) {
            return new Reading(from, to, true, "");
        }

        /**
         * This reading of the exact size together with that of the rounded one: a value may lie anywhere between the
         * two, a range is what both have in common.
         */
        Reading with(Reading ofRounded) {
            double lower = isRange ? Math.max(from, ofRounded.from) : Math.min(from, ofRounded.from);
            double upper = isRange ? Math.min(to, ofRounded.to) : Math.max(to, ofRounded.to);
            return new Reading(lower, upper, isRange, detail);
        }

        double deviation(double measured) {
            return Math.max(0, Math.max(from - measured, measured - to));
        }

        /** Whether a measured value comes within the tolerance of the value, or lies within the range. */
        boolean isFittedBy(double measured, double tolerance) {
            return deviation(measured) <= (isRange ? 0 : tolerance);
        }
    }
}
