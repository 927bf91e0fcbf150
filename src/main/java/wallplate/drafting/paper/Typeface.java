package wallplate.drafting.paper;

/**
 * The lettering of drawings and sheets: a condensed face for what is lettered on the drawing, a plain one for reading.
 *
 * <p>Barlow, by the Barlow project's authors, under the SIL Open Font License 1.1; the files lie in {@code fonts/}.
 */
public enum Typeface {
    LETTERING("BarlowCondensed-Medium.ttf", "Barlow Condensed", 500),
    LETTERING_STRONG("BarlowCondensed-SemiBold.ttf", "Barlow Condensed", 600),
    TEXT("Barlow-Regular.ttf", "Barlow", 400),
    TEXT_STRONG("Barlow-SemiBold.ttf", "Barlow", 600);

    /** Height of a capital as a share of the font size: 700 of 1000 units in all four files. */
    public static final double CAPITAL_SHARE = 0.7;

    private final String file;
    private final String family;
    private final int weight;

    Typeface(String file, String family, int weight) {
        this.file = file;
        this.family = family;
        this.weight = weight;
    }

    public String resource() {
        return "/fonts/" + file;
    }

    public String family() {
        return family;
    }

    /** The weight as in CSS. */
    public int weight() {
        return weight;
    }

    /** The font size whose capitals are as high as asked. */
    public static double sizeForCapitals(double heightMm) {
        return heightMm / CAPITAL_SHARE;
    }
}
