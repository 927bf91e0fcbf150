package wallplate.measure;

import java.util.Collection;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/**
 * The dimension lines beside a drawing: level or upright lines clear of it, each ending at two extension lines which run a
 * little past it, with a figure over its middle (ISO 129-1; the number from memory). A frame's lines end at its corners, and
 * those of a title block at others that run on. Dimensions within the drawing are not looked for: too many lines there could
 * pass for one.
 */
final class DimensionLines {

    private static final double SHORTEST_MM = 8;
    private static final double LONGEST_MM = 150;
    private static final double CLEAR_OF_DRAWING_MM = 1.5;
    private static final double BAR_MM = 3;
    private static final double INKED_PART = 0.3;
    /** How far along the end of a line an extension line may be off it. */
    private static final double END_REACH_MM = 0.5;

    private static final double[] BESIDE_MM = {0.7, 1.1};
    /** An extension line runs no farther past its dimension line than this, on the one side. */
    private static final double PAST_MM = 4.5;

    private static final double STEP_MM = 0.1;

    /** A figure stands between these distances from its line, and leaves some of the line's length free. */
    private static final double[] FIGURE_MM = {0.9, 4.2};

    private static final double SHORTEST_FIGURE_MM = 1.2;
    private static final double MOST_FIGURE = 0.85;

    private final DrawingView view;
    private final Optional<Segment> bar;

    /**
     * @param bar the sheet's reference bar on its page: a level line between two ticks, and no dimension
     */
    DimensionLines(DrawingView view, Optional<Segment> bar) {
        this.view = view;
        this.bar = bar;
    }

    /** Those outside the extent of the lines that were found. */
    List<Edge> beside(Collection<Edge> parts) {
        if (parts.isEmpty()) {
            return List.of();
        }
        return Stream.concat(view.level().stream(), view.upright().stream())
                .filter(run -> run.length() >= SHORTEST_MM && run.length() <= LONGEST_MM)
                .filter(run -> isClearOf(parts, run.segment().midpoint()))
                .filter(run -> !isBar(view.onPage(run.segment())))
                .filter(run -> isCrossed(run.segment().start(), run.segment())
                        && isCrossed(run.segment().end(), run.segment()))
                .filter(run -> hasFigure(run.segment()))
                .map(run -> view.fit(run, 1))
                .toList();
    }

    private boolean isBar(Segment onPage) {
        return bar.filter(ticked -> ticked.distanceTo(onPage.midpoint()) <= BAR_MM).isPresent();
    }

    private static boolean isClearOf(Collection<Edge> parts, Point place) {
        return isOutside(parts, Point::x, place) || isOutside(parts, Point::y, place);
    }

    private static boolean isOutside(Collection<Edge> parts, ToDoubleFunction<Point> axis, Point place) {
        DoubleSummaryStatistics extent = parts.stream()
                .map(Edge::segment)
                .flatMap(segment -> Stream.of(segment.start(), segment.end()))
                .mapToDouble(axis)
                .summaryStatistics();
        double at = axis.applyAsDouble(place);
        return at < extent.getMin() - CLEAR_OF_DRAWING_MM || at > extent.getMax() + CLEAR_OF_DRAWING_MM;
    }

    /** Whether something is written over the middle, on one side. */
    private boolean hasFigure(Segment line) {
        return hasFigure(line, 1) || hasFigure(line, -1);
    }

    private boolean hasFigure(Segment line, int side) {
        Vector across = line.vector().unit().leftNormal().times(side);
        int steps = (int) (line.length() / STEP_MM);
        int inked = 0;
        int inMiddle = 0;
        for (int step = 0; step < steps; step++) {
            double share = (step + 0.5) / steps;
            if (isWritten(line.at(share), across)) {
                inked++;
                inMiddle += share > 0.25 && share < 0.75 ? 1 : 0;
            }
        }
        return inMiddle * STEP_MM >= SHORTEST_FIGURE_MM && inked <= MOST_FIGURE * steps;
    }

    private boolean isWritten(Point foot, Vector across) {
        for (double away = FIGURE_MM[0]; away <= FIGURE_MM[1]; away += STEP_MM) {
            Point place = foot.plus(across.times(away));
            if (view.ink().at(place.x(), place.y()) >= INKED_PART * view.outlineInk()) {
                return true;
            }
        }
        return false;
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
