package wallplate.marking;

import java.util.List;
import wallplate.solver.SlipFit;

/**
 * What became of one criterion.
 *
 * @param slips the known slips that a wrong value fits, the nearest first
 * @param feedback to the learner
 */
record Judgement(Verdict verdict, double awarded, List<SlipFit> slips, String feedback) {
    Judgement {
        slips = List.copyOf(slips);
    }

    static Judgement met(double marks, String feedback) {
        return new Judgement(Verdict.MET, marks, List.of(), feedback);
    }

    static Judgement notMet(double marks, String feedback) {
        return new Judgement(Verdict.NOT_MET, marks, List.of(), feedback);
    }

    static Judgement undecided(String feedback) {
        return undecided(0, feedback);
    }

    /** Left to the teacher, with the marks that are certain whatever the teacher decides. */
    static Judgement undecided(double certain, String feedback) {
        return new Judgement(Verdict.UNDECIDED, certain, List.of(), feedback);
    }

    /** Whether the value counts as right. */
    boolean isRight() {
        return verdict == Verdict.MET || verdict == Verdict.CARRIED;
    }
}
