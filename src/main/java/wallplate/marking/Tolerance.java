package wallplate.marking;

import java.util.Locale;
import wallplate.solver.Expected;
import wallplate.task.Scale;

/**
 * How far a drawn value may lie from the right one and still count.
 *
 * @param value in the unit beside it; never negative
 */
public record Tolerance(double value, Unit unit) {

    /** What a tolerance is counted in; the word is that of the task files. */
    public enum Unit {
        /** Millimetres on paper: for lengths. */
        PAPER_MM("mm"),
        /** Millimetres of the real building: for lengths. */
        REAL_MM("mm real"),
        /** Percent of the exact length: for lengths that are not nothing. */
        PERCENT("%"),
        /** Degrees: for angles. */
        DEGREES("degrees"),
        /** A number of things: for counts. */
        THINGS("things");

        private final String word;

        Unit(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Tolerance {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException("a tolerance must be nought or more, not " + value);
        }
    }

    public static Tolerance paperMm(double value) {
        return new Tolerance(value, Unit.PAPER_MM);
    }

    public static Tolerance degrees(double value) {
        return new Tolerance(value, Unit.DEGREES);
    }

    public static Tolerance things(int number) {
        return new Tolerance(number, Unit.THINGS);
    }

    /** Every one must be there: no more and no fewer. */
    public static Tolerance exactly() {
        return things(0);
    }

    /** The same tolerance with another value. */
    public Tolerance withValue(double other) {
        return new Tolerance(other, unit);
    }

    /** Whether a value of this kind can be judged with this unit. */
    public boolean fits(Expected expected) {
        if (expected instanceof Expected.Length length) {
            return switch (unit) {
                case PAPER_MM, REAL_MM -> true;
                case PERCENT -> length.exactMm() != 0;
                case DEGREES, THINGS -> false;
            };
        }
        if (expected instanceof Expected.Angle) {
            return unit == Unit.DEGREES;
        }
        return expected instanceof Expected.Count && unit == Unit.THINGS;
    }

    /** The tolerance in the unit that the value is measured in: millimetres on paper, degrees or things. */
    public double forMeasured(Expected expected, Scale scale) {
        if (!fits(expected)) {
            throw new IllegalArgumentException(
                    "%s cannot be judged with a tolerance in %s".formatted(expected, unit.word));
        }
        return switch (unit) {
            case PAPER_MM, DEGREES, THINGS -> value;
            case REAL_MM -> scale.onPaper(value);
            case PERCENT -> Math.abs(((Expected.Length) expected).exactMm()) * value / 100;
        };
    }

    /** As a task file has it, such as {@code 1.0 mm}. */
    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s %s", value, unit.word);
    }
}
