package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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
            Optional<Double> gutterRimY,
            double gutterRimSigma,
            Optional<Edge> gutterInner,
            Optional<Edge> bargeEnd,
            Optional<Edge> bargeBottom,
            Optional<Edge> coveringEnd) {}

    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;
    private final WallReader.Wall wall;
    private final CrossLines crossLines;

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
        double endX = top.segment().start().x();
        double lowY = bottom.yAt(endX);
        double highY = top.yAt(endX);
        double height = highY - lowY;
        List<Crossing> columns = crossLines.find(
                Level.levelAt(lowY), endX - 8, endX + 3.5, Level.UP, x -> 0.12 * height, x -> 0.88 * height, 0.7);
        Optional<Edge> cut = cut(columns, endX, lowY, highY);
        if (cut.isEmpty()) {
            return nothing();
        }
        double cutX = cut.get().xAt((lowY + highY) / 2);
        Optional<Edge> bargeEnd = bargeEnd(cutX);
        Optional<Edge> fasciaOuter = fasciaOuter(columns, cutX, lowY, highY, bargeEnd);
        double faceX = fasciaOuter.map(edge -> edge.xAt((lowY + highY) / 2)).orElse(cutX);
        Optional<Edge> bargeBottom = bargeEnd.flatMap(end -> bargeBottom(end, faceX, cutX));
        Gutter gutter = gutter(faceX, lowY, highY, bargeEnd, bargeBottom);
        Optional<Edge> fasciaTop = fasciaOuter.flatMap(outer -> fasciaEnd(outer, cut.get(), highY - 0.5, coveringY(cutX) + 1.2, true));
        Optional<Edge> fasciaBottom = fasciaOuter.flatMap(outer -> fasciaEnd(outer, cut.get(), lowY - 12, lowY + 0.6 * height, false));
        Optional<Edge> inner = gutter == null || fasciaOuter.isEmpty()
                ? Optional.empty()
                : gutterInner(fasciaOuter.get(), gutter);
        return new Eaves(
                cut,
                fasciaOuter,
                fasciaTop,
                fasciaBottom,
                Optional.ofNullable(gutter).map(Gutter::outer),
                Optional.ofNullable(gutter).map(Gutter::bottom),
                Optional.ofNullable(gutter).map(Gutter::rimY),
                gutter == null ? 0 : gutter.rimSigma,
                inner,
                bargeEnd,
                bargeBottom,
                coveringEnd());
    }

    private static Eaves nothing() {
        return new Eaves(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), 0, Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty());
    }

    private double coveringY(double x) {
        return roof.coveringTop().or(roof::coveringBottom).or(roof::rafterTop).map(edge -> edge.yAt(x)).orElse(0.0);
    }

    /**
     * The plumb cut: the upright at which the rafter's top ends. With a fascia against it two uprights stand there a
     * board's thickness apart; the inner one is the cut.
     */
    private Optional<Edge> cut(List<Crossing> columns, double endX, double lowY, double highY) {
        double thickness = expectation.exactOr("fascia.thickness", 1.25);
        double bestCost = 3.2;
        Crossing best = null;
        for (Crossing column : columns) {
            if (column.position() < endX - 3) {
                continue;
            }
            double cost = Math.abs(column.position() - endX) / 0.9 + 2 * (1 - column.coverage());
            boolean board = columns.stream()
                    .anyMatch(other -> Math.abs(column.position() - other.position() - thickness) < 0.5);
            cost += board || !expectation.asksPart("fascia") ? 0 : 0.8;
            if (cost < bestCost) {
                bestCost = cost;
                best = column;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        return Optional.of(view.fit().fit(Level.uprightAt(best.position()), lowY + 0.3, highY - 0.3, 0.12, 0.25));
    }

    private Optional<Edge> fasciaOuter(
            List<Crossing> columns, double cutX, double lowY, double highY, Optional<Edge> bargeEnd) {
        double bestCost = 5;
        Crossing best = null;
        for (Crossing column : columns) {
            double thickness = cutX - column.position();
            if (thickness < 0.5 || thickness > 5.5) {
                continue;
            }
            boolean barge = bargeEnd.isPresent()
                    && Math.abs(bargeEnd.get().xAt((lowY + highY) / 2) - column.position()) < 0.35;
            double cost = expectation.cost("fascia.thickness", thickness)
                    + 2 * (1 - column.coverage())
                    + (barge ? 3 : 0);
            if (cost < bestCost) {
                bestCost = cost;
                best = column;
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        return Optional.of(view.fit().fit(Level.uprightAt(best.position()), lowY + 0.3, highY - 0.3, 0.12, 0.25));
    }

    /** A short level line that closes the fascia at its top or bottom. */
    private Optional<Edge> fasciaEnd(Edge outer, Edge inner, double fromY, double toY, boolean top) {
        double outerX = outer.middle().x();
        double innerX = inner.middle().x();
        double width = innerX - outerX;
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(outerX), fromY, toY, Level.RIGHT, y -> 0.2 * width, y -> 0.8 * width, 0.75);
        double bestCost = Double.MAX_VALUE;
        Crossing best = null;
        for (Crossing row : rows) {
            double sides = Math.min(sideInk(outer, row.position(), top), sideInk(inner, row.position(), top));
            double beyond = Math.max(
                    sideInk(outer, row.position() + (top ? 2.6 : -2.6), top),
                    sideInk(inner, row.position() + (top ? 2.6 : -2.6), top));
            double cost = 3 * (1 - sides) + 2.5 * beyond + 2 * (1 - row.coverage())
                    - 0.8 * Math.min(1, row.ink() / view.outlineInk());
            if (cost < bestCost) {
                bestCost = cost;
                best = row;
            }
        }
        if (best == null || bestCost > 2.5) {
            return Optional.empty();
        }
        return Optional.of(
                view.fit().fit(Level.levelAt(best.position()), outerX + 0.15, innerX - 0.15, 0.1, 0.2));
    }

    /** The share of ink on a side of the fascia in the two millimetres on the fascia's side of a height. */
    private double sideInk(Edge side, double y, boolean top) {
        double from = top ? y - 2 : y;
        double x = side.xAt(y);
        return view.fit().coverage(Level.uprightAt(x), from, from + 2, DrawingView.OUTLINE_PART);
    }

    private Optional<Edge> bargeEnd(double cutX) {
        if (roof.coveringTop().isEmpty()) {
            return Optional.empty();
        }
        Edge covering = roof.coveringTop().get();
        Run best = null;
        double bestCost = 6;
        for (Run run : view.upright()) {
            double x = run.segment().midpoint().x();
            double topY = Math.max(run.segment().start().y(), run.segment().end().y());
            double bottomY = Math.min(run.segment().start().y(), run.segment().end().y());
            if (run.length() < 5 || x > cutX - 0.6 || x < cutX - 45 || run.ink() < 0.5 * view.outlineInk()) {
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
    private Optional<Edge> bargeBottom(Edge end, double faceX, double cutX) {
        double footY = end.segment().start().y() < end.segment().end().y()
                ? end.segment().start().y()
                : end.segment().end().y();
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
        double whole = wall.outer().map(edge -> (edge.xAt(best(edge, footY)) - footX) / cosine).orElse(free);
        Edge alone = view.fit().fit(rough, 0.4, readTo, 0.12, 0.3);
        return Optional.of(bargeOverWholeLength(alone, rough, readTo, whole));
    }

    private static double best(Edge edge, double y) {
        return Math.max(Math.min(edge.segment().start().y(), edge.segment().end().y()), y);
    }

    /** Uses the edge's whole length to the wall where it keeps clear of the rafter's underside. */
    private Edge bargeOverWholeLength(Edge alone, Line rough, double readTo, double whole) {
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

    private record Gutter(Edge outer, Edge bottom, double rimY, double rimSigma) {}

    /** Two sides of the gutter's box: a level bottom that ends at the fascia's face, and an upright at its other end. */
    private Gutter gutter(
            double faceX, double lowY, double highY, Optional<Edge> bargeEnd, Optional<Edge> bargeBottom) {
        List<Crossing> rows = crossLines.find(
                Level.uprightAt(faceX), lowY - 10, highY + 4, Level.RIGHT, y -> -2.4, y -> -0.4, 0.75);
        List<Gutter> found = new ArrayList<>();
        List<Double> costs = new ArrayList<>();
        for (Crossing row : rows) {
            double leftX = leftEnd(row.position(), faceX - 1);
            double width = faceX - leftX;
            if (width < 1.5 || bargeEnd.map(end -> leftX < end.xAt(row.position()) - 1.2).orElse(false)) {
                continue;
            }
            addGutters(found, costs, row.position(), leftX, faceX, bargeEnd);
        }
        Gutter best = null;
        double bestCost = 9;
        for (int index = 0; index < found.size(); index++) {
            if (costs.get(index) < bestCost) {
                bestCost = costs.get(index);
                best = found.get(index);
            }
        }
        return best;
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
            List<Gutter> found, List<Double> costs, double bottomY, double leftX, double faceX, Optional<Edge> bargeEnd) {
        List<Crossing> columns = crossLines.find(
                Level.levelAt(bottomY), leftX - 1.5, leftX + 1.6, Level.UP, x -> 0.4, x -> 2.2, 0.75);
        for (Crossing column : columns) {
            double x = column.position();
            if (x > faceX - 1.2 || bargeEnd.map(end -> Math.abs(end.xAt(bottomY) - x) < 0.3).orElse(false)) {
                continue;
            }
            double[] rim = rim(x, bottomY);
            if (rim == null) {
                continue;
            }
            double depth = rim[0] - bottomY;
            double below = view.fit().coverage(Level.uprightAt(x), bottomY - 2.5, bottomY - 1.2, DrawingView.OUTLINE_PART);
            double cost = expectation.cost("gutter.width", faceX - x)
                    + expectation.cost("gutter.depth", depth)
                    + 3 * below
                    + Math.abs(leftX - x);
            Edge bottom = view.fit().fit(Level.levelAt(bottomY), x + 0.4, faceX - 0.4, 0.12, 0.25);
            Edge outer = view.fit().fit(Level.uprightAt(x), bottomY + 0.4, rim[0] - 0.3, 0.12, 0.25);
            found.add(new Gutter(outer, bottom, rim[0], rim[1]));
            costs.add(cost);
        }
    }

    /**
     * The free upper end of an upright: the height at which its darkness falls to half, and one standard deviation;
     * null where it runs on for longer than a gutter is deep.
     */
    private double[] rim(double x, double bottomY) {
        int steps = 240;
        double step = 0.1;
        double[] peaks = view.fit().peakInk(new Line(new Point(x, bottomY + steps * step / 2), Level.UP), steps * step / 2, steps);
        int end = -1;
        for (int at = 4; at < steps - 12; at++) {
            double ahead = mean(peaks, at + 1, at + 9);
            double behind = mean(peaks, Math.max(0, at - 12), at + 1);
            if (ahead < 0.32 * Math.max(behind, 0.6 * view.outlineInk())) {
                end = at;
                break;
            }
        }
        if (end < 0) {
            return null;
        }
        double behind = mean(peaks, Math.max(0, end - 20), Math.max(3, end - 3));
        double half = behind / 2;
        for (int at = Math.max(1, end - 8); at < Math.min(steps - 2, end + 8); at++) {
            double smooth = (peaks[at - 1] + peaks[at] + peaks[at + 1]) / 3;
            double next = (peaks[at] + peaks[at + 1] + peaks[at + 2]) / 3;
            if (smooth >= half && next < half && mean(peaks, at + 1, at + 8) < half) {
                double part = (smooth - half) / Math.max(1e-6, smooth - next);
                return new double[] {bottomY + (at + 0.5 + part) * step, 0.08};
            }
        }
        return new double[] {bottomY + (end + 0.5) * step, 0.2};
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int index = from; index < to; index++) {
            sum += values[index];
        }
        return sum / (to - from);
    }

    /** The gutter's own inner upright, which stands on the fascia's face or a few tenths beside it. */
    private Optional<Edge> gutterInner(Edge fasciaOuter, Gutter gutter) {
        double bottomY = gutter.bottom.middle().y();
        return Optional.of(view.fit().fit(
                Level.uprightAt(fasciaOuter.xAt(bottomY + 1)), bottomY + 0.5, Math.max(bottomY + 2, gutter.rimY - 0.5), 0.12, 0.25));
    }

    private Optional<Edge> coveringEnd() {
        if (roof.coveringBottom().isEmpty() || roof.coveringTop().isEmpty()) {
            return Optional.empty();
        }
        Edge bottom = roof.coveringBottom().get();
        Edge top = roof.coveringTop().get();
        double thickness = bottom.distanceTo(top, view.slope());
        List<Crossing> columns = crossLines.find(
                bottom.line(), bottom.from() - 4, bottom.from() + 4.5, view.squareToSlope(),
                position -> 0.18 * thickness, position -> 0.82 * thickness, 0.7);
        return columns.stream()
                .min(Comparator.comparingDouble((Crossing column) -> Math.abs(column.position() - bottom.from())
                        + 3 * (1 - column.coverage())))
                .map(column -> {
                    Line across = new Line(bottom.line().pointAt(column.position()), view.squareToSlope());
                    return view.fit().fit(across, 0.15, thickness - 0.15, 0.25, 0.25);
                });
    }
}
