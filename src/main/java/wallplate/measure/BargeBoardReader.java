package wallplate.measure;

import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the barge board's end, an upright that hangs from the covering, and its lower edge, which slopes like the roof. */
final class BargeBoardReader {

    /** An upright as near as this to another part's is that part's own. */
    private static final double SAME_UPRIGHT_MM = 0.4;

    private final EavesPlace place;
    private final DrawingView view;
    private final Expectation expectation;
    private final RoofLines roof;

    BargeBoardReader(EavesPlace place) {
        this.place = place;
        this.view = place.view();
        this.expectation = place.expectation();
        this.roof = place.roof();
    }

    /**
     * The board's end.
     *
     * @param rightMost how far to the right it may stand
     * @param other an upright that is another part's
     */
    Optional<Edge> end(double rightMost, Optional<Edge> other) {
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
            if (run.length() < 5 || x > rightMost || x < rightMost - 45 || run.ink() < 0.5 * view.outlineInk()
                    || EavesPlace.standsAt(other, x, run.lowY(), SAME_UPRIGHT_MM)) {
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
    Optional<Edge> bottom(Edge end, double faceX) {
        double footY = lowEnd(end);
        double footX = end.xAt(footY);
        double cosine = view.slope().x();
        double free = (faceX - footX) / cosine;
        double readTo = Math.max(Math.min(free - 0.3, 25), 1.5);
        List<Crossing> rows = place.crossLines().find(
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
        double whole = place.wall().outer().map(edge -> (edge.xAt(Math.max(lowEnd(edge), footY)) - footX) / cosine).orElse(free);
        Edge alone = view.fit().fit(rough, 0.4, readTo, 0.12, 0.3);
        return Optional.of(overWholeLength(alone, readTo, whole));
    }

    private static double lowEnd(Edge upright) {
        return Math.min(upright.segment().start().y(), upright.segment().end().y());
    }

    /** Uses the edge's whole length to the wall where it keeps clear of the rafter's underside. */
    private Edge overWholeLength(Edge alone, double readTo, double whole) {
        double clear = Math.abs(place.rafterBottom().line().distanceTo(alone.middle()));
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
}
