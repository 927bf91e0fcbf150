package wallplate.measure;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the first post between the tie beam's top and the rafter's underside. */
final class PostReader {

    /** The share of an upright that is inked where it is drawn from the beam to the rafter, and where a part of it is. */
    private static final double WHOLE = 0.72;

    private static final double IN_PARTS = 0.35;

    /** So far along the beam from where it meets the rafter there is no room for a post's side. */
    private static final double CLEAR_OF_HEEL_MM = 4;
    /** No post stands in the tip of the corner between beam and rafter. */
    private static final double LEAST_HEIGHT_MM = 2.5;

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
        double origin = beam.line().origin().x();
        CrossLines crossLines = view.crossLines();
        DoubleFunction<List<Crossing>> find = leastCoverage -> crossLines.find(
                beam.line(), heel - origin + CLEAR_OF_HEEL_MM, end - origin, Level.UP,
                position -> 0.6,
                position -> Math.max(1.2, heightAt(beam, rafter, origin + position) - 0.6),
                leastCoverage);
        List<Crossing> columns = find.apply(WHOLE).stream()
                .filter(column -> column.ink() > 0.55 * view.outlineInk())
                .toList();
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
        double first = left.position();
        double width = right.position() - first;
        List<Crossing> before = columns.stream()
                .filter(column -> column.position() < first
                        && heightAt(beam, rafter, origin + column.position()) > LEAST_HEIGHT_MM)
                .toList();
        List<Crossing> partners = before.isEmpty() ? List.of() : find.apply(IN_PARTS);
        boolean certain = before.stream().noneMatch(column -> isInAPair(column, partners, width));
        return Optional.of(new Post(side(view, beam, rafter, left), side(view, beam, rafter, right), certain));
    }

    private static double heightAt(Edge beam, Edge rafter, double x) {
        return rafter.yAt(x) - beam.yAt(x);
    }

    /** Whether an upright stands as far from another as the sides of some post might; a lone one belongs to none. */
    private static boolean isInAPair(Crossing column, List<Crossing> others, double width) {
        return others.stream().anyMatch(other -> {
            double apart = Math.abs(other.position() - column.position());
            return apart > 0.4 * width && apart < 2.5 * width;
        });
    }

    private static Edge side(DrawingView view, Edge beam, Edge rafter, Crossing crossing) {
        double x = beam.line().origin().x() + crossing.position();
        return view.fit().fit(Level.uprightAt(x), beam.yAt(x) + 0.5, rafter.yAt(x) - 0.5, 0.5, 0.3);
    }
}
