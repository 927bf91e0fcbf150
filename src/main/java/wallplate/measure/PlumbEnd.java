package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.stroke.Edge;

/**
 * The plumb end on the inside of a roof that no break line cuts off: the upright on which most of the long sloping lines
 * end, and which closes rafter and covering there.
 */
final class PlumbEnd {

    private static final double LONG_MM = 25;
    /** How far beside the end a sloping line may stop or run past. */
    private static final double ENDS_WITHIN_MM = 1.5;
    /** A rafter's two edges and one of the covering's. */
    private static final int FEWEST_LINES = 3;
    private static final double LEAST_COVERAGE = 0.4;

    private PlumbEnd() {}

    /** The upright that closes the roof. */
    static Optional<Edge> of(DrawingView view) {
        return whereLinesEnd(view).filter(end -> end.coverage() >= LEAST_COVERAGE);
    }

    /** The upright on which most of the long sloping lines end, whether it is seen or not. */
    static Optional<Edge> whereLinesEnd(DrawingView view) {
        List<Run> slopes = view.sloping().stream().filter(run -> run.length() >= LONG_MM).toList();
        List<Run> best = List.of();
        double bestLength = 0;
        for (Run candidate : slopes) {
            double x = candidate.segment().end().x();
            List<Run> ending = slopes.stream()
                    .filter(run -> Math.abs(run.segment().end().x() - x) < ENDS_WITHIN_MM)
                    .toList();
            double length = ending.stream().mapToDouble(Run::length).sum();
            if (ending.size() >= FEWEST_LINES && length > bestLength) {
                bestLength = length;
                best = ending;
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(closing(view, best));
    }

    private static Edge closing(DrawingView view, List<Run> ending) {
        double[] places = ending.stream().mapToDouble(run -> run.segment().end().x()).sorted().toArray();
        double low = ending.stream().mapToDouble(run -> run.segment().end().y()).min().orElseThrow();
        double high = ending.stream().mapToDouble(run -> run.segment().end().y()).max().orElseThrow();
        return view.fit().fit(Level.uprightAt(places[places.length / 2]), low + 0.3, high - 0.3, 0.12, 0.35);
    }
}
