package wallplate.task;

import java.util.List;

/**
 * One size or choice that a detail asks for: what the form shows, what the task file accepts.
 *
 * <p>The dotted {@link #key()} is the way to it in the task file, such as {@code ceiling.brander.width}.
 */
public sealed interface SizeKey {

    String key();

    /** The trade's own word for it, as a form shows it. */
    String label();

    /** One sentence on what it is or where it is taken. */
    String help();

    /** A usual value, as it would stand in a task file. */
    String example();

    /** What would be accepted, in words. */
    String accepted();

    /** What a {@link Quantity} is counted in. */
    enum Unit {
        /** Real millimetres. */
        MILLIMETRES("mm"),
        /** Degrees above level. */
        DEGREES("°"),
        /** A number of things, without a fraction. */
        NUMBER("");

        private final String sign;

        Unit(String sign) {
            this.sign = sign;
        }

        /** As it stands behind a value; empty for a number of things. */
        public String sign() {
            return sign;
        }
    }

    /**
     * A length, an angle or a number of things within a range, both ends of it included.
     *
     * @param lowest the smallest value accepted
     * @param highest the largest value accepted
     */
    record Quantity(String key, String label, Unit unit, double lowest, double highest, double usual, String help)
            implements SizeKey {

        public static Quantity length(
                String key, String label, double lowest, double highest, double usual, String help) {
            return new Quantity(key, label, Unit.MILLIMETRES, lowest, highest, usual, help);
        }

        public boolean allows(double value) {
            boolean whole = unit != Unit.NUMBER || value == Math.rint(value);
            return value >= lowest && value <= highest && whole;
        }

        @Override
        public String example() {
            return PlainNumber.text(usual);
        }

        @Override
        public String accepted() {
            String range = PlainNumber.text(lowest) + " to " + PlainNumber.text(highest);
            return switch (unit) {
                case MILLIMETRES -> "a plain number of real millimetres from " + range;
                case DEGREES -> "a plain number of degrees from " + range;
                case NUMBER -> "a whole number from " + range;
            };
        }
    }

    /** One of a few words. */
    record Choice(String key, String label, List<Option> options, String help) implements SizeKey {

        /**
         * @param word as in the task file
         * @param label as a form shows it
         */
        public record Option(String word, String label) {}

        public Choice {
            options = List.copyOf(options);
        }

        public boolean allows(String word) {
            return options.stream().anyMatch(option -> option.word().equals(word));
        }

        @Override
        public String example() {
            return options.get(0).word();
        }

        @Override
        public String accepted() {
            return "one of "
                    + String.join(", ", options.stream().map(Option::word).toList());
        }
    }

    /** A name in the trade's words, which the drawing's labels use. */
    record Name(String key, String label, String example, String help) implements SizeKey {

        /** The longest name that still fits beside a drawing. */
        public static final int LONGEST = 60;

        @Override
        public String accepted() {
            return "a name of 1 to " + LONGEST + " characters, such as " + example;
        }
    }
}
