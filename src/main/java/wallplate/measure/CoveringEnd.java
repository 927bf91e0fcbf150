package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * The short line square to the slope that ends the covering over the gutter.
 *
 * @param probability how likely it, or another that gives the same projection, is the right one
 */
record CoveringEnd(Edge edge, double probability) {

    private record End(Crossing column, double projection) implements Reading {

        boolean saysTheSameAs(End other) {
            return Math.abs(other.projection - projection) < SAME_MM;
        }

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of("covering.projection", Optional.of(projection));
        }
    }

    private static final Weights WEIGHTS = Weights.of("covering-end", List.of(
            "coverage", "ink", "underside-inside", "underside-outside", "top-inside", "top-outside", "projection"));

    private static final double SAME_MM = 0.35;
    private static final double OUTSIDE_MM = 8;
    private static final double INSIDE_MM = 10;
    private static final double MOST_COST = 4;

    /** Reads the end; empty where the covering's two lines were not both found, or nothing ends them. */
    static Optional<CoveringEnd> read(EavesPlace place, Edge cut) {
        RoofLines roof = place.roof();
        if (roof.coveringBottom().isEmpty() || roof.coveringTop().isEmpty()) {
            return Optional.empty();
        }
        Edge bottom = roof.coveringBottom().get();
        Edge top = roof.coveringTop().get();
        DrawingView view = place.view();
        double thickness = bottom.distanceTo(top, view.slope());
        double toe = bottom.line().positionOf(Level.crossing(place.rafterTop(), cut));
        double start = Math.min(bottom.from(), bottom.line().positionOf(top.segment().start()));
        List<Crossing> columns = place.crossLines().find(
                bottom.line(), start - OUTSIDE_MM, bottom.from() + INSIDE_MM, view.squareToSlope(),
                position -> 0.18 * thickness, position -> 0.82 * thickness, 0.35);
        Choice<End> choice = new Choice<>(WEIGHTS);
        for (Crossing column : columns) {
            double position = column.position();
            double onTop = top.line().positionOf(bottom.line().pointAt(position));
            double projection = toe - position;
            choice.offer(
                    new End(column, projection),
                    column.coverage(),
                    Math.min(1, column.ink() / view.outlineInk()),
                    inked(view, bottom, position + 0.3, position + 2.8),
                    inked(view, bottom, position - 2.8, position - 1.2),
                    inked(view, top, onTop + 0.3, onTop + 2.8),
                    inked(view, top, onTop - 2.8, onTop - 1.2),
                    Math.min(MOST_COST, place.expectation().cost("covering.projection", projection)));
        }
        place.log().made(choice);
        return choice.best().map(best -> {
            Line across = new Line(bottom.line().pointAt(best.column.position()), view.squareToSlope());
            Edge edge = view.fit().fit(across, 0.15, thickness - 0.15, 0.25, 0.25);
            return new CoveringEnd(edge, choice.probability(best::saysTheSameAs));
        });
    }

    private static double inked(DrawingView view, Edge edge, double from, double to) {
        return view.fit().coverage(edge.line(), from, to, DrawingView.OUTLINE_PART);
    }
}
