package wallplate.marking;

import java.util.Comparator;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;

/** Judges how the lines themselves are drawn. */
final class LineJudge {

    /** Takes up the rounding of decimal limits in binary numbers. */
    private static final double ROUNDING = 1e-9;

    private final double borderlineDeviations;
    private final MeasuredSheet measured;
    private final LineWords words;
    private final Wording wording;

    LineJudge(Guideline guideline, MeasuredSheet measured, Wording wording) {
        this.borderlineDeviations = guideline.borderlineDeviations();
        this.measured = measured;
        this.words = wording.lines();
        this.wording = wording;
    }

    Judgement judge(Criterion criterion, Subject.Lines lines) {
        Finding found = lines.aspect().reading(measured).orElseGet(() -> Finding.Uncertain.because(wording.notLookedFor()));
        if (found instanceof Finding.Quantity quantity) {
            return judge(criterion, lines, quantity.value(), quantity.uncertainty());
        }
        if (found instanceof Finding.Count count) {
            return judge(criterion, lines, count.number(), 0);
        }
        if (found instanceof Finding.Uncertain uncertain) {
            return Judgement.undecided(wording.cannotTell(uncertain.reason()));
        }
        // Nothing is left of the construction: there is nothing that could be too broad or too dark.
        return Judgement.met(criterion.marks(), words.nothingLeft());
    }

    private Judgement judge(Criterion criterion, Subject.Lines lines, double value, double uncertainty) {
        double doubt = borderlineDeviations * uncertainty;
        LineRange accepted = lines.accepted();
        double most = marks(criterion, accepted.beyond(nearest(accepted, value, doubt)));
        double least = marks(criterion, Math.max(accepted.beyond(value - doubt), accepted.beyond(value + doubt)));
        if (least != most) {
            return Judgement.undecided(least, words.borderline(lines, value));
        }
        return accepted.beyond(value) <= ROUNDING
                ? Judgement.met(criterion.marks(), words.met(lines, value))
                : Judgement.notMet(least, words.notMet(lines, value, least));
    }

    /** The value within the doubt that is most to the learner's good. */
    private static double nearest(LineRange accepted, double value, double doubt) {
        double middle = (accepted.from() + accepted.to()) / 2;
        return Math.max(value - doubt, Math.min(value + doubt, middle));
    }

    private static double marks(Criterion criterion, double beyond) {
        if (beyond <= ROUNDING) {
            return criterion.marks();
        }
        return criterion.partMarks().stream()
                .sorted(Comparator.comparingDouble(Band::limit))
                .filter(band -> beyond <= band.limit() + ROUNDING)
                .mapToDouble(Band::marks)
                .findFirst()
                .orElse(0);
    }
}
