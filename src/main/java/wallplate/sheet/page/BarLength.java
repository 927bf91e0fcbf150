package wallplate.sheet.page;

/**
 * How long the reference bar should be on a rough page, and how well that page's millimetres are known beforehand.
 *
 * @param nominalMm the length that the learner was asked to draw
 * @param tolerance the share of it by which a bar may differ in rough millimetres and still be the bar
 * @param scaleDeviation how well the rough millimetres are known, as a share and one standard deviation
 * @param trueToSize whether the paper's edges or printed marks give the rough millimetres
 */
public record BarLength(double nominalMm, double tolerance, double scaleDeviation, boolean trueToSize) {

    /** How far off a bar may be where the rough scale is a guess. */
    private static final double GUESSED_SCALE = 0.09;
    /** The same where the paper's edges or a stated resolution give the rough scale: a ruler read wrongly. */
    private static final double KNOWN_SCALE = 0.045;
    /** How well a bar is drawn with a ruler, in millimetres, and how well cut paper's size is known, as one deviation. */
    private static final double DRAWN = 0.15;

    private static final double PAPER = 0.0015;
    /** How well a scanner keeps the resolution that it states, and how nearly a sheet that fills its picture does so. */
    private static final double STATED = 0.005;

    private static final double FILLED = 0.007;
    private static final double AGREEING_DEVIATIONS = 3;

    /** The length on a rough page. */
    public static BarLength on(RoughPage rough, double nominalMm) {
        double tolerance =
                switch (rough.scale()) {
                    case FILLED_PICTURE -> GUESSED_SCALE;
                    // Against the paper's edges only a bar that has the resolution on its side.
                    case STATED_RESOLUTION -> rough.isContradicted() ? RoughPage.STATED_WRONG : KNOWN_SCALE;
                    case MARKS, EDGES, OPPOSITE_EDGES -> KNOWN_SCALE;
                };
        double scaleDeviation =
                switch (rough.scale()) {
                    case MARKS, EDGES, OPPOSITE_EDGES -> PAPER;
                    case STATED_RESOLUTION -> STATED;
                    case FILLED_PICTURE -> FILLED;
                };
        return new BarLength(nominalMm, tolerance, scaleDeviation, rough.isTrueToSize());
    }

    /** Whether a line of this length could be the bar. */
    boolean isPossible(double roughMm) {
        return Math.abs(roughMm - nominalMm) <= longestDifference();
    }

    /** The largest difference that is possible, in rough millimetres. */
    double longestDifference() {
        return tolerance * nominalMm;
    }

    /** Whether a bar of this length is as long as asked by the paper's own size; never where that is not known. */
    boolean isBorneOutByPaper(double roughMm) {
        return trueToSize && isBorneOut(roughMm);
    }

    /** Whether a bar of this length is as long as asked, as well as the rough scale can tell. */
    boolean isBorneOut(double roughMm) {
        return Math.abs(roughMm - nominalMm) <= AGREEING_DEVIATIONS * Math.hypot(DRAWN, scaleDeviation * nominalMm);
    }
}
