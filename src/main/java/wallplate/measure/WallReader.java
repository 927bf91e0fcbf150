package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the wall's faces and top and the wall plate on it. */
final class WallReader {

    /** The wall and its plate; what is not there is empty. */
    record Wall(
            Optional<Edge> outer,
            Optional<Edge> inner,
            Optional<Edge> top,
            Optional<Edge> plateTop,
            Optional<Edge> plateOuter,
            Optional<Edge> plateInner) {

        private static Wall notFound() {
            return new Wall(
                    Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                    Optional.empty());
        }

        /** The wall alone, where no plate was found on it. */
        private static Wall bare(Edge outer, Edge inner, Optional<Edge> top) {
            return new Wall(
                    Optional.of(outer), Optional.of(inner), top, Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    /** How much further a hidden line lies from its neighbour than the centre of the ink of both. */
    static final double SHARED_CENTRE_FACTOR = 1.6;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final CrossLines crossLines;

    WallReader(DrawingView view, Expectation expectation, RoofLines roof) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.crossLines = new CrossLines(view.ink(), view.outlineInk());
    }

    Wall read() {
        if (roof.rafterBottom().isEmpty()) {
            return Wall.notFound();
        }
        Edge rafter = roof.rafterBottom().get();
        double heelY = heelHeight(rafter);
        double heelX = rafter.xAt(heelY);
        Optional<Faces> faces = faces(heelX, heelY);
        if (faces.isEmpty()) {
            return Wall.notFound();
        }
        Edge outer = view.fit(faces.get().outer, 0.5);
        Edge inner = view.fit(faces.get().inner, 0.5);
        Optional<Edge> top = top(outer, inner, rafter, heelY);
        if (top.isEmpty()) {
            return Wall.bare(outer, inner, top);
        }
        return plate(outer, inner, top.get(), rafter, heelY);
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
        return rafter.yAt(rafter.segment().start().x() + expectation.exactOr("rafter.overhang", 20));
    }

    private record Faces(Run outer, Run inner) {}

    private Optional<Faces> faces(double heelX, double heelY) {
        double thickness = expectation.exactOr("wall.thickness", 11);
        double setIn = expectation.setIn();
        List<Run> candidates = new ArrayList<>();
        for (Run run : view.upright()) {
            double x = run.segment().midpoint().x();
            if (run.length() >= 6 && Math.abs(x - heelX) < 2 * thickness + 6 && run.lowY() < heelY - 6
                    && run.segment().midpoint().y() < heelY + 6) {
                candidates.add(run);
            }
        }
        Ranking<Faces> ranking = new Ranking<>(Double.MAX_VALUE);
        for (Run outer : candidates) {
            for (Run inner : candidates) {
                double gap = inner.segment().midpoint().x() - outer.segment().midpoint().x();
                if (gap < 3 || gap > 40) {
                    continue;
                }
                double cost = expectation.cost("wall.thickness", gap)
                        + Math.min(4, Math.abs(outer.lowY() - inner.lowY()) / 2)
                        + Math.min(3, Math.abs(heelX - setIn - outer.segment().midpoint().x()) / 3)
                        + Math.min(3, 12 / Math.min(outer.length(), inner.length()) - 0.5)
                        + 2 * (1 - cutOff(outer, inner))
                        + ceilingCost(inner);
                ranking.offer(new Faces(outer, inner), gap, cost);
            }
        }
        return ranking.best();
    }

    /** The share of ink on the best level line that joins two faces at their lower ends, where a wall is cut off. */
    private double cutOff(Run outer, Run inner) {
        double from = outer.segment().midpoint().x();
        double to = inner.segment().midpoint().x();
        double middle = (outer.lowY() + inner.lowY()) / 2;
        double best = 0;
        for (double y = middle - 2; y <= middle + 2.5; y += 0.2) {
            best = Math.max(best, view.fit().coverage(Level.levelAt(y), from + 0.3, to - 0.3, 0.35));
        }
        return best;
    }

    private double ceilingCost(Run inner) {
        return roof.ceilingTop()
                .map(ceiling -> Math.min(3, Math.abs(ceiling.segment().start().x() - inner.segment().midpoint().x()) / 2))
                .orElse(0.0);
    }

    /** The highest level line between the faces below the heel. */
    private Optional<Edge> top(Edge outer, Edge inner, Edge rafter, double heelY) {
        double reach = Math.max(4, 2.3 * expectation.exactOr("wall-plate.depth", 3)) + 2;
        double innerX = inner.xAt(heelY);
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(innerX),
                heelY - reach,
                heelY + 0.3,
                Level.RIGHT,
                y -> Math.min(-1.5, leftOfTop(outer, rafter, y) - innerX),
                y -> -0.5,
                0.5);
        Crossing best = null;
        double bestCost = Double.MAX_VALUE;
        for (Crossing row : rows) {
            double depth = heelY - row.position();
            if (depth < 0.9 || row.ink() < 0.45 * view.outlineInk()) {
                continue;
            }
            double cost = expectation.cost("wall-plate.depth", depth)
                    + 4 * (1 - row.coverage())
                    + 2 * Math.max(0, 1 - row.ink() / view.outlineInk());
            if (cost < bestCost) {
                bestCost = cost;
                best = row;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        double y = best.position();
        double left = leftOfTop(outer, rafter, y);
        return Optional.of(view.fit().fit(Level.levelAt(y), left + 0.2, innerX - 0.3, 0.15));
    }

    private static double leftOfTop(Edge outer, Edge rafter, double y) {
        return Math.max(outer.xAt(y) + 0.4, rafter.xAt(y) + 0.6);
    }

    private Wall plate(Edge outer, Edge inner, Edge top, Edge rafter, double heelY) {
        double outerX = outer.xAt(heelY);
        double innerX = inner.xAt(heelY);
        double topY = top.middle().y();
        double height = heelY - topY;
        List<Crossing> columns = crossLines.find(
                Level.levelAt(topY),
                outerX - 1.5,
                innerX + 1.5,
                Level.UP,
                x -> 0.15 * height,
                x -> 0.85 * height,
                0.45);
        Ranking<Crossing[]> ranking = new Ranking<>(30);
        for (Crossing first : columns) {
            for (Crossing secondColumn : columns) {
                double width = secondColumn.position() - first.position();
                if (width < 1.2) {
                    continue;
                }
                double cost = Math.min(4.2, expectation.cost("wall-plate.width", width))
                        + flushCost(first.position(), secondColumn.position(), outerX, innerX, rafter.xAt(heelY))
                        + 4 * (2 - first.coverage() - secondColumn.coverage())
                        + 1.8 * unexplained(columns, first, secondColumn, outerX, innerX);
                ranking.offer(new Crossing[] {first, secondColumn}, width, cost);
            }
        }
        if (ranking.best().isEmpty()) {
            return Wall.bare(outer, inner, Optional.of(top));
        }
        Crossing left = ranking.best().orElseThrow()[0];
        Crossing right = ranking.best().orElseThrow()[1];
        if (roof.tieBeamBottom().isEmpty()) {
            heelY = plateTopAlone(left.position(), right.position(), topY).orElse(heelY);
        }
        Edge plateOuter = view.fit().fit(Level.uprightAt(left.position()), topY + 0.25, heelY - 0.25, 0.12, 0.25);
        Edge plateInner = view.fit().fit(Level.uprightAt(right.position()), topY + 0.25, heelY - 0.25, 0.12, 0.25);
        Edge plateTop = plateTop(left.position(), right.position(), heelY);
        return new Wall(
                Optional.of(outer), Optional.of(inner), Optional.of(top), Optional.of(plateTop),
                Optional.of(plateOuter), Optional.of(plateInner));
    }

    /** How many whole dark columns are neither the plate's sides nor the wall's faces. */
    private double unexplained(List<Crossing> columns, Crossing left, Crossing right, double outerX, double innerX) {
        double count = 0;
        for (Crossing column : columns) {
            boolean known = column == left
                    || column == right
                    || Math.abs(column.position() - outerX) < 0.4
                    || Math.abs(column.position() - innerX) < 0.4;
            if (!known && column.coverage() > 0.85 && column.ink() > 0.7 * view.outlineInk()) {
                count++;
            }
        }
        return count;
    }

    /**
     * How unlikely a plate's sides are for their place: against the face that the task sets it flush with, and with its
     * outer corner at the rafter's underside, which a learner may miss by a little.
     */
    private double flushCost(double left, double right, double outerX, double innerX, double rafterX) {
        double setIn = expectation.setIn();
        double width = expectation.exactOr("wall-plate.width", 5);
        double thickness = expectation.exactOr("wall.thickness", 11);
        double flush;
        if (setIn < 0.3) {
            flush = Math.abs(left - outerX);
        } else if (Math.abs(setIn + width - thickness) < 0.3) {
            flush = Math.abs(right - innerX);
        } else {
            flush = Math.abs((left + right) / 2 - (outerX + innerX) / 2) / 2;
        }
        return Math.min(3, flush / 0.5) + Math.min(2, Math.abs(left - rafterX) / 1.2);
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
