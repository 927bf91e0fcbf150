package wallplate.measure;

import java.util.List;

/** What can be said of one key of a sheet. */
public sealed interface Finding {

    /** A length in millimetres on paper or an angle in degrees, with one standard deviation. */
    record Quantity(double value, double uncertainty) implements Finding {}

    /** A number of things drawn. */
    record Count(int number) implements Finding {}

    /** Whether something is there. */
    record YesNo(boolean yes) implements Finding {}

    /** One of a few words, such as the side of the eaves. */
    record Word(String word) implements Finding {}

    /** The part is not drawn. */
    record Absent() implements Finding {}

    /**
     * The program cannot tell.
     *
     * @param reason one sentence for the teacher
     * @param readings the values between which it cannot choose; may be empty
     */
    record Uncertain(String reason, List<Double> readings) implements Finding {

        public Uncertain {
            readings = List.copyOf(readings);
        }

        public static Uncertain because(String reason) {
            return new Uncertain(reason, List.of());
        }
    }

    /** Whether a value was measured, as opposed to absent or uncertain. */
    default boolean isMeasured() {
        return !(this instanceof Absent) && !(this instanceof Uncertain);
    }
}
