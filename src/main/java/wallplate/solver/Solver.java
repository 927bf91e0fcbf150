package wallplate.solver;

import java.util.ArrayList;
import java.util.List;
import wallplate.solver.eaves.EavesSection;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.RoofFrame;
import wallplate.task.DrawingTask;

/** Solves tasks. A new detail is registered here, and its schema with the task module. */
public final class Solver {

    private static final List<Detail> DETAILS = List.of(new EavesSection());

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
        return new ExpectedDrawing(task, lines, values, List.of());
    }

    private static Detail detail(DrawingTask task) {
        return DETAILS.stream()
                .filter(candidate -> candidate.id().equals(task.detail()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no detail is called " + task.detail()));
    }
}
