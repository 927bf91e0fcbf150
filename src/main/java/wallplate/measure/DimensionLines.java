package wallplate.measure;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/**
 * The dimension lines beside a drawing: level or upright lines that are no part's, each ending at two extension lines which
 * run a little past it (ISO 129-1; the number from memory). A frame's lines end at its corners, and those of a title block
 * at others that run on.
 */
final class DimensionLines {

    private static final double SHORTEST_MM = 8;
    private static final double LONGEST_MM = 150;
    /** So near to a part's own line, and along it, a line is that line. */
    private static final double SAME_LINE_MM = 0.9;

    private static final double PARALLEL_DEGREES = 4;
    private static final double INKED_PART = 0.3;
    /** How far along the end of a line an extension line may be off it. */
    private static final double END_REACH_MM = 0.5;

    private static final double[] BESIDE_MM = {0.7, 1.1};
    /** An extension line runs no farther past its dimension line than this, on the one side. */
    private static final double PAST_MM = 4.5;

    private static final double STEP_MM = 0.1;

    private final DrawingView view;

    DimensionLines(DrawingView view) {
        this.view = view;
    }

    /** Those that are no line of a part. */
    List<Edge> beside(Collection<Edge> parts) {
        return Stream.concat(view.level().stream(), view.upright().stream())
                .filter(run -> run.length() >= SHORTEST_MM && run.length() <= LONGEST_MM)
                .filter(run -> parts.stream().noneMatch(part -> isOf(part, run.segment())))
                .filter(run -> isCrossed(run.segment().start(), run.segment())
                        && isCrossed(run.segment().end(), run.segment()))
                .map(run -> view.fit(run, 1))
                .toList();
    }

    private static boolean isOf(Edge part, Segment segment) {
        Line line = part.line();
        double from = Math.min(line.positionOf(segment.start()), line.positionOf(segment.end()));
        double to = Math.max(line.positionOf(segment.start()), line.positionOf(segment.end()));
        return Angles.between(line.inclinationDegrees(), segment.inclinationDegrees()) <= PARALLEL_DEGREES
                && Math.abs(line.distanceTo(segment.midpoint())) <= SAME_LINE_MM
                && from < part.to()
                && to > part.from();
    }

    /** Whether a line crosses at an end that runs on, but not far, on one side at least. */
    private boolean isCrossed(Point end, Segment line) {
        Vector along = line.vector().unit();
        Vector across = along.leftNormal();
        boolean crosses = true;
        for (double beside : BESIDE_MM) {
            crosses = crosses && isInked(end.plus(across.times(beside)), along) && isInked(end.plus(across.times(-beside)), along);
        }
        return crosses
                && !(isInked(end.plus(across.times(PAST_MM)), along) && isInked(end.plus(across.times(-PAST_MM)), along));
    }

    private boolean isInked(Point place, Vector along) {
        for (double away = -END_REACH_MM; away <= END_REACH_MM; away += STEP_MM) {
            Point near = place.plus(along.times(away));
            if (view.ink().at(near.x(), near.y()) >= INKED_PART * view.outlineInk()) {
                return true;
            }
        }
        return false;
    }
}
