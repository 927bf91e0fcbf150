package wallplate.moderation;

/**
 * By what rule sheets are drawn; the same rule draws the same sheets from the same marks.
 *
 * @param seed the number that chance is drawn from; anyone who knows it can draw the sample again
 */
public record SamplingRule(Choice choice, SampleSize size, long seed) {

    /** Which sheets. */
    public enum Choice {
        /** The highest totals, those about the middle, and the lowest, a third of the sample each. */
        TOP_MIDDLE_BOTTOM("top-middle-bottom", "the highest totals, those about the middle and the lowest, a third each"),
        /** Every sheet with the same chance. */
        AT_RANDOM("at-random", "every sheet with the same chance");

        private final String word;
        private final String sentence;

        Choice(String word, String sentence) {
            this.word = word;
            this.sentence = sentence;
        }

        /** The word in the database and in forms. */
        public String word() {
            return word;
        }

        public static Choice of(String word) {
            for (Choice choice : values()) {
                if (choice.word.equals(word)) {
                    return choice;
                }
            }
            throw new IllegalArgumentException("a sample \"" + word + "\"; right would be top-middle-bottom or at-random");
        }
    }

    /** The rule as a sentence for the record. */
    public String words() {
        String chance = choice == Choice.AT_RANDOM ? "drawn" : "equal totals and the order of marking drawn";
        return "%s: %s; %s from the number %d.".formatted(capital(size.words()), choice.sentence, chance, seed);
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
