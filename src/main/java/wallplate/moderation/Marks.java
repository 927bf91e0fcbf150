package wallplate.moderation;

/** What the records can keep of a mark. */
public final class Marks {

    private Marks() {}

    /** Whether a mark has no more than the two places that the records keep. */
    public static boolean isKept(double mark) {
        return Math.abs(mark * 100 - Math.rint(mark * 100)) < 1e-6;
    }
}
