package wallplate.web.tasks;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.ModelAnswer;
import wallplate.solver.Advice;
import wallplate.solver.BriefCheck;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.MeasuredKey;
import wallplate.solver.SlipValue;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;

/**
 * The model answer of a task with its sizes on paper.
 *
 * @param svg the drawing as an element of a page
 * @param slips what learners get wrong, by size; a size without a known slip is left out
 * @param advice what is possible but unusual
 */
record TaskPreview(String svg, List<Size> sizes, List<SlipsOfSize> slips, List<Advice> advice) {

    /**
     * One size of the drawing.
     *
     * @param label in the trade's words
     * @param value as a page shows it
     * @param how from where to where it is measured
     */
    record Size(String label, Expected value, String working, String how) {}

    /**
     * What known slips would make of one size.
     *
     * @param label the size in the trade's words
     */
    record SlipsOfSize(String label, Expected right, List<SlipOfSize> slips) {}

    /**
     * @param value what would be drawn, as a value of the same kind as the right one
     * @param sentence as the learner would be told
     */
    record SlipOfSize(double value, String unit, String sentence) {}

    static TaskPreview of(DrawingTask task, DrawingOptions options) {
        ExpectedDrawing expected = Solver.solve(task);
        List<Size> sizes = sizes(expected);
        return new TaskPreview(
                ModelAnswer.of(expected).with(options).svg(), sizes, slips(expected, sizes), BriefCheck.check(task));
    }

    private static List<Size> sizes(ExpectedDrawing expected) {
        Map<String, MeasuredKey> keys = Solver.keys(expected.task()).stream()
                .collect(Collectors.toMap(MeasuredKey::key, Function.identity(), (one, same) -> one));
        return expected.values().stream()
                .map(value -> size(value, Optional.ofNullable(keys.get(value.key())), expected.task()))
                .toList();
    }

    private static List<SlipsOfSize> slips(ExpectedDrawing expected, List<Size> sizes) {
        return sizes.stream()
                .map(size -> new SlipsOfSize(
                        size.label(), size.value(), slips(size.value(), expected.slipsFor(size.value().key()))))
                .filter(size -> !size.slips().isEmpty())
                .toList();
    }

    private static List<SlipOfSize> slips(Expected right, List<SlipValue> values) {
        String unit = right instanceof Expected.Angle ? "deg" : right instanceof Expected.Count ? "count" : "mm";
        return values.stream()
                .map(slip -> new SlipOfSize(slip.value(), unit, slip.sentence()))
                .toList();
    }

    private static Size size(Expected value, Optional<MeasuredKey> key, DrawingTask task) {
        return new Size(
                key.map(known -> known.labelFor(task)).orElse(value.key()),
                value,
                working(value),
                key.map(MeasuredKey::howMeasured).orElse(""));
    }

    private static String working(Expected value) {
        if (value instanceof Expected.Length length) {
            return length.working();
        }
        if (value instanceof Expected.Angle angle) {
            return angle.working();
        }
        if (value instanceof Expected.Count count) {
            return count.working();
        }
        return "";
    }
}
