package wallplate.marking;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipFit;

/** Judges one measured key against what was asked, or against what follows from the learner's own drawing. */
final class KeyJudge {

    /** Takes up the rounding of decimal tolerances in binary numbers; far below what can be measured. */
    private static final double ROUNDING = 1e-9;

    private final Guideline guideline;
    private final ExpectedDrawing expected;
    private final MeasuredSheet measured;
    private final Consequences consequences;
    private final SlipNaming slips;
    private final Wording wording;

    KeyJudge(
            Guideline guideline,
            ExpectedDrawing expected,
            MeasuredSheet measured,
            Consequences consequences,
            Wording wording) {
        this.guideline = guideline;
        this.expected = expected;
        this.measured = measured;
        this.consequences = consequences;
        this.slips = new SlipNaming(expected, measured, guideline.tolerances(), wording);
        this.wording = wording;
    }

    /** The tolerance for a criterion's own key in the measured unit; empty where there is nothing to tolerate. */
    Optional<Double> toleranceInUse(Criterion criterion, Expected asked) {
        if (asked instanceof Expected.YesNo || asked instanceof Expected.Word) {
            return Optional.empty();
        }
        Tolerance tolerance =
                criterion.tolerance().filter(own -> own.fits(asked)).orElse(usual(asked));
        return Optional.of(tolerance.forMeasured(asked, expected.task().scale()));
    }

    private Tolerance usual(Expected asked) {
        return guideline.tolerances().forValue(asked);
    }

    Judgement judge(Criterion criterion, String key) {
        Expected asked =
                expected.value(key).orElseThrow(() -> new IllegalArgumentException("the task does not ask for " + key));
        Finding found = measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElseGet(() -> Finding.Uncertain.because(wording.notLookedFor()));
        if (found instanceof Finding.Uncertain uncertain) {
            return Judgement.undecided(wording.cannotTell(uncertain.reason()));
        }
        if (found instanceof Finding.Absent) {
            return Judgement.notMet(0, wording.notDrawn(asked));
        }
        return judgeValue(criterion, asked, found);
    }

    private Judgement judgeValue(Criterion criterion, Expected asked, Finding found) {
        Deviation deviation = deviation(asked, found);
        double doubt = guideline.borderlineDeviations();
        double tolerance = toleranceInUse(criterion, asked).orElse(0.0);
        if (isMet(deviation.greatest(doubt), tolerance)) {
            return Judgement.met(criterion.marks(), wording.met(asked, found));
        }
        Optional<Judgement> carried = carried(criterion, asked, found);
        if (carried.isPresent()) {
            return carried.get();
        }
        double least = marksFor(criterion, asked, deviation.greatest(doubt), tolerance);
        double most = marksFor(criterion, asked, deviation.least(doubt), tolerance);
        if (least != most) {
            return Judgement.undecided(least, wording.borderline(asked, found, tolerance));
        }
        if (isMet(deviation.size(), tolerance)) {
            return Judgement.met(criterion.marks(), wording.met(asked, found));
        }
        List<SlipFit> named = slips.slipsFor(asked.key(), tolerance);
        return new Judgement(Verdict.NOT_MET, least, named, wording.wrong(asked, found, tolerance, least, named));
    }

    private Optional<Judgement> carried(Criterion criterion, Expected asked, Finding found) {
        if (!criterion.consistentWorking()) {
            return Optional.empty();
        }
        return consequences
                .of(asked.key())
                .filter(consequence -> {
                    double tolerance =
                            toleranceInUse(criterion, consequence.expected()).orElse(0.0);
                    double size = deviation(consequence.expected(), found).greatest(guideline.borderlineDeviations());
                    return isMet(size, tolerance);
                })
                .map(consequence -> new Judgement(
                        Verdict.CARRIED, criterion.marks(), List.of(), wording.carried(asked, found, consequence)));
    }

    /** Full marks within the tolerance, the part marks of the narrowest band beyond it, else none. */
    private double marksFor(Criterion criterion, Expected asked, double deviation, double tolerance) {
        if (isMet(deviation, tolerance)) {
            return criterion.marks();
        }
        Tolerance unit = criterion.tolerance().filter(own -> own.fits(asked)).orElse(usual(asked));
        return criterion.partMarks().stream()
                .sorted(Comparator.comparingDouble(Band::limit))
                .filter(band -> isMet(
                        deviation,
                        unit.withValue(band.limit())
                                .forMeasured(asked, expected.task().scale())))
                .mapToDouble(Band::marks)
                .findFirst()
                .orElse(0);
    }

    private static boolean isMet(double deviation, double tolerance) {
        return deviation <= tolerance + ROUNDING;
    }

    private static Deviation deviation(Expected asked, Finding found) {
        return Deviation.between(asked, found)
                .orElseThrow(
                        () -> new IllegalArgumentException("%s cannot be compared with %s".formatted(found, asked)));
    }
}
