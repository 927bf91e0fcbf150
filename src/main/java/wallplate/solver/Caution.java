package wallplate.solver;

/** What stands wherever structural sizes are shown. */
public final class Caution {

    public static final String TEXT =
            "This is a drawing exercise, not a design: local building regulations and a licensed professional decide.";

    private Caution() {}
}
