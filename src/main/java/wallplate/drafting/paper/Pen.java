package wallplate.drafting.paper;

import java.util.List;

/**
 * The lines of a drawing by thickness and kind.
 *
 * <p>Thicknesses are of the ISO 128-2 series (0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1 mm); thick to thin is 2 to 1, as ISO
 * 128 asks (the series and the ratio as quoted in secondary sources).
 */
public enum Pen {
    /** A board so thin that its two edges become one line; a title block's border. */
    HEAVY(0.7, List.of()),
    /** Outlines of what is cut. */
    THICK(0.5, List.of()),
    /** Outlines of what is seen beyond. */
    MEDIUM(0.35, List.of()),
    /** Dimensions, leaders, diagonals, break lines. */
    THIN(0.25, List.of()),
    /** Hatching and construction lines. */
    FINE(0.18, List.of()),
    /** Centre lines: long dash, gap, dot, gap. */
    CHAIN(0.18, List.of(6.0, 1.2, 0.4, 1.2)),
    /** Edges that are hidden, or given only to find a place. */
    DASHED(0.18, List.of(2.2, 1.1));

    private final double widthMm;
    private final List<Double> dashesMm;

    Pen(double widthMm, List<Double> dashesMm) {
        this.widthMm = widthMm;
        this.dashesMm = dashesMm;
    }

    public double widthMm() {
        return widthMm;
    }

    /** Lengths of ink and gap in turn; empty for a continuous line. */
    public List<Double> dashesMm() {
        return dashesMm;
    }
}
