package wallplate.drafting.paper;

/** Which point of a line of text its place names. */
public enum Alignment {
    START(0, "start"),
    MIDDLE(0.5, "middle"),
    END(1, "end");

    private final double share;
    private final String word;

    Alignment(double share, String word) {
        this.share = share;
        this.word = word;
    }

    /** The share of the text's length that lies before its place. */
    public double share() {
        return share;
    }

    /** The word of SVG's text-anchor. */
    public String word() {
        return word;
    }
}
