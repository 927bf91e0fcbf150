package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the first post between the tie beam's top and the rafter's underside. */
final class PostReader {

    /** A post's two sides, and whether no upright nearer to the wall could belong to an earlier one. */
    record Post(Edge outer, Edge inner, boolean certain) {}

    private PostReader() {}

    static Optional<Post> read(DrawingView view, Expectation expectation, RoofLines roof) {
        if (roof.tieBeamTop().isEmpty() || roof.rafterBottom().isEmpty()) {
            return Optional.empty();
        }
        Edge beam = roof.tieBeamTop().get();
        Edge rafter = roof.rafterBottom().get();
        double heel = Level.crossing(beam, rafter).x();
        double end = roof.breakLine().map(edge -> edge.xAt(beam.middle().y())).orElse(beam.segment().end().x()) - 1;
        CrossLines crossLines = view.crossLines();
        List<Crossing> columns = crossLines.find(
                beam.line(), beam.line().positionOf(beam.line().pointAt(0)) + heel - beam.line().origin().x() + 4,
                end - beam.line().origin().x(), Level.UP,
                position -> 0.6,
                position -> Math.max(1.2, rafter.yAt(beam.line().origin().x() + position)
                        - beam.yAt(beam.line().origin().x() + position) - 0.6),
                0.72);
        columns = columns.stream().filter(column -> column.ink() > 0.55 * view.outlineInk()).toList();
        double bestCost = 3.9;
        Crossing left = null;
        Crossing right = null;
        for (int i = 0; i < columns.size(); i++) {
            for (int j = i + 1; j < columns.size(); j++) {
                double width = columns.get(j).position() - columns.get(i).position();
                double cost = expectation.cost("post.width", width)
                        + 3 * (2 - columns.get(i).coverage() - columns.get(j).coverage())
                        + 0.6 * i;
                if (cost < bestCost) {
                    bestCost = cost;
                    left = columns.get(i);
                    right = columns.get(j);
                }
            }
        }
        if (left == null) {
            return Optional.empty();
        }
        boolean certain = columns.indexOf(left) == 0;
        return Optional.of(new Post(side(view, beam, rafter, left), side(view, beam, rafter, right), certain));
    }

    private static Edge side(DrawingView view, Edge beam, Edge rafter, Crossing crossing) {
        double x = beam.line().origin().x() + crossing.position();
        return view.fit().fit(Level.uprightAt(x), beam.yAt(x) + 0.5, rafter.yAt(x) - 0.5, 0.5, 0.3);
    }
}
