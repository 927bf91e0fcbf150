package wallplate.sheet;

/**
 * From what a sheet's millimetres were taken, and how well they are known.
 *
 * @param lengthMm the nominal length of the bar, or of the longer page side used
 * @param uncertaintyPercent one standard deviation of a level length, in percent
 * @param stretchUncertaintyPercent one standard deviation of the upright scale against the level one, in percent; it
 *     turns a sloping line, and stretches upright lengths
 * @param levelUncertaintyDegrees one standard deviation of the page's level against the drawing's own, in degrees
 */
public record Calibration(
        Source source,
        double lengthMm,
        double uncertaintyPercent,
        double stretchUncertaintyPercent,
        double levelUncertaintyDegrees) {

    /** How well a page's level is known where nobody has said, in degrees. */
    private static final double USUAL_LEVEL = 0.1;

    /** A calibration of a page whose level is known as well as usual. */
    public Calibration(Source source, double lengthMm, double uncertaintyPercent, double stretchUncertaintyPercent) {
        this(source, lengthMm, uncertaintyPercent, stretchUncertaintyPercent, USUAL_LEVEL);
    }

    /**
     * One standard deviation of a length that is measured square to a line, in millimetres: what the scale and, of its
     * upright share, the stretch leave open.
     *
     * @param inclinationDegrees of the line, 0 for level
     */
    public double lengthDeviation(double length, double inclinationDegrees) {
        double upright = Math.pow(Math.cos(Math.toRadians(inclinationDegrees)), 2);
        return Math.abs(length) * Math.hypot(uncertaintyPercent, upright * stretchUncertaintyPercent) / 100;
    }

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
