package wallplate.sheet;

/**
 * From what a sheet's millimetres were taken, and how well they are known.
 *
 * @param lengthMm the nominal length of the bar, or of the longer page side used
 * @param uncertaintyPercent one standard deviation of a level length, in percent
 * @param stretchUncertaintyPercent one standard deviation of the upright scale against the level one, in percent; it
 *     turns a sloping line, and stretches upright lengths
 */
public record Calibration(
        Source source, double lengthMm, double uncertaintyPercent, double stretchUncertaintyPercent) {

    /** What the millimetres were taken from; the word is that of the result files. */
    public enum Source {
        /** The bar that the learner drew. */
        REFERENCE_BAR("reference-bar"),
        /** The edges of the paper, where no bar was found. */
        PAGE_EDGES("page-edges"),
        /** The printed corner marks, where no bar was found. */
        CORNER_MARKS("corner-marks"),
        /** Both ticks were shown by a person. */
        BY_HAND("by-hand");

        private final String word;

        Source(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }
}
