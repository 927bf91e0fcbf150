package wallplate.moderation;

/** How many sheets a sample has. */
public sealed interface SampleSize {

    /** So many sheets, or all where there are fewer. */
    record Number(int sheets) implements SampleSize {
        public Number {
            if (sheets < 1) {
                throw new IllegalArgumentException("a sample of " + sheets + " sheets; right would be 1 or more");
            }
        }

        @Override
        public int of(int candidates) {
            return Math.min(sheets, candidates);
        }

        @Override
        public String words() {
            return sheets == 1 ? "one sheet" : sheets + " sheets";
        }
    }

    /** A part of the sheets, rounded up to whole ones. */
    record Percent(int percent) implements SampleSize {
        public Percent {
            if (percent < 1 || percent > 100) {
                throw new IllegalArgumentException("a sample of " + percent + " %; right would be 1 to 100 %");
            }
        }

        @Override
        public int of(int candidates) {
            return (candidates * percent + 99) / 100;
        }

        @Override
        public String words() {
            return percent + " % of the sheets, rounded up";
        }
    }

    /** The number of sheets among so many that could be drawn. */
    int of(int candidates);

    String words();
}
