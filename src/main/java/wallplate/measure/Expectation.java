package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipCatalogue;
import wallplate.solver.Solver;

/**
 * What the task says should be there, as hypotheses to try first: the right value, then those of the known slips.
 *
 * <p>It ranks readings of the strokes; a value is never taken from it.
 */
final class Expectation {

    /** What a value costs that fits no hypothesis; a slip costs one, the right value nothing. */
    static final double FREE_COST = 3;

    private static final double SLIP_COST = 1;
    /** How far a learner's line may lie from where it was meant to be, one standard deviation. */
    private static final double DRAWN_SIGMA_MM = 0.45;
    /** How far off a size may be by careless drawing alone. */
    private static final double CARELESS_MM = 0.8;

    private final ExpectedDrawing drawing;
    private final double scaleFactor;

    Expectation(ExpectedDrawing drawing) {
        this(drawing, 1);
    }

    private Expectation(ExpectedDrawing drawing, double scaleFactor) {
        this.drawing = drawing;
        this.scaleFactor = scaleFactor;
    }

    /** The same expectation for a drawing that is so many times larger than asked for. */
    Expectation atScale(double factor) {
        return new Expectation(drawing, factor);
    }

    /** By how much the drawing that is expected is larger than asked for. */
    double scaleFactor() {
        return scaleFactor;
    }

    /** What {@link #scaleFactor} would be at the other scales in use. */
    List<Double> otherScaleFactors() {
        return SlipCatalogue.factorsAtOtherScales(drawing.task().scale().denominator());
    }

    boolean asks(String key) {
        return drawing.value(key).isPresent();
    }

    /** Whether the task's detail has this part at all, whether the task asks for it or not. */
    boolean knows(String part) {
        return Solver.keys(drawing.task()).stream().anyMatch(key -> key.key().startsWith(part + "."));
    }

    /** Whether the task's own drawing shows anything of this part. */
    boolean draws(String part) {
        return drawing.lines().stream().anyMatch(line -> line.part().equals(part));
    }

    boolean asksPart(String part) {
        return drawing.values().stream().anyMatch(value -> value.key().startsWith(part + "."));
    }

    /** The exact paper length or angle of a key; empty where the task does not ask for it. */
    Optional<Double> exact(String key) {
        return drawing.value(key).flatMap(value -> number(value, scaleFactor));
    }

    double exactOr(String key, double otherwise) {
        return exact(key).orElse(otherwise);
    }

    private static Optional<Double> number(Expected value, double scaleFactor) {
        if (value instanceof Expected.Length length) {
            return Optional.of(length.exactMm() * scaleFactor);
        }
        return value instanceof Expected.Angle angle ? Optional.of(angle.degrees()) : Optional.empty();
    }

    /** How far the heel lies inside the outer face of the wall, on paper. */
    double setIn() {
        return line("wall", "outer").map(line -> -line.segment().start().x() * scaleFactor).orElse(0.0);
    }

    /** Whether posts are set out from the wall's outer face rather than from its centre line. */
    boolean postsFromOuterFace() {
        return drawing.task().sizes().word("posts.set-out-from").filter("outer-face"::equals).isPresent();
    }

    /** Whether the task's own drawing shows this edge of a part. */
    boolean draws(String part, String edge) {
        return line(part, edge).isPresent();
    }

    private Optional<DrawnLine> line(String part, String edge) {
        return drawing.lines().stream()
                .filter(line -> line.part().equals(part) && line.edge().equals(edge))
                .findFirst();
    }

    /** The right value, exact and as rounded, and the slips' values. */
    List<Double> hypotheses(String key) {
        List<Double> values = new ArrayList<>();
        drawing.value(key).ifPresent(value -> {
            if (value instanceof Expected.Length length) {
                values.add(length.exactMm() * scaleFactor);
                if (length.drawnMm() > 0) {
                    values.add(length.drawnMm() * scaleFactor);
                }
            } else {
                number(value, scaleFactor).ifPresent(values::add);
            }
        });
        double factor = key.equals("roof.pitch") ? 1 : scaleFactor;
        drawing.slipsFor(key).stream().map(slip -> slip.value() * factor).forEach(values::add);
        return values;
    }

    /** Whether a length is more than three times, or less than a fifth of, what is expected and fits no slip. */
    boolean isImplausible(String key, double valueMm) {
        Optional<Double> exact = exact(key);
        if (exact.isEmpty() || exact.get() < 0.6 || key.equals("roof.pitch")) {
            return false;
        }
        boolean fits = hypotheses(key).stream().anyMatch(value -> Math.abs(value - valueMm) < 1);
        return !fits && (valueMm > 3 * exact.get() + 1 || valueMm < exact.get() / 5 - 0.5);
    }

    /** Whether a length is, but for careless drawing, the right one or what a known slip would make of it. */
    boolean explains(String key, double valueMm) {
        double right = exactOr(key, 0);
        boolean isRight = Math.abs(right - valueMm) < Math.max(CARELESS_MM, 0.1 * right);
        return isRight || hypotheses(key).stream().anyMatch(value -> Math.abs(value - valueMm) < DRAWN_SIGMA_MM);
    }

    /** How unlikely a length is for a key: 0 where it is right, 1 at a slip's value, about 3 and more elsewhere. */
    double cost(String key, double valueMm) {
        Optional<Double> exact = exact(key);
        if (exact.isEmpty()) {
            return FREE_COST;
        }
        double cost = FREE_COST + Math.abs(Math.log(Math.max(valueMm, 0.05) / Math.max(exact.get(), 0.05)));
        int rank = 0;
        for (double hypothesis : hypotheses(key)) {
            // The exact and the rounded value come first; a slip's may lie as near by chance.
            boolean right = rank < 2 && Math.abs(hypothesis - exact.get()) <= 0.5;
            double off = (valueMm - hypothesis) / DRAWN_SIGMA_MM;
            cost = Math.min(cost, (right ? 0 : SLIP_COST) + off * off / 2);
            rank++;
        }
        return cost;
    }
}
