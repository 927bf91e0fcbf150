package wallplate.drafting;

/**
 * What a model answer shows beside the drawing itself.
 *
 * @param dimensions dimension lines, and sizes in the labels
 * @param labels names of the parts with their leaders
 * @param figures the sizes to give
 */
public record DrawingOptions(boolean dimensions, boolean labels, Figures figures) {

    /** Everything, with real sizes. */
    public static final DrawingOptions FULL = new DrawingOptions(true, true, Figures.REAL);

    public DrawingOptions withDimensions(boolean shown) {
        return new DrawingOptions(shown, labels, figures);
    }

    public DrawingOptions withLabels(boolean shown) {
        return new DrawingOptions(dimensions, shown, figures);
    }

    public DrawingOptions withFigures(Figures chosen) {
        return new DrawingOptions(dimensions, labels, chosen);
    }
}
