package wallplate.marking;

/** How a criterion was judged. */
public enum Verdict {
    /** Within the tolerance. */
    MET("met"),
    /** Outside the tolerance, or not drawn. */
    NOT_MET("not-met"),
    /** Right for what the learner drew earlier: credited as consistent working. */
    CARRIED("carried"),
    /** Left to the teacher, with the reason. */
    UNDECIDED("undecided");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    /** The word of the result files. */
    public String word() {
        return word;
    }
}
