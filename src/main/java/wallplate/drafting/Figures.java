package wallplate.drafting;

/** Which sizes a drawing's dimensions and labels give. */
public enum Figures {
    /** Real millimetres, as a drawing is dimensioned. */
    REAL,
    /** Millimetres on the paper, as a learner measures them with a ruler. */
    PAPER
}
