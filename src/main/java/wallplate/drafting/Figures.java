package wallplate.drafting;

/** Which sizes a drawing's dimensions and labels give. */
public enum Figures {
    /** Real millimetres, as a drawing is dimensioned. */
    REAL,
    /** Exact millimetres on the paper. */
    PAPER,
    /** Millimetres on the paper rounded to whole ones, as learners commonly draw them. */
    DRAWN
}
