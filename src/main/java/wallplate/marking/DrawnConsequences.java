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
        Map<String, Double> drawn = drawnCauses(key);
        List<String> wrong = drawn.keySet().stream().filter(this::isWrong).toList();
        if (wrong.isEmpty()) {
            return Optional.empty();
        }
        Optional<Expected> following = solved(drawn, key);
        if (finding(key) instanceof Finding.Count found && !isFollowing(following, found)) {
            following = nearlyDrawn(drawn).stream()
                    .map(variant -> solved(variant, key))
                    .filter(value -> isFollowing(value, found))
                    .findFirst()
                    .orElse(following);
        }
        return following.map(value -> new Consequence(value, wrong));
    }

    private Map<String, Double> drawnCauses(String key) {
        Map<String, Double> drawn = new TreeMap<>();
        for (String cause : dependencies.causes(key)) {
            if (expected.value(cause).isPresent() && finding(cause) instanceof Finding.Quantity quantity) {
                drawn.put(cause, quantity.value());
            }
        }
        return drawn;
    }

    private Optional<Expected> solved(Map<String, Double> drawn, String key) {
        return Solver.solveAsDrawn(expected.task(), drawn).value(key);
    }

    /** A count jumps where one more just fits: what fits with a size off by its tolerance is as right. */
    private List<Map<String, Double>> nearlyDrawn(Map<String, Double> drawn) {
        List<Map<String, Double>> variants = new ArrayList<>();
        drawn.forEach((cause, value) -> {
            double tolerance =
                    tolerances.forValue(expected.value(cause).orElseThrow()).value();
            for (double nearby : new double[] {value - tolerance, value + tolerance}) {
                Map<String, Double> variant = new TreeMap<>(drawn);
                variant.put(cause, nearby);
                variants.add(variant);
            }
        });
        return variants;
    }

    private static boolean isFollowing(Optional<Expected> following, Finding.Count found) {
        return following
                .filter(value -> value instanceof Expected.Count count && count.number() == found.number())
                .isPresent();
    }

    private boolean isWrong(String cause) {
        Expected asked = expected.value(cause).orElseThrow();
        double tolerance = tolerances.forValue(asked).value();
        return Deviation.between(asked, finding(cause))
                .filter(deviation -> deviation.size() > tolerance)
                .isPresent();
    }

    private Finding finding(String key) {
        return measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElseGet(Finding.Absent::new);
    }
}
