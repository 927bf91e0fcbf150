package wallplate.drafting.paper;

import java.util.Locale;

/** Kinds of ink that a reader may want to show, hide or weigh apart; the words are class names and layer names. */
public enum Layer {
    /** Outline of something cut through. */
    CUT_OUTLINE,
    /** Outline of something seen beyond the cutting plane. */
    SEEN_OUTLINE,
    /** Crossing diagonals of timber cut across the grain. */
    DIAGONAL,
    /** Lines at 45 degrees in cut walling. */
    HATCH,
    /** Where the drawing is cut off. */
    BREAK,
    /** Construction lines, drawn faint and lined in later. */
    CONSTRUCTION,
    /** Dimension lines, their arrowheads and figures. */
    DIMENSION,
    /** Names of parts with their leaders. */
    LABEL,
    /** Title and scale under the drawing. */
    TITLE,
    /** Frame and title block. */
    FRAME,
    /** Marks and codes for the reader of the scanned sheet. */
    MARK,
    /** The reference bar or the place for it. */
    REFERENCE_BAR,
    /** Running text. */
    NOTE;

    /** In lower case with hyphens, such as {@code cut-outline}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
