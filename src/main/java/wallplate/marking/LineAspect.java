package wallplate.marking;

import java.util.Arrays;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.LineMeasure;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/**
 * What a guideline may ask of the lines themselves, with what is usually accepted.
 *
 * <p>Breadths are those of ISO 128-2, whose series grows by the square root of two: 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0 mm;
 * narrow lines, such as hatching and dimension lines, are half as broad as the wide ones of outlines (series and proportion from
 * memory). A share is accepted one step of the series to either side of a half. How dark a construction line may be and how many
 * poor ends pass are common practice of the drawing class, with no source.
 */
public enum LineAspect {
    OUTLINE_BREADTH("outline-breadth", LineMeasure.OUTLINE_BREADTH, false, 0.35, 0.7),
    HATCHING_BREADTH("hatching-breadth", LineMeasure.HATCHING_BREADTH, false, 0.18, 0.35),
    /** The breadth of the hatching in percent of the outlines'. */
    HATCHING_SHARE("hatching-share", LineMeasure.HATCHING_BREADTH, true, 35, 71),
    DIMENSION_BREADTH("dimension-breadth", LineMeasure.DIMENSION_BREADTH, false, 0.18, 0.35),
    /** The breadth of the dimension lines in percent of the outlines'. */
    DIMENSION_SHARE("dimension-share", LineMeasure.DIMENSION_BREADTH, true, 35, 71),
    CONSTRUCTION_BREADTH("construction-breadth", LineMeasure.CONSTRUCTION_BREADTH, false, 0, 0.35),
    CONSTRUCTION_DARKNESS("construction-darkness", LineMeasure.CONSTRUCTION_DARKNESS, false, 0, 40),
    POOR_CORNERS("poor-corners", LineMeasure.POOR_CORNERS, false, 0, 2);

    private final String word;
    private final LineMeasure measure;
    private final boolean isShare;
    private final LineRange usual;

    LineAspect(String word, LineMeasure measure, boolean isShare, double from, double to) {
        this.word = word;
        this.measure = measure;
        this.isShare = isShare;
        this.usual = new LineRange(from, to);
    }

    /** The word of the task files. */
    public String word() {
        return word;
    }

    /** What its values are counted in: millimetres, percent, or nothing for a number of things. */
    public String unit() {
        return isShare ? "%" : measure.unit();
    }

    public LineRange usual() {
        return usual;
    }

    /** The measured key that it rests on first. */
    public String key() {
        return measure.key();
    }

    /** The greatest value that can be asked for. */
    double most() {
        return switch (unit()) {
            case "mm" -> 5;
            case "%" -> 500;
            default -> 100;
        };
    }

    /** The aspect of that word. */
    static Optional<LineAspect> of(String word) {
        return Arrays.stream(values()).filter(aspect -> aspect.word.equals(word)).findFirst();
    }

    /** What is to be judged of a sheet; empty where its measurements were made before this was measured. */
    Optional<Finding> reading(MeasuredSheet measured) {
        Optional<Finding> own = measured.measurement(key()).map(Measurement::finding);
        if (!isShare) {
            return own;
        }
        Optional<Finding> outlines =
                measured.measurement(LineMeasure.OUTLINE_BREADTH.key()).map(Measurement::finding);
        return own.flatMap(finding -> outlines.map(broad -> share(finding, broad)));
    }

    private static Finding share(Finding narrow, Finding broad) {
        if (narrow instanceof Finding.Quantity part && broad instanceof Finding.Quantity whole && whole.value() > 0) {
            double share = 100 * part.value() / whole.value();
            double uncertainty = share * Math.hypot(part.uncertainty() / part.value(), whole.uncertainty() / whole.value());
            return new Finding.Quantity(share, uncertainty);
        }
        return narrow instanceof Finding.Quantity ? broad : narrow;
    }
}
