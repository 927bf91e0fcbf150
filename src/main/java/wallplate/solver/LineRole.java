package wallplate.solver;

/** What a line of the expected drawing is for; line weights and matching follow from it. */
public enum LineRole {
    /** Outline of something cut through: the thickest line. */
    CUT_OUTLINE,
    /** Outline of something seen beyond the cutting plane. */
    SEEN_OUTLINE,
    /** One of the two crossing diagonals of timber cut across the grain. */
    DIAGONAL,
    /** A line of 45 degree hatching. */
    HATCH,
    /** Where the drawing is cut off. */
    BREAK
}
