package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Segment;
import wallplate.stroke.Stroke;

/**
 * A piece of a stroke that is as dark as an outline: what is left of it when the construction line that it was drawn
 * over is taken away.
 */
record Run(Segment segment, Stroke stroke, double ink) {

    private static final int SMOOTHING_STEPS = 5;

    double length() {
        return segment.length();
    }

    /** The height of its lower end. */
    double lowY() {
        return Math.min(segment.start().y(), segment.end().y());
    }

    /** The height of its upper end. */
    double highY() {
        return Math.max(segment.start().y(), segment.end().y());
    }

    /** The outline pieces of a stroke, in its own order. */
    static List<Run> of(Stroke stroke, double leastInk) {
        List<Run> runs = new ArrayList<>();
        int steps = stroke.inkAlong().steps();
        int start = -1;
        for (int step = 0; step <= steps; step++) {
            boolean dark = step < steps && smoothed(stroke, step) >= leastInk;
            if (dark && start < 0) {
                start = step;
            }
            if (!dark && start >= 0) {
                add(runs, stroke, start, step);
                start = -1;
            }
        }
        return runs;
    }

    private static void add(List<Run> runs, Stroke stroke, int start, int end) {
        double steps = stroke.inkAlong().steps();
        double sum = 0;
        for (int step = start; step < end; step++) {
            sum += stroke.inkAlong().at(step);
        }
        Segment line = stroke.centreLine();
        runs.add(new Run(
                new Segment(line.at(start / steps), line.at(end / steps)), stroke, sum / Math.max(1, end - start)));
    }

    private static double smoothed(Stroke stroke, int step) {
        double sum = 0;
        int counted = 0;
        for (int near = step - SMOOTHING_STEPS / 2; near <= step + SMOOTHING_STEPS / 2; near++) {
            if (near >= 0 && near < stroke.inkAlong().steps()) {
                sum += stroke.inkAlong().at(near);
                counted++;
            }
        }
        return sum / counted;
    }
}
