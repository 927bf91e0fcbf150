package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the wall's faces and top and the wall plate on it. */
final class WallReader {

    /**
     * The wall and its plate; what is not there is empty.
     *
     * @param areFacesOpen whether other uprights could be the faces
     * @param isHeelOpen whether the plate's upper outer corner could be elsewhere
     * @param isPlateWidthOpen whether other lines could be the plate's and would give another width
     * @param isPlateDepthOpen the same for its depth
     */
    record Wall(
            Optional<Edge> outer,
            Optional<Edge> inner,
            Optional<Edge> top,
            Optional<Edge> plateTop,
            Optional<Edge> plateOuter,
            Optional<Edge> plateInner,
            boolean areFacesOpen,
            boolean isHeelOpen,
            boolean isPlateWidthOpen,
            boolean isPlateDepthOpen) {

        private static Wall notFound() {
            return new Wall(
                    Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                    Optional.empty(), false, false, false, false);
        }

        /** The wall alone, where no plate was found on it. */
        private static Wall bare(Edge outer, Edge inner, boolean areFacesOpen) {
            return new Wall(
                    Optional.of(outer), Optional.of(inner), Optional.empty(), Optional.empty(), Optional.empty(),
                    Optional.empty(), areFacesOpen, false, false, false);
        }

        boolean isPlateOpen() {
            return isPlateWidthOpen || isPlateDepthOpen;
        }
    }

    /** A wall's face comes down at least so far below its top. */
    private static final double LEAST_FACE_MM = 6;

    /** How much further a hidden line lies from its neighbour than the centre of the ink of both. */
    static final double SHARED_CENTRE_FACTOR = 1.6;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final ChoiceLog log;
    private final CrossLines crossLines;

    WallReader(DrawingView view, Expectation expectation, RoofLines roof, ChoiceLog log) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.log = log;
        this.crossLines = view.crossLines();
    }

    Wall read() {
        if (roof.rafterBottom().isEmpty()) {
            return Wall.notFound();
        }
        Edge rafter = roof.rafterBottom().get();
        double heelY = heelHeight(rafter);
        WallFaces.Heel heel = new WallFaces.Heel(rafter.xAt(heelY), heelY, rafter, isLevelKnown());
        Optional<WallFaces.Found> faces = new WallFaces(view, expectation, roof, log).read(heel);
        if (faces.isEmpty()) {
            return Wall.notFound();
        }
        Edge outer = view.fit(faces.get().outer(), 0.5);
        Edge inner = view.fit(faces.get().inner(), 0.5);
        boolean areFacesOpen = faces.get().probability() < Choice.SURE;
        double plateTopY = heel.heightFor(outer.xAt(heelY), expectation.setIn());
        PlateReader reader = new PlateReader(
                view, expectation, new PlateReader.Place("wall-plate", "wall", expectation.setIn()), rafter, log);
        Optional<PlateReader.Found> found =
                isLevelKnown() ? reader.underLevel(outer, inner, plateTopY) : reader.alone(outer, inner, plateTopY);
        return found.map(plate -> {
                    Edge top = top(outer, inner, rafter, plate, reader);
                    return withPlate(outer, inner, areFacesOpen || isAbove(top, faces.get()), plate, top);
                })
                .orElseGet(() -> Wall.bare(outer, inner, areFacesOpen));
    }

    /** Whether what was taken for a face hardly comes down below the wall's top, as the side of a plate drawn too deep does. */
    private static boolean isAbove(Edge top, WallFaces.Found faces) {
        double lowest = Math.max(faces.outer().lowY(), faces.inner().lowY());
        return lowest > top.middle().y() - LEAST_FACE_MM;
    }

    /** Whether a long level line tells the heel's height; otherwise the rafter does where it passes over the wall. */
    private boolean isLevelKnown() {
        return roof.tieBeamBottom().isPresent() || roof.ceilingTop().isPresent();
    }

    /** The height at which the heel is to be looked for. */
    private double heelHeight(Edge rafter) {
        if (roof.tieBeamBottom().isPresent()) {
            Edge beam = roof.tieBeamBottom().get();
            return Level.crossing(rafter, beam).y();
        }
        if (roof.ceilingTop().isPresent()) {
            Edge ceiling = roof.ceilingTop().get();
            return ceiling.segment().start().y() + expectation.exactOr("ceiling.drop", 2.5);
        }
        return rafter.yAt(
                rafter.segment().start().x() + expectation.exactOr("rafter.overhang", 20) + expectation.setIn());
    }

    private Edge top(Edge outer, Edge inner, Edge rafter, PlateReader.Found plate, PlateReader reader) {
        double y = plate.top().position();
        double toX = inner.xAt(plate.heelY()) - 0.3;
        return isLevelKnown()
                ? view.fit().fit(Level.levelAt(y), reader.leftOfTop(outer, y) + 0.2, toX, 0.15)
                : view.fit().fit(Level.levelAt(y), outer.xAt(y) + 0.6, toX, 0.15, 0.3, List.of(rafter.line()));
    }

    private Wall withPlate(
            Edge outer, Edge inner, boolean areFacesOpen, PlateReader.Found plate, Edge top) {
        double heelY = plate.heelY();
        double left = plate.left().position();
        double right = plate.right().position();
        double wallTopY = plate.top().position();
        Optional<Edge> alone = isLevelKnown()
                ? Optional.empty()
                : new PlateTop(view, roof.rafterBottom().orElseThrow()).between(left, right, heelY, wallTopY + 0.8);
        double plateTopY = alone.map(edge -> edge.middle().y()).orElseGet(() -> roof.tieBeamBottom().isPresent()
                ? heelY
                : plateTopAlone(left, right, wallTopY).orElse(heelY));
        double topY = top.middle().y();
        return new Wall(
                Optional.of(outer),
                Optional.of(inner),
                Optional.of(top),
                Optional.of(alone.orElseGet(() -> plateTop(left, right, plateTopY))),
                Optional.of(view.fit().fit(Level.uprightAt(left), topY + 0.25, plateTopY - 0.25, 0.12, 0.25)),
                Optional.of(view.fit().fit(Level.uprightAt(right), topY + 0.25, plateTopY - 0.25, 0.12, 0.25)),
                areFacesOpen,
                !isLevelKnown() && plate.heelProbability() < Choice.SURE,
                plate.widthProbability() < Choice.LIKELY,
                plate.depthProbability() < Choice.LIKELY);
    }

    /** The height of the plate's top where no tie beam lies on it: the level line that closes its sides. */
    private Optional<Double> plateTopAlone(double left, double right, double topY) {
        double reach = 2.4 * expectation.exactOr("wall-plate.depth", 3) + 1;
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(left), topY + 0.8, topY + reach, Level.RIGHT, y -> 0.4, y -> right - left - 0.4, 0.7);
        Crossing best = null;
        double bestCost = Double.MAX_VALUE;
        for (Crossing row : rows) {
            double cost = expectation.cost("wall-plate.depth", row.position() - topY) + 5 * (1 - row.coverage());
            if (cost < bestCost) {
                bestCost = cost;
                best = row;
            }
        }
        return Optional.ofNullable(best).map(Crossing::position);
    }

    /** The plate's own top: the tie beam's underside runs over it, often a few tenths beside it. */
    private Edge plateTop(double left, double right, double heelY) {
        double guess = roof.tieBeamBottom().map(beam -> beam.yAt((left + right) / 2)).orElse(heelY);
        Edge seen = view.fit().fit(Level.levelAt(guess), left + 0.3, right - 0.3, 0.12, 0.3);
        return roof.tieBeamBottom().map(beam -> besideBeam(seen, beam)).orElse(seen);
    }

    /**
     * The plate's top told apart from the tie beam's underside that is drawn over it: where both lie within a line's
     * breadth their common centre has moved only part of the way, as found on lines of both kinds drawn apart.
     */
    private static Edge besideBeam(Edge seen, Edge beam) {
        double moved = beam.distanceTo(seen, Level.RIGHT);
        if (Math.abs(moved) > 0.3) {
            return seen;
        }
        Edge shifted = seen.offsetBy((SHARED_CENTRE_FACTOR - 1) * moved);
        return new Edge(
                shifted.line(), shifted.from(), shifted.to(), 0.05, shifted.residualMm(), shifted.ink(), shifted.coverage());
    }
}
