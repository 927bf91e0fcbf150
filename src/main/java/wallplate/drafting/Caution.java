package wallplate.drafting;

/** The sentence that stands wherever structural sizes show. */
public final class Caution {

    public static final String SENTENCE =
            "A drawing exercise, not a design: local building regulations and a licensed professional decide.";

    private Caution() {}
}
