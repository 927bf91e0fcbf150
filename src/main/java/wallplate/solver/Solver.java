package wallplate.solver;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import wallplate.solver.eaves.EavesSection;
import wallplate.solver.monopitch.MonoPitchSection;
import wallplate.solver.parts.Detail;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.Step;
import wallplate.task.DrawingTask;

/** Solves tasks. A new detail is registered here, and its schema with the task module. */
public final class Solver {

    private static final List<Detail> DETAILS = List.of(new EavesSection(), new MonoPitchSection());

    private static final Map<String, List<MeasuredKey>> KEYS =
            DETAILS.stream().collect(Collectors.toUnmodifiableMap(Detail::id, Solver::keysOf));

    private Solver() {}

    /**
     * Everything that follows from a task: lines, values, and what known slips would give.
     *
     * @throws IllegalArgumentException for a task of a detail that is not registered, which reading never accepts
     */
    public static ExpectedDrawing solve(DrawingTask task) {
        Detail detail = detail(task);
        RoofFrame frame = detail.frame(task);
        List<DrawnLine> lines = new ArrayList<>();
        List<Expected> values = new ArrayList<>();
        for (Part part : detail.parts()) {
            if (part.isDrawn(frame)) {
                lines.addAll(part.lines(frame));
                values.addAll(part.values(frame));
            }
        }
        ExpectedDrawing right = new ExpectedDrawing(task, lines, values, List.of());
        return new ExpectedDrawing(task, lines, values, Slips.values(right));
    }

    /**
     * Solves the task again with some values as a learner drew them: what is right for the parts that follow from them.
     *
     * @param drawnPaperValues by measured key such as {@code roof.pitch}; millimetres on paper, degrees. Keys that no
     *     other follows from, and values with which the detail could not be built, change nothing
     */
    public static ExpectedDrawing solveAsDrawn(DrawingTask task, Map<String, Double> drawnPaperValues) {
        return solve(new AsDrawn(task).with(drawnPaperValues));
    }

    /** What follows from the task beyond the measured keys: run, rise, lengths along the slope, numbers, posts. */
    public static List<DerivedValue> derived(DrawingTask task) {
        return detail(task).derived(task);
    }

    /** How the drawing is made by hand, step by step; the lines of all steps together are the lines of the drawing. */
    public static List<ConstructionStep> construction(DrawingTask task) {
        Detail detail = detail(task);
        RoofFrame frame = detail.frame(task);
        List<ConstructionStep> steps = new ArrayList<>();
        for (Part part : detail.drawingOrder()) {
            if (part.isDrawn(frame)) {
                part.steps(frame).forEach(step -> steps.add(numbered(steps.size() + 1, part, step)));
            }
        }
        return steps;
    }

    private static ConstructionStep numbered(int number, Part part, Step step) {
        return new ConstructionStep(
                number,
                part.name(),
                step.title(),
                step.calculation(),
                step.instruction(),
                step.faint(),
                step.linedIn());
    }

    /** Everything that can be measured on a drawing of the task's detail, whether this task asks for it or not. */
    public static List<MeasuredKey> keys(DrawingTask task) {
        return KEYS.get(detail(task).id());
    }

    private static List<MeasuredKey> keysOf(Detail detail) {
        return detail.parts().stream().flatMap(part -> part.keys().stream()).toList();
    }

    private static Detail detail(DrawingTask task) {
        return DETAILS.stream()
                .filter(candidate -> candidate.id().equals(task.detail()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no detail is called " + task.detail()));
    }
}
