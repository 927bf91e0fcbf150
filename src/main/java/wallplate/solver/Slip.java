package wallplate.solver;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A mistake that learners are known to make, as data: what it does to a value, and what to say about it.
 *
 * @param id as in result files, such as {@code spacing-level}
 * @param name in a few words, for the teacher
 * @param reach what kind of value it gives, and how common it is
 * @param appliesTo the keys that it can happen to
 * @param formula what it makes of the right size
 * @param sentence to the learner, kindly. {@code {what}} is the key's label, {@code {asked}} the right value, {@code
 *     {drawn}} the measured one, {@code {detail}} what the reading adds
 */
public record Slip(
        String id, String name, Reach reach, Predicate<Expected> appliesTo, Formula formula, String sentence) {

    /** What kind of value a slip gives. How common each kind is, is common practice of the drawing class, no source. */
    public enum Reach {
        /** The slip gives a value of its own, from the way this key is measured. */
        PARTICULAR(0.06),
        /** The slip gives a value of its own, and is seldom made. */
        SELDOM(0.012),
        /** The slip gives a value of its own, and can happen to any size. */
        GENERAL(0.01),
        /** The size of another part was taken: values of their own, but so many that no line is looked for by them. */
        BORROWED(0.01),
        /** Many values fit, so that each of them says little for it. */
        LOOSE(0.03);

        private final double share;

        Reach(double share) {
            this.share = share;
        }

        /** Whether its values are worth looking for on a sheet. */
        boolean isLookedFor() {
            return this != BORROWED && this != LOOSE;
        }

        /** Whether the value may follow from the way this key is measured. */
        boolean isOfTheKey() {
            return this == PARTICULAR || this == SELDOM;
        }

        /** The share of all values of a fitting key that such a slip spoils, before a value is looked at. */
        double share() {
            return share;
        }
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

        /** This reading as it is set off by somebody who rounds; a range stays as it is. */
        Stream<Reading> rounded(Rounding rounding) {
            return isRange ? Stream.of(this) : rounding.of(from).stream().map(value -> exactly(value, detail));
        }

        double deviation(double measured) {
            return Math.max(0, Math.max(from - measured, measured - to));
        }

        /**
         * The probability density of a measured value after this reading.
         *
         * @param scatter one standard deviation of hand and measurement together
         */
        double density(double measured, double scatter) {
            double inside = isRange ? 0 : scatter * Math.sqrt(2 * Math.PI);
            if (to < from || to - from + inside <= 0) {
                return 0;
            }
            double beyond = deviation(measured) / scatter;
            return Math.exp(-beyond * beyond / 2) / (to - from + inside);
        }
    }
}
