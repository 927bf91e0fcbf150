package wallplate.drafting.paper;

/** How dark a piece of ink is. */
public enum Shade {
    FULL(1.0),
    /** What was drawn in an earlier step. */
    LIGHT(0.5),
    /** Guide lines that must not compete with the drawing. */
    FAINT(0.3);

    private final double strength;

    Shade(double strength) {
        this.strength = strength;
    }

    /** From 0, bare paper, to 1, full ink. */
    public double strength() {
        return strength;
    }
}
