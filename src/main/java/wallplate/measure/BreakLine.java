package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.stroke.Edge;

/** Finds the break line, which ends the drawing on the inside. */
final class BreakLine {

    /** How far a line that is to tell where the break line is may run on beyond it. */
    static final double RUNS_ON_MM = 16;

    /** A line is a long one of its family from this share of the longest on. */
    private static final double OF_LONGEST = 0.6;
    /** So many long sloping lines are a roof's; leaders and construction lines are fewer. */
    private static final int MOST_PASSING = 3;

    private static final double SHORTEST_MM = 15;
    private static final double SHORTEST_ENDING_MM = 25;
    /** How far above or below an upright a line may end and still end at it. */
    private static final double BEYOND_ITS_ENDS_MM = 3;
    /** The frame's level lines end together too; sloping ones only at the break line. */
    private static final double SLOPING_COUNTS = 3;
    /** What is longer counts no more than this: a frame's lines are longer than any of the drawing. */
    private static final double COUNTED_MM = 120;

    private static final int FEWEST_ENDS = 2;

    private BreakLine() {}

    /** The upright at which most long sloping and level lines end. */
    static Optional<Edge> of(DrawingView view) {
        Run best = null;
        double bestScore = 0;
        double longest = view.sloping().stream().mapToDouble(Run::length).max().orElse(0);
        List<Run> longOnes = view.sloping().stream().filter(run -> run.length() > OF_LONGEST * longest).toList();
        for (Run upright : view.upright()) {
            Segment line = upright.stroke().centreLine();
            double score = line.length() < SHORTEST_MM || isPassed(line, longOnes) ? 0 : score(view, line);
            if (score > bestScore) {
                bestScore = score;
                best = upright;
            }
        }
        return Optional.ofNullable(best).map(run -> view.fit(new Run(run.stroke().centreLine(), run.stroke(), run.ink()), 1));
    }

    /**
     * Whether a roof's long lines go on beyond an upright further than construction lines do: where a scan has lost the thin
     * break line, a face of the wall with a leader that ends on it may look like one.
     */
    private static boolean isPassed(Segment upright, List<Run> longOnes) {
        return longOnes.stream().filter(run -> beyond(upright, run.segment().end()) > LongLines.LONG_RUNS_ON_MM).count()
                >= MOST_PASSING;
    }

    /** The millimetres of line that end at an upright, weighed by their kind; 0 where too few do. */
    private static double score(DrawingView view, Segment upright) {
        double score = 0;
        int slopingEnds = 0;
        int ends = 0;
        for (List<Run> family : List.of(view.sloping(), view.level())) {
            boolean slopes = family == view.sloping();
            for (Run run : family) {
                double part = run.length() < SHORTEST_ENDING_MM ? 0 : endsAt(upright, run.segment().end());
                if (part > 0) {
                    score += (slopes ? SLOPING_COUNTS : 1) * part * Math.min(run.length(), COUNTED_MM);
                    slopingEnds += slopes ? 1 : 0;
                    ends++;
                }
            }
        }
        if (ends < FEWEST_ENDS || slopingEnds == 0) {
            return 0;
        }
        // One sloping line may run on to the frame, where the frame's own level lines end.
        return slopingEnds > 1 ? score : score / 2;
    }

    /**
     * How far a line may be said to end at an upright, from 0 to 1: less where it runs on, as construction lines do, which a
     * scan of black and white shows as dark as outlines.
     */
    private static double endsAt(Segment upright, Point end) {
        if (end.y() <= upright.start().y() - BEYOND_ITS_ENDS_MM || end.y() >= upright.end().y() + BEYOND_ITS_ENDS_MM) {
            return 0;
        }
        double beyond = beyond(upright, end);
        if (Math.abs(beyond) < 1.5) {
            return 1;
        }
        return beyond > 0 && beyond < RUNS_ON_MM ? 0.5 * (1 - beyond / RUNS_ON_MM) : 0;
    }

    /** How far to the right of an upright a place lies. */
    private static double beyond(Segment upright, Point place) {
        double slope = (upright.end().x() - upright.start().x()) / (upright.end().y() - upright.start().y());
        return place.x() - (upright.start().x() + slope * (place.y() - upright.start().y()));
    }
}
