package wallplate.marking;

import java.util.List;
import java.util.Optional;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipFit;

/** Judges one sheet, criterion by criterion. */
final class SheetJudge {

    private final MeasuredSheet measured;
    private final ExpectedDrawing expected;
    private final Guideline guideline;
    private final Wording wording;
    private final KeyJudge keys;
    private final LineJudge lines;

    SheetJudge(Guideline guideline, ExpectedDrawing expected, MeasuredSheet measured, Wording wording) {
        this.guideline = guideline;
        this.expected = expected;
        this.measured = measured;
        this.wording = wording;
        this.keys = new KeyJudge(
                guideline,
                expected,
                measured,
                new DrawnConsequences(expected, measured, guideline.tolerances()),
                wording);
        this.lines = new LineJudge(guideline, measured, wording);
    }

    Mark mark(Criterion criterion) {
        Judgement judgement = preconditionFault(criterion).orElseGet(() -> judge(criterion));
        Optional<String> key = key(criterion.subject());
        Optional<Expected> value = key.flatMap(expected::value);
        return new Mark(
                criterion.id(),
                criterion.title().orElseGet(() -> wording.title(criterion.subject())),
                key,
                judgement.verdict(),
                judgement.awarded(),
                criterion.marks(),
                value,
                key.map(this::finding),
                value.flatMap(asked -> keys.toleranceInUse(criterion, asked)),
                judgement.slips().stream().map(SlipFit::slip).toList(),
                judgement.feedback());
    }

    private static Optional<String> key(Subject subject) {
        if (subject instanceof Subject.Lines drawn) {
            return Optional.of(drawn.aspect().key());
        }
        return subject instanceof Subject.OneKey one ? Optional.of(one.key()) : Optional.empty();
    }

    private Judgement judge(Criterion criterion) {
        if (criterion.subject() instanceof Subject.OneKey one) {
            return keys.judge(criterion, one.key());
        }
        if (criterion.subject() instanceof Subject.SeveralKeys several) {
            return judgeSeveral(criterion, several.keys());
        }
        if (criterion.subject() instanceof Subject.PartDrawn drawn) {
            return judgePart(criterion, drawn.part());
        }
        if (criterion.subject() instanceof Subject.Lines drawn) {
            return lines.judge(criterion, drawn);
        }
        return Judgement.undecided(wording.teacherLooks(((Subject.TeachersJudgement) criterion.subject()).note()));
    }

    /** Why a criterion earns nothing or cannot be decided yet; empty where its precondition holds or there is none. */
    private Optional<Judgement> preconditionFault(Criterion criterion) {
        if (criterion.precondition().isEmpty()) {
            return Optional.empty();
        }
        Precondition needed = criterion.precondition().get();
        Finding found = finding(needed.key());
        if (found instanceof Finding.Count count && count.number() >= needed.atLeast()) {
            return Optional.empty();
        }
        if (found instanceof Finding.Uncertain uncertain) {
            return Optional.of(Judgement.undecided(wording.cannotTell(uncertain.reason())));
        }
        return Optional.of(Judgement.notMet(0, wording.tooFewDrawn(needed)));
    }

    private Judgement judgeSeveral(Criterion criterion, List<String> several) {
        List<Judgement> each = several.stream()
                .map(key -> keys.judge(criterion.only(key), key))
                .toList();
        long right = each.stream().filter(Judgement::isRight).count();
        long open =
                each.stream().filter(one -> one.verdict() == Verdict.UNDECIDED).count();
        double least = marksForRight(criterion, right, several.size());
        if (least != marksForRight(criterion, right + open, several.size())) {
            return Judgement.undecided(least, wording.severalOpen(right, open, several.size()));
        }
        boolean carried = each.stream().anyMatch(one -> one.verdict() == Verdict.CARRIED);
        Verdict verdict = right < several.size() ? Verdict.NOT_MET : carried ? Verdict.CARRIED : Verdict.MET;
        List<SlipFit> slips =
                each.stream().flatMap(one -> one.slips().stream()).distinct().toList();
        return new Judgement(verdict, least, slips, wording.several(several, each));
    }

    private static double marksForRight(Criterion criterion, long right, int all) {
        if (right == all) {
            return criterion.marks();
        }
        return criterion.partMarks().stream()
                .filter(band -> right >= band.limit())
                .mapToDouble(Band::marks)
                .max()
                .orElse(0);
    }

    private Judgement judgePart(Criterion criterion, String part) {
        List<Finding> findings = measured.measurements().stream()
                .filter(measurement -> measurement.key().startsWith(part + "."))
                .map(measurement -> measurement.finding())
                .toList();
        if (findings.stream().anyMatch(SheetJudge::showsSomething)) {
            return Judgement.met(criterion.marks(), wording.partDrawn(part));
        }
        if (findings.isEmpty() || findings.stream().anyMatch(Finding.Uncertain.class::isInstance)) {
            return Judgement.undecided(wording.cannotTell(wording.partInDoubt(part)));
        }
        return Judgement.notMet(0, wording.partNotDrawn(part));
    }

    private static boolean showsSomething(Finding finding) {
        return finding.isMeasured() && !(finding instanceof Finding.Count count && count.number() == 0);
    }

    private Finding finding(String key) {
        return measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElseGet(() -> Finding.Uncertain.because(wording.notLookedFor()));
    }
}
