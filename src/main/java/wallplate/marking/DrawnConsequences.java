package wallplate.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Dependencies;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/**
 * What follows from the sizes that a learner drew, by the geometry of the detail: the task is solved again with them.
 *
 * <p>Only wrong causes make a consequence; the right ones beside them are taken as they were drawn, too.
 */
final class DrawnConsequences implements Consequences {

    private final ExpectedDrawing expected;
    private final MeasuredSheet measured;
    private final Tolerances tolerances;
    private final Dependencies dependencies;

    DrawnConsequences(ExpectedDrawing expected, MeasuredSheet measured, Tolerances tolerances) {
        this.expected = expected;
        this.measured = measured;
        this.tolerances = tolerances;
        this.dependencies = Dependencies.of(expected.task());
    }

    @Override
    public Optional<Consequence> of(String key) {
        Map<String, Double> drawn = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        for (String cause : dependencies.causes(key)) {
            Optional<Expected> asked = expected.value(cause);
            if (asked.isPresent() && finding(cause) instanceof Finding.Quantity quantity) {
                drawn.put(cause, quantity.value());
                if (isWrong(asked.get(), quantity)) {
                    wrong.add(cause);
                }
            }
        }
        if (wrong.isEmpty()) {
            return Optional.empty();
        }
        return Solver.solveAsDrawn(expected.task(), drawn).value(key).map(value -> new Consequence(value, wrong));
    }

    private boolean isWrong(Expected asked, Finding.Quantity drawn) {
        double tolerance = tolerances.forValue(asked).value();
        return Deviation.between(asked, drawn).filter(deviation -> deviation.size() > tolerance).isPresent();
    }

    private Finding finding(String key) {
        return measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElseGet(Finding.Absent::new);
    }
}
