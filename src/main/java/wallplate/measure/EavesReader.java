package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds what hangs at the rafter's outer end: the plumb cut, fascia, gutter, barge board, and the covering's end. */
final class EavesReader {

    /** The edges at the eaves; what is not there is empty. */
    record Eaves(
            Optional<Edge> cut,
            Optional<Edge> fasciaOuter,
            Optional<Edge> fasciaTop,
            Optional<Edge> fasciaBottom,
            Optional<Edge> gutterOuter,
            Optional<Edge> gutterBottom,
            Optional<Rim> gutterRim,
            Optional<Edge> gutterInner,
            Optional<Edge> bargeEnd,
            Optional<Edge> bargeBottom,
            Optional<Edge> coveringEnd,
            Doubts doubts) {}

    /**
     * What could be read in another way nearly as well.
     *
     * @param cut another place of the plumb cut, as x
     * @param fasciaDepth another depth of the fascia
     * @param gutter why the gutter is in question
     */
    record Doubts(Optional<Double> cut, Optional<Double> fasciaDepth, Optional<String> gutter) {}

    /** How far the mark of a pencil line runs on beyond where the point's centre stopped, at half darkness. */
    private static final double ROUND_END_MM = 0.13;

    /** No gutter is drawn deeper than this at the scales in use. */
    private static final double RIM_REACH_MM = 18;

    /** A gutter's own inner side and the fascia's face are drawn over one another, a few tenths apart. */
    private static final double INNER_SIDE_SIGMA_MM = 0.07;

    /** A reading this much dearer than the best is no longer in question. */
    private static final double DOUBT_MARGIN = 0.5;

    /** A gutter's lines this unlikely may belong to something else. */
    private static final double DOUBTFUL_GUTTER_COST = 4.5;

    /** How much worse than the best another height may part the ink and still be in question. */
    private static final double RIM_DOUBT = 1.28;

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final WallReader.Wall wall;
    private final CrossLines crossLines;
    private Optional<Double> fasciaRival = Optional.empty();
    private Optional<Double> cutRival = Optional.empty();
    private Optional<String> gutterDoubt = Optional.empty();

    EavesReader(DrawingView view, Expectation expectation, RoofLines roof, WallReader.Wall wall) {
        this.view = view;
        this.expectation = expectation;
        this.roof = roof;
        this.wall = wall;
        this.crossLines = new CrossLines(view.ink(), view.outlineInk());
    }

    Eaves read() {
        if (roof.rafterTop().isEmpty() || roof.rafterBottom().isEmpty()) {
            return nothing();
        }
        Edge top = roof.rafterTop().get();
        Edge bottom = roof.rafterBottom().get();
        double endX = Math.max(top.segment().start().x(), bottom.segment().start().x());
        List<Crossing> columns = columns(endX, top, bottom, 0, 0.12, 0.88);
        List<Crossing> higher = facesToo(columns, columns(endX, top, bottom, 0, 0.5, 1.2));
        // A board's face ends at the heights of the plumb cut behind it, which on a steep roof differ much from its own.
        double thickness = expectation.exactOr("fascia.thickness", 1.5);
        List<Crossing> faces = facesToo(higher, columns(endX, top, bottom, thickness, 0.12, 0.88));
        Optional<Edge> bargeAtFirst = expectation.asksPart("barge-board") ? bargeEnd(endX) : Optional.empty();
        Optional<Stand> found = stand(columns, faces, top, bottom, endX + 6, bargeAtFirst);
        if (found.isEmpty()) {
            return nothing();
        }
        Stand stand = found.get();
        double lowY = bottom.yAt(stand.cut.position());
        double highY = top.yAt(stand.cut.position());
        double closest = stand.face.map(face -> stand.cut.position() - face.position()).orElse(2.0);
        Optional<Edge> cut = Optional.of(upright(stand.cut, lowY, highY, closest));
        double cutX = cut.get().xAt((lowY + highY) / 2);
        Optional<Edge> fasciaOuter = stand.face.map(face -> upright(face, lowY, highY, closest));
        double faceX = fasciaOuter.map(edge -> edge.xAt((lowY + highY) / 2)).orElse(cutX);
        Optional<Edge> bargeEnd = bargeEnd(faceX - 0.45);
        Optional<Edge> bargeBottom = bargeEnd.flatMap(end -> bargeBottom(end, faceX));
        Optional<Gutter> gutter = gutter(faceX, lowY, highY, bargeEnd, bargeBottom);
        Optional<Closing> closing = fasciaOuter.flatMap(outer -> fasciaEnds(outer, cut.get(), lowY, highY));
        Optional<Edge> inner = gutter.flatMap(box -> fasciaOuter.map(face -> gutterInner(face, box)));
        return new Eaves(
                cut,
                fasciaOuter,
                closing.map(Closing::top),
                closing.map(Closing::bottom),
                gutter.map(Gutter::outer),
                gutter.map(Gutter::bottom),
                gutter.map(Gutter::rim),
                inner,
                bargeEnd,
                bargeBottom,
                coveringEnd(cut.get()),
                new Doubts(cutRival, fasciaRival, gutterDoubt));
    }

    /**
     * The uprights near the rafter's end that are dark between two parts of its height, 0 its underside and 1 its top, as
     * that height is so far to the inside of each.
     */
    private List<Crossing> columns(double endX, Edge top, Edge bottom, double insideMm, double from, double to) {
        return crossLines.find(
                Level.levelAt(0),
                endX - 9,
                endX + 7,
                Level.UP,
                x -> bottom.yAt(x + insideMm) + from * (top.yAt(x) - bottom.yAt(x)),
                x -> bottom.yAt(x + insideMm) + to * (top.yAt(x) - bottom.yAt(x)),
                0.7);
    }

    /** A fascia may sit high and leave the rafter's lower corner bare. */
    private static List<Crossing> facesToo(List<Crossing> columns, List<Crossing> higher) {
        List<Crossing> all = new ArrayList<>(columns);
        for (Crossing column : higher) {
            if (columns.stream().noneMatch(other -> Math.abs(other.position() - column.position()) < 0.4)) {
                all.add(column);
            }
        }
        all.sort(Comparator.comparingDouble(Crossing::position));
        return all;
    }

    private static Eaves nothing() {
        return new Eaves(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                new Doubts(Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private double coveringY(double x) {
        return roof.coveringTop().or(roof::coveringBottom).or(roof::rafterTop).map(edge -> edge.yAt(x)).orElse(0.0);
    }

    private record Stand(Crossing cut, Optional<Crossing> face) {}

    private Edge upright(Crossing column, double lowY, double highY, double closestMm) {
        double window = Math.min(0.25, 0.2 * closestMm);
        return view.fit().fit(Level.uprightAt(column.position()), lowY + 0.3, highY - 0.3, 0.12, window);
    }

    /**
     * Which upright is the plumb cut and which the fascia's face: the rafter's two edges end at the cut, give or take
     * an overshot corner, the board's closing lines lie between cut and face, and the sizes speak for or against.
     */
    private Optional<Stand> stand(
            List<Crossing> columns, List<Crossing> faces, Edge top, Edge bottom, double fromX, Optional<Edge> bargeEnd) {
        double endTop = inkEnd(top, columns, fromX);
        double endBottom = inkEnd(bottom, columns, fromX);
        Ranking<Stand> ranking = new Ranking<>(9);
        for (Crossing cut : faces) {
            // The rafter's lower corner may be left open below a fascia that sits high.
            double cost = (columns.contains(cut) ? 0 : 1)
                    + Math.min(3, Math.abs(endTop - cut.position()) / 0.6)
                    + Math.min(2.2, Math.abs(endBottom - cut.position()) / 0.6)
                    + 2 * (1 - cut.coverage())
                    + overhangCost(cut.position());
            double alone = cost + (expectation.asksPart("fascia") ? 3 : 0.5);
            ranking.offer(new Stand(cut, Optional.empty()), cut.position(), alone);
            for (Crossing face : faces) {
                double thickness = cut.position() - face.position();
                if (thickness < 0.5 || thickness > 5.5) {
                    continue;
                }
                double middleY = (bottom.yAt(face.position()) + top.yAt(face.position())) / 2;
                boolean barge = bargeEnd.map(end -> Math.abs(end.xAt(middleY) - face.position()) < 0.35).orElse(false);
                double both = cost
                        + Math.min(4, expectation.cost("fascia.thickness", thickness))
                        + 2 * (1 - face.coverage())
                        + (barge ? 2.5 : 0)
                        + (expectation.asksPart("fascia") ? 0 : 2)
                        - closed(face.position(), cut.position(), bottom, top);
                ranking.offer(new Stand(cut, Optional.of(face)), cut.position(), both);
            }
        }
        cutRival = ranking.rival(0.5, DOUBT_MARGIN);
        return ranking.best();
    }

    private double overhangCost(double cutX) {
        return wall.outer()
                .map(edge -> Math.min(2.5, expectation.cost("rafter.overhang", edge.middle().x() - cutX) / 1.5))
                .orElse(0.0);
    }

    /** Up to 1.6 for the short level lines that close a board at its top and bottom. */
    private double closed(double faceX, double cutX, Edge bottom, Edge top) {
        double width = cutX - faceX;
        double lowY = bottom.yAt(faceX) - 13;
        double highY = coveringY(cutX) + 1;
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(faceX), lowY, highY, Level.RIGHT, y -> 0.25 * width, y -> 0.75 * width, 0.8);
        double middle = (bottom.yAt(faceX) + top.yAt(faceX)) / 2;
        boolean above = rows.stream().anyMatch(row -> row.position() > middle);
        boolean below = rows.stream().anyMatch(row -> row.position() < middle);
        return (above ? 0.8 : 0) + (below ? 0.8 : 0);
    }

    /**
     * Where an edge's own ink ends on the left; what other lines that cross it leave there is not counted.
     */
    private double inkEnd(Edge edge, List<Crossing> crossings, double fromX) {
        double step = 0.1;
        double blank = 0;
        double end = fromX;
        for (double x = fromX; blank < 0.7 && x > fromX - 20; x -= step) {
            double here = x;
            if (crossings.stream().anyMatch(crossing -> Math.abs(crossing.position() - here) < 0.35)) {
                continue;
            }
            double position = edge.line().positionOf(new Point(x, edge.yAt(x)));
            boolean inked = view.fit().coverage(edge.line(), position - 0.15, position + 0.15, 0.45) > 0.5;
            blank = inked ? 0 : blank + step;
            if (inked) {
                end = x;
            }
        }
        double last = end;
        return crossings.stream()
                .mapToDouble(Crossing::position)
                .filter(position -> last - position > 0 && last - position < 0.5)
                .findFirst()
                .orElse(last);
    }

    private record Closing(Edge bottom, Edge top) {}

    /** A level line that may close the board below or above, and how unlikely it is to. */
    private record End(Crossing row, double cost) {}

    /** The short level lines that close the fascia. */
    private Optional<Closing> fasciaEnds(Edge outer, Edge inner, double lowY, double highY) {
        double outerX = outer.middle().x();
        double innerX = inner.middle().x();
        double width = innerX - outerX;
        double middle = 0.35 * lowY + 0.65 * highY;
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(outerX), lowY - 13, coveringY(innerX) + 1, Level.RIGHT,
                y -> 0.2 * width, y -> 0.8 * width, 0.75);
        List<End> bottoms = rows.stream()
                .filter(row -> row.position() <= middle)
                .map(row -> new End(row, endCost(outer, inner, row, middle, -1)))
                .toList();
        List<End> tops = rows.stream()
                .filter(row -> row.position() >= middle)
                .map(row -> new End(row, endCost(outer, inner, row, middle, 1)))
                .toList();
        Ranking<Crossing[]> ranking = new Ranking<>(7);
        for (End bottom : bottoms) {
            for (End top : tops) {
                double depth = top.row.position() - bottom.row.position();
                if (depth < 2) {
                    continue;
                }
                double cost = bottom.cost + top.cost + Math.min(2.2, expectation.cost("fascia.depth", depth));
                ranking.offer(new Crossing[] {bottom.row, top.row}, depth, cost);
            }
        }
        fasciaRival = ranking.rival(0.5, DOUBT_MARGIN);
        return ranking.best()
                .map(ends -> new Closing(closing(ends[0], outerX, innerX), closing(ends[1], outerX, innerX)));
    }

    private Edge closing(Crossing row, double outerX, double innerX) {
        return view.fit().fit(Level.levelAt(row.position()), outerX + 0.1, innerX - 0.1, 0.08, 0.2);
    }

    /** How unlikely a level line is to close the board: its sides reach it and end there, and it does not run through. */
    private double endCost(Edge outer, Edge inner, Crossing row, double middle, int upwards) {
        double y = row.position();
        double whole = Math.min(inked(outer, middle, y - 0.2 * upwards), inked(inner, middle, y - 0.2 * upwards));
        double near = Math.min(
                inked(outer, y - 1.1 * upwards, y - 0.2 * upwards), inked(inner, y - 1.1 * upwards, y - 0.2 * upwards));
        double reached = (whole + near) / 2;
        double beyond = Math.min(inked(outer, y + 1.1 * upwards, y + 2.3 * upwards), inked(inner, y + 1.1 * upwards, y + 2.3 * upwards));
        double outerX = outer.xAt(y);
        double innerX = inner.xAt(y);
        double through = Math.min(runsThrough(outerX - 2.2, outerX - 0.9, outerX, y), runsThrough(innerX + 0.9, innerX + 2.2, innerX, y));
        return 5 * (1 - reached) + 3 * beyond + 2 * (1 - row.coverage()) + 2 * through;
    }

    private double inked(Edge side, double fromY, double toY) {
        double low = Math.min(fromY, toY);
        double high = Math.max(fromY, toY);
        if (high - low < 0.4) {
            return 1;
        }
        return view.fit().coverage(Level.uprightAt(side.xAt((low + high) / 2)), low, high, DrawingView.OUTLINE_PART);
    }

    /** The share of ink where a line sloping like the roof through (x, y) would run. */
    private double runsThrough(double fromX, double toX, double x, double y) {
        Line line = new Line(new Point(x, y), view.slope());
        double cosine = view.slope().x();
        return view.fit().coverage(line, (fromX - x) / cosine, (toX - x) / cosine, DrawingView.OUTLINE_PART);
    }

    private Optional<Edge> bargeEnd(double rightMost) {
        if (roof.coveringTop().isEmpty()) {
            return Optional.empty();
        }
        Edge covering = roof.coveringTop().get();
        Run best = null;
        double bestCost = expectation.asksPart("barge-board") ? 6 : 3;
        for (Run run : view.upright()) {
            double x = run.segment().midpoint().x();
            double topY = run.highY();
            double bottomY = run.lowY();
            if (run.length() < 5 || x > rightMost || x < rightMost - 45 || run.ink() < 0.5 * view.outlineInk()) {
                continue;
            }
            double atTop = Math.abs(topY - covering.yAt(x));
            if (atTop > 2.5) {
                continue;
            }
            double slopesOff = slopesFrom(x, bottomY);
            double cost = atTop
                    + 4 * (1 - slopesOff)
                    + expectation.cost("barge-board.depth", topY - bottomY) / 2;
            if (cost < bestCost) {
                bestCost = cost;
                best = run;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        return Optional.of(view.fit(best, 0.5));
    }

    /** The share of ink on a sloping line that rises to the right from about a point. */
    private double slopesFrom(double x, double y) {
        double best = 0;
        for (double shift = -1.6; shift <= 1.6; shift += 0.15) {
            Line line = new Line(new Point(x, y + shift), view.slope());
            best = Math.max(best, view.fit().coverage(line, 0.4, 4.4, DrawingView.OUTLINE_PART));
        }
        return best;
    }

    /** The barge board's lower edge: the sloping line that starts at the foot of its end. */
    private Optional<Edge> bargeBottom(Edge end, double faceX) {
        double footY = lowEnd(end);
        double footX = end.xAt(footY);
        double cosine = view.slope().x();
        double free = (faceX - footX) / cosine;
        double readTo = Math.max(Math.min(free - 0.3, 25), 1.5);
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(footX), footY - 2.2, footY + 2.2, view.slope(), y -> 0.3, y -> readTo, 0.7);
        Crossing best = null;
        for (Crossing row : rows) {
            if (best == null || Math.abs(row.position() - footY) < Math.abs(best.position() - footY)) {
                best = row;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        Line rough = new Line(new Point(footX, best.position()), view.slope());
        double whole = wall.outer().map(edge -> (edge.xAt(Math.max(lowEnd(edge), footY)) - footX) / cosine).orElse(free);
        Edge alone = view.fit().fit(rough, 0.4, readTo, 0.12, 0.3);
        return Optional.of(bargeOverWholeLength(alone, readTo, whole));
    }

    private static double lowEnd(Edge upright) {
        return Math.min(upright.segment().start().y(), upright.segment().end().y());
    }

    /** Uses the edge's whole length to the wall where it keeps clear of the rafter's underside. */
    private Edge bargeOverWholeLength(Edge alone, double readTo, double whole) {
        Edge rafter = roof.rafterBottom().orElseThrow();
        double clear = Math.abs(rafter.line().distanceTo(alone.middle()));
        if (clear < 0.55 || whole < readTo + 3) {
            return alone;
        }
        Line through = alone.line();
        double covered = view.fit().coverage(
                through, alone.from(), alone.from() + whole - 1.5, DrawingView.OUTLINE_PART);
        if (covered < 0.75) {
            return alone;
        }
        return view.fit().fit(through, alone.from(), alone.from() + whole - 1.5, 0.3, 0.25);
    }

    private record Gutter(Edge outer, Edge bottom, Rim rim) {}

    /** A gutter's rim; in doubt where another height parts its ink nearly as well. */
    record Rim(double y, double sigma, Optional<Double> rival) {}

    /** Two sides of the gutter's box: a level bottom that ends at the fascia's face, and an upright at its other end. */
    private Optional<Gutter> gutter(
            double faceX, double lowY, double highY, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(faceX), lowY - 10, highY + 4, Level.RIGHT, y -> -2.6, y -> -0.4, 0.5);
        Ranking<Gutter> ranking = new Ranking<>(9);
        for (Crossing row : rows) {
            double leftX = leftEnd(row.position(), faceX - 1);
            double width = faceX - leftX;
            if (width < 1.5 || bargeEnd.map(end -> leftX < end.xAt(row.position()) - 1.2).orElse(false)) {
                continue;
            }
            addGutters(ranking, row, leftX, faceX, bargeEnd);
        }
        if (ranking.rival(0.6, DOUBT_MARGIN).isPresent()) {
            gutterDoubt = Optional.of("lines near the fascia could be read as different gutters");
        } else if (ranking.best().isPresent() && ranking.bestCost() > DOUBTFUL_GUTTER_COST) {
            gutterDoubt = Optional.of("the lines beside the fascia make no clear gutter");
        }
        if (ranking.best().isEmpty() && !isClean(faceX, lowY, highY, bargeEnd, bargeBottom)) {
            gutterDoubt = Optional.of("there is ink where the gutter should hang, but no clear gutter");
        }
        return ranking.best();
    }

    /** Whether the place where a gutter should hang shows no more ink than the lines already known there. */
    private boolean isClean(
            double faceX, double lowY, double highY, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        double width = expectation.exactOr("gutter.width", 6);
        double depth = expectation.exactOr("gutter.depth", 5);
        double middle = (lowY + highY) / 2;
        int inked = 0;
        int counted = 0;
        for (double x = faceX - 1.3 * width; x < faceX - 0.7; x += 0.2) {
            for (double y = middle - depth; y < middle + depth; y += 0.2) {
                Point point = new Point(x, y);
                boolean covered = roof.coveringBottom().map(edge -> point.y() > edge.yAt(point.x()) - 1).orElse(false);
                boolean barge = bargeEnd.map(edge -> Math.abs(edge.line().distanceTo(point)) < 0.6).orElse(false)
                        || bargeBottom.map(edge -> edge.line().distanceTo(point) < 0.6).orElse(false);
                boolean rafter = roof.rafterBottom().map(edge -> Math.abs(edge.line().distanceTo(point)) < 0.6).orElse(false);
                if (covered || barge || rafter) {
                    continue;
                }
                counted++;
                inked += view.ink().at(x, y) > 0.45 * view.outlineInk() ? 1 : 0;
            }
        }
        // On a steep roof known lines may take up the whole place, which then says nothing.
        return counted > 200 && inked / (double) counted < 0.02;
    }

    private double leftEnd(double y, double fromX) {
        double blank = 0;
        double end = fromX;
        Line line = Level.levelAt(y);
        for (double x = fromX; blank < 1 && x > fromX - 40; x -= 0.3) {
            boolean inked = view.fit().coverage(line, x - 0.3, x, 0.4) > 0.5;
            blank = inked ? 0 : blank + 0.3;
            if (inked) {
                end = x - 0.3;
            }
        }
        return end;
    }

    private void addGutters(
            Ranking<Gutter> ranking, Crossing row, double leftX, double faceX, Optional<Edge> bargeEnd) {
        double bottomY = row.position();
        List<Crossing> columns = crossLines.find(
                Level.levelAt(bottomY), leftX - 1.5, leftX + 3.6, Level.UP, x -> 0.4, x -> 2.8, 0.5);
        for (Crossing column : columns) {
            double x = column.position();
            if (x > faceX - 1.2 || bargeEnd.map(end -> Math.abs(end.xAt(bottomY) - x) < 0.3).orElse(false)) {
                continue;
            }
            Optional<Rim> end = rim(x, bottomY);
            if (end.isEmpty()) {
                continue;
            }
            Rim rim = end.get();
            double depth = rim.y - bottomY;
            // A gutter hangs below the covering that drains into it.
            boolean aboveCovering = roof.coveringBottom().map(edge -> bottomY > edge.yAt(x) - 0.8).orElse(false);
            if (depth < 1.4 || aboveCovering) {
                continue;
            }
            double below = view.fit().coverage(Level.uprightAt(x), bottomY - 2.5, bottomY - 1.2, DrawingView.OUTLINE_PART);
            double cost = expectation.cost("gutter.width", faceX - x)
                    + expectation.cost("gutter.depth", depth)
                    + 3 * below
                    + 2 * (1 - row.coverage())
                    + 2 * (1 - column.coverage())
                    + 0.5 * Math.abs(leftX - x);
            Edge bottom = view.fit().fit(Level.levelAt(bottomY), x + 0.4, faceX - 0.4, 0.12, 0.25);
            Edge outer = view.fit().fit(Level.uprightAt(x), bottomY + 0.4, rim.y - 0.3, 0.12, 0.25);
            // One figure for width and depth together, so that gutters that differ in either are rivals.
            double size = rim.y - bottom.middle().y() + 10 * (faceX - outer.middle().x());
            ranking.offer(new Gutter(outer, bottom, rim), size, cost);
        }
    }

    /**
     * The free upper end of an upright: the one height that best parts its dark piece from the lighter one above, refined
     * to where the darkness is half-way between both. Broken lead and a construction line that runs on are allowed for.
     *
     * @return the height and one standard deviation; empty where no end stands out
     */
    private Optional<Rim> rim(double x, double bottomY) {
        double step = 0.1;
        int steps = (int) Math.round(RIM_REACH_MM / step);
        double[] heights = new double[steps];
        for (int at = 0; at < steps; at++) {
            heights[at] = bottomY + 0.4 + (at + 0.5) * step;
        }
        double[] middle = middleInk(x, heights);
        Parting parting = new Parting(middle, 0.25 * view.outlineInk());
        OptionalInt best = parting.best(OptionalInt.empty());
        if (best.isEmpty()) {
            return Optional.empty();
        }
        int end = best.getAsInt();
        OptionalInt rival = parting.best(best);
        Optional<Double> doubt = rival.isPresent() && parting.error(rival.getAsInt()) < RIM_DOUBT * parting.error(end)
                ? Optional.of(heights[rival.getAsInt()])
                : Optional.empty();
        double half = (mean(middle, Math.max(0, end - 25), Math.max(3, end - 4))
                        + mean(middle, Math.min(steps - 6, end + 4), Math.min(steps, end + 14)))
                / 2;
        for (int at = Math.max(2, end - 6); at < Math.min(steps - 3, end + 7); at++) {
            double smooth = mean(middle, at - 2, at + 2);
            double next = mean(middle, at - 1, at + 3);
            if (smooth >= half && next < half) {
                double part = (smooth - half) / Math.max(1e-6, smooth - next);
                // The pencil's point stopped before the end of the mark, which is as round as the line is broad.
                return Optional.of(new Rim(heights[at] + (part - 0.5) * step - ROUND_END_MM, 0.1, doubt));
            }
        }
        return Optional.of(new Rim(heights[end] - step / 2 - ROUND_END_MM, 0.2, doubt));
    }

    /**
     * The ink that an upright itself has at some heights: what lies on its middle beyond what lies on both sides of it,
     * so that a line which crosses it does not count.
     */
    private double[] middleInk(double x, double[] heights) {
        double[] middle = new double[heights.length];
        for (int at = 0; at < heights.length; at++) {
            double y = heights[at];
            double here = (view.ink().at(x - 0.08, y) + view.ink().at(x, y) + view.ink().at(x + 0.08, y)) / 3;
            middle[at] = Math.max(0, here - Math.min(besideInk(x - 0.45, y), besideInk(x + 0.45, y)));
        }
        return middle;
    }

    private double besideInk(double x, double y) {
        return Math.max(view.ink().at(x, y), Math.max(view.ink().at(x, y + 0.25), view.ink().at(x, y - 0.25)));
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int index = from; index < to; index++) {
            sum += values[index];
        }
        return sum / (to - from);
    }

    /** The gutter's inner side: its own upright on the fascia's face, or the face itself, over the gutter's height. */
    private Edge gutterInner(Edge face, Gutter gutter) {
        double bottomY = gutter.bottom.middle().y();
        Edge side = view.fit().fit(
                Level.uprightAt(face.xAt(bottomY + 1)), bottomY + 0.5, Math.max(bottomY + 2, gutter.rim.y - 0.5), 0.12, 0.25);
        return side.lessSure(INNER_SIDE_SIGMA_MM);
    }

    private Optional<Edge> coveringEnd(Edge cut) {
        if (roof.coveringBottom().isEmpty() || roof.coveringTop().isEmpty()) {
            return Optional.empty();
        }
        Edge bottom = roof.coveringBottom().get();
        Edge top = roof.coveringTop().get();
        double thickness = bottom.distanceTo(top, view.slope());
        List<Crossing> columns = crossLines.find(
                bottom.line(), bottom.from() - 5, bottom.from() + 10, view.squareToSlope(),
                position -> 0.18 * thickness, position -> 0.82 * thickness, 0.45);
        double toe = roof.rafterTop()
                .map(rafterTop -> bottom.line().positionOf(Level.crossing(rafterTop, cut)))
                .orElse(bottom.from());
        return columns.stream()
                .min(Comparator.comparingDouble((Crossing column) -> 3 * (1 - view.fit().coverage(
                                bottom.line(), column.position() + 0.3, column.position() + 2.8, DrawingView.OUTLINE_PART))
                        + 2 * view.fit().coverage(
                                bottom.line(), column.position() - 2.8, column.position() - 1.2, DrawingView.OUTLINE_PART)
                        + 3 * (1 - column.coverage())
                        + Math.min(3, expectation.cost("covering.projection", toe - column.position())) / 1.5))
                .map(column -> {
                    Line across = new Line(bottom.line().pointAt(column.position()), view.squareToSlope());
                    return view.fit().fit(across, 0.15, thickness - 0.15, 0.25, 0.25);
                });
    }
}
