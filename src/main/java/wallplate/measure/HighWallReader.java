package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the high wall of a lean-to roof, under the roof's plumb end, and the wall plate on it. */
final class HighWallReader {

    /**
     * The wall and its plate; what is not there is empty.
     *
     * @param isPlateAbsent whether the wall's top lies right under the rafter, so that no plate can be there
     * @param areFacesOpen whether other uprights could be the faces nearly as well
     * @param isPlateOpen whether other lines could be the plate's nearly as well
     */
    record HighWall(
            Optional<Edge> inner,
            Optional<Edge> outer,
            Optional<Edge> top,
            Optional<Plate> plate,
            boolean isPlateAbsent,
            boolean areFacesOpen,
            boolean isPlateOpen) {

        private static HighWall notFound() {
            return new HighWall(
                    Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), false, false, false);
        }
    }

    /** The plate's outline but for its underside, which is the wall's top. */
    record Plate(Edge inner, Edge outer, Edge top) {}

    private static final double SHORTEST_FACE_MM = 6;
    private static final double NARROWEST_WALL_MM = 3;
    private static final double WIDEST_WALL_MM = 40;
    private static final double THINNEST_PLATE_MM = 0.9;
    /** A line that closes the wall over this much of its width is its top rather than a plate's. */
    private static final double WHOLE_TOP = 0.85;
    private static final double DEAREST_FACES = 14;
    /** A reading this much dearer than the best is still in question. */
    private static final double DOUBT_MARGIN = 1;
    private static final double ANOTHER_MM = 0.5;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final WallReader.Wall lowWall;
    private final ChoiceLog log;
    private final CrossLines crossLines;

    HighWallReader(DrawingView view, Expectation expectation, RoofLines roof, WallReader.Wall lowWall, ChoiceLog log) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.lowWall = lowWall;
        this.log = log;
        this.crossLines = view.crossLines();
    }

    HighWall read() {
        if (roof.rafterBottom().isEmpty()) {
            return HighWall.notFound();
        }
        Edge rafter = roof.rafterBottom().get();
        Optional<Faces> faces = faces(rafter);
        if (faces.isEmpty()) {
            return HighWall.notFound();
        }
        boolean areFacesOpen = faces.get().isOpen;
        Edge inner = view.fit(faces.get().inner, 0.5);
        Edge outer = view.fit(faces.get().outer, 0.5);
        double heelY = Level.crossing(inner, rafter).y();
        PlateReader.Place place = new PlateReader.Place("high-plate", "high-wall", 0);
        Optional<PlateReader.Found> found =
                new PlateReader(view, expectation, place, rafter, log).alone(inner, outer, heelY);
        boolean isSure = found.filter(seen -> seen.probability() >= Choice.SURE).isPresent();
        if (!isSure && isBare(inner, outer, heelY)) {
            return new HighWall(
                    Optional.of(inner), Optional.of(outer), Optional.empty(), Optional.empty(), true, areFacesOpen, false);
        }
        Optional<Edge> top = found.map(seen -> view.fit().fit(
                Level.levelAt(seen.top().position()), inner.xAt(heelY) + 0.3, outer.xAt(heelY) - 0.3, 0.15, 0.3,
                List.of(rafter.line())));
        return new HighWall(
                Optional.of(inner),
                Optional.of(outer),
                top,
                found.flatMap(seen -> plate(seen, rafter)),
                false,
                areFacesOpen,
                found.isPresent() && !isSure);
    }

    /** @param isOpen whether two other uprights could be the faces nearly as well */
    private record Faces(Run inner, Run outer, boolean isOpen) {}

    private record TwoRuns(Run inner, Run outer) {}

    /** Two uprights under the rafter that are cut off together and of which the outer one stands under the roof's end. */
    private Optional<Faces> faces(Edge rafter) {
        double fromX = lowWall.inner().map(edge -> edge.middle().x()).orElse(rafter.segment().start().x()) + 8;
        List<Run> candidates = view.upright().stream()
                .filter(run -> run.length() >= SHORTEST_FACE_MM && middleX(run) > fromX)
                .filter(run -> run.segment().midpoint().y() < rafter.yAt(middleX(run)))
                .toList();
        double endX = roof.breakLine().map(edge -> edge.middle().x()).orElse(rafter.segment().end().x());
        Ranking<TwoRuns> ranking = new Ranking<>(DEAREST_FACES);
        for (Run inner : candidates) {
            for (Run outer : candidates) {
                double gap = middleX(outer) - middleX(inner);
                if (gap < NARROWEST_WALL_MM || gap > WIDEST_WALL_MM) {
                    continue;
                }
                double cost = expectation.cost("high-wall.thickness", gap)
                        + Math.min(4, Math.abs(outer.lowY() - inner.lowY()) / 2)
                        + Math.min(4, Math.abs(middleX(outer) - endX) / 0.8)
                        + Math.min(3, 12 / Math.min(outer.length(), inner.length()) - 0.5)
                        + reachCost(inner, rafter)
                        + spanCost(inner);
                ranking.offer(new TwoRuns(inner, outer), gap, cost);
            }
        }
        boolean isOpen = ranking.rival(ANOTHER_MM, DOUBT_MARGIN).isPresent();
        return ranking.best().map(best -> new Faces(best.inner, best.outer, isOpen));
    }

    private static double middleX(Run run) {
        return run.segment().midpoint().x();
    }

    /** The inner face ends a plate's depth under the rafter, or runs on as the plate's side up to it. */
    private double reachCost(Run inner, Edge rafter) {
        double below = rafter.yAt(middleX(inner)) - inner.highY();
        double depth = expectation.exactOr("high-plate.depth", 3);
        return Math.min(4, Math.max(0, Math.max(-below, below - 2.3 * depth)) / 1.5);
    }

    private double spanCost(Run inner) {
        return lowWall.inner()
                .map(low -> Math.min(2, expectation.cost("high-wall.clear-span", middleX(inner) - low.middle().x()) / 1.5))
                .orElse(0.0);
    }

    /** Whether the wall is closed right under the rafter and nowhere below, where a plate would lie on it. */
    private boolean isBare(Edge inner, Edge outer, double heelY) {
        double reach = PlateReader.reach(expectation, "high-plate");
        return dark(rows(inner, outer, heelY - reach, heelY - THINNEST_PLATE_MM, 0.5)).isEmpty()
                && !dark(rows(inner, outer, heelY - THINNEST_PLATE_MM, heelY + THINNEST_PLATE_MM, WHOLE_TOP)).isEmpty();
    }

    private List<Crossing> dark(List<Crossing> rows) {
        return rows.stream().filter(row -> row.ink() >= 0.45 * view.outlineInk()).toList();
    }

    private List<Crossing> rows(Edge inner, Edge outer, double lowY, double highY, double leastCoverage) {
        double width = Level.rightOf(inner, outer);
        double innerX = inner.xAt(highY);
        return crossLines.find(
                Level.uprightAt(innerX), lowY, highY, Level.RIGHT, y -> 0.5, y -> width - 0.5, leastCoverage);
    }

    private Optional<Plate> plate(PlateReader.Found found, Edge rafter) {
        double bottomY = found.top().position();
        return new PlateTop(view, rafter)
                .between(found.left().position(), found.right().position(), found.heelY(), bottomY + 0.8)
                .map(top -> new Plate(side(found.left(), bottomY, top), side(found.right(), bottomY, top), top));
    }

    private Edge side(Crossing column, double bottomY, Edge top) {
        return view.fit()
                .fit(Level.uprightAt(column.position()), bottomY + 0.25, top.middle().y() - 0.25, 0.12, 0.25);
    }
}
