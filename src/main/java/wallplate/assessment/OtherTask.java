package wallplate.assessment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.sheet.LevelPage;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipCatalogue;

/**
 * Whether a sheet may have been drawn for another task than the one that it is marked by. Learners draw single sizes wrong,
 * and a whole drawing at another scale; where many sizes are neither as asked nor what a known slip makes of them, the sheet
 * is likelier another task's. That is a hint to the teacher and changes no mark.
 */
final class OtherTask {

    static final String HINT =
            "So many sizes on this sheet differ from the task that it may be the sheet of another task.";

    /** Fewer say nothing. */
    private static final int FEWEST_SIZES = 8;

    /**
     * Of the sizes measured on sheets of the right task at least two thirds are as asked or have a named slip; on seven to
     * eight of ten sheets of other tasks, whose small parts are often alike, less than three fifths.
     */
    private static final double LEAST_EXPLAINED = 0.6;

    /** Millimetres on paper, or degrees: so near is as asked, however strict a guideline is. */
    private static final double AS_ASKED = 0.5;

    private OtherTask() {}

    /** The page with the hint among its warnings where it belongs there, and without it where it does not. */
    static LevelPage noted(LevelPage page, ExpectedDrawing expected, MeasuredSheet measured, MarkedSheet marked) {
        List<String> warnings = new ArrayList<>(page.warnings());
        warnings.remove(HINT);
        if (!isPrintedFor(page, expected) && isLikely(measured, marked)) {
            warnings.add(HINT);
        }
        return page.withWarnings(warnings);
    }

    static boolean isLikely(MeasuredSheet measured, MarkedSheet marked) {
        return isNotUnderstood(measured) || isMostlyUnexplained(marked);
    }

    private static boolean isPrintedFor(LevelPage page, ExpectedDrawing expected) {
        return page.code()
                .filter(code -> code.taskId().equals(expected.task().id()))
                .isPresent();
    }

    private static boolean isNotUnderstood(MeasuredSheet measured) {
        return measured.measurements().stream()
                        .filter(each -> each.finding() instanceof Finding.Uncertain open
                                && open.reason().equals(MeasuredSheet.NOT_UNDERSTOOD))
                        .count()
                >= FEWEST_SIZES;
    }

    private static boolean isMostlyUnexplained(MarkedSheet marked) {
        List<Mark> sizes = marked.marks().stream().filter(OtherTask::isSize).toList();
        long explained = sizes.stream().filter(OtherTask::isExplained).count();
        return sizes.size() >= FEWEST_SIZES && explained < LEAST_EXPLAINED * sizes.size();
    }

    private static boolean isSize(Mark mark) {
        return mark.verdict() != Verdict.UNDECIDED && deviation(mark).isPresent();
    }

    private static boolean isExplained(Mark mark) {
        return mark.verdict() != Verdict.NOT_MET
                || mark.slips().stream().anyMatch(slip -> !slip.equals(SlipCatalogue.ANY_OTHER_SIZE))
                || deviation(mark).orElseThrow() <= AS_ASKED;
    }

    /** How far a measured size lies from the one asked for; empty where the mark is not about a size. */
    private static Optional<Double> deviation(Mark mark) {
        return mark.expected().orElse(null) instanceof Expected.Size asked
                        && mark.measured().orElse(null) instanceof Finding.Quantity drawn
                ? Optional.of(asked.deviation(drawn.value()))
                : Optional.empty();
    }
}
