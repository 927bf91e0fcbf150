package wallplate.measure;

/** What is measured of a drawing's lines themselves, whatever they are lines of. */
public enum LineMeasure {
    /** The median breadth of the outlines, in millimetres. */
    OUTLINE_BREADTH("outline-breadth", "mm"),
    /** The median breadth of the hatch lines in walling that is cut, in millimetres. */
    HATCHING_BREADTH("hatching-breadth", "mm"),
    /** The median breadth of the dimension lines, in millimetres. */
    DIMENSION_BREADTH("dimension-breadth", "mm"),
    /** The median breadth of construction lines that were left, in millimetres. */
    CONSTRUCTION_BREADTH("construction-breadth", "mm"),
    /** How dark the construction lines are, in percent of the outlines' darkness; the median. */
    CONSTRUCTION_DARKNESS("construction-darkness", "%"),
    /** How many ends overshoot their corner or stop short of it. */
    POOR_CORNERS("poor-corners", "");

    static final String PREFIX = "line-quality.";

    private final String word;
    private final String unit;

    LineMeasure(String word, String unit) {
        this.word = word;
        this.unit = unit;
    }

    /** The key of its measurement, such as {@code line-quality.outline-breadth}. */
    public String key() {
        return PREFIX + word;
    }

    /** What its values are counted in; nothing for a number of things. */
    public String unit() {
        return unit;
    }
}
