package wallplate.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/** Finds the barge board's end, an upright that hangs from the covering, and its lower edge, which slopes like the roof. */
final class BargeBoardReader {

    /** An upright as near as this to another part's is that part's own. */
    private static final double SAME_UPRIGHT_MM = 0.4;

    private static final double FURTHEST_OUT_MM = 45;
    private static final double SHORT_OF_COVERING_MM = 4;
    private static final double LEAST_DEPTH_MM = 3;
    private static final double SAME_FOOT_MM = 0.6;
    private static final double MOST_COST = 6;
    /** What it costs at most that an upright does not end at the covering. */
    private static final double MOST_AT_TOP = 2;

    private static final double CLEARLY_CHEAPER = 1;

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
        double bestCost = expectation.asksPart("barge-board") ? MOST_COST : MOST_COST / 2;
        List<Run> uprights = uprights(rightMost, other);
        for (Run run : uprights) {
            double x = run.segment().midpoint().x();
            double topY = run.highY();
            double bottomY = run.lowY();
            double atTop = fallsShort(x, topY, covering.yAt(x));
            if (atTop > SHORT_OF_COVERING_MM) {
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
            return expectation.asksPart("barge-board") ? endThatRunsOn(covering, uprights) : Optional.empty();
        }
        return Optional.of(view.fit(best, 0.5));
    }

    /** How far from the covering an upright ends, less what is inked of that way: broken lead leaves a gap near the top. */
    private double fallsShort(double x, double topY, double coveringY) {
        double gap = Math.abs(topY - coveringY);
        return gap > 2 * SHORT_OF_COVERING_MM ? gap : gap * (1 - view.uprightInk(x, topY, coveringY));
    }

    /** The dark uprights before the face that are no other part's. */
    private List<Run> uprights(double rightMost, Optional<Edge> other) {
        return view.upright().stream()
                .filter(run -> run.length() >= 5 && run.ink() >= 0.5 * view.outlineInk())
                .filter(run -> {
                    double x = run.segment().midpoint().x();
                    return x <= rightMost
                            && x >= rightMost - FURTHEST_OUT_MM
                            && !EavesPlace.standsAt(other, x, run.lowY(), SAME_UPRIGHT_MM);
                })
                .toList();
    }

    /** An upright that may be the board's end from its lower edge up to the covering, whatever more of it there is. */
    private record RunningOn(Run run, double footY, double cost) {}

    /**
     * The board's end as a part of an upright that runs on above the covering or below the board, as construction lines do,
     * which a scan of black and white shows as dark as outlines: told from the sloping line that starts at it.
     */
    private Optional<Edge> endThatRunsOn(Edge covering, List<Run> uprights) {
        List<RunningOn> ends = uprights.stream()
                .flatMap(run -> runningOn(run, covering).stream())
                .sorted(Comparator.comparingDouble(RunningOn::cost))
                .toList();
        if (ends.isEmpty() || ends.get(0).cost > MOST_COST) {
            return Optional.empty();
        }
        RunningOn best = ends.get(0);
        boolean isOpen = ends.stream()
                .skip(1)
                .anyMatch(next -> next.cost < best.cost + CLEARLY_CHEAPER
                        && (next.run != best.run || Math.abs(next.footY - best.footY) > SAME_FOOT_MM));
        return isOpen ? Optional.empty() : Optional.of(between(view.fit(best.run, 0.5), best.footY, covering));
    }

    private static Edge between(Edge upright, double footY, Edge covering) {
        double foot = upright.line().positionOf(new Point(upright.xAt(footY), footY));
        double top = upright.line().positionOf(Level.crossing(covering, upright));
        return upright.within(Math.min(foot, top), Math.max(foot, top));
    }

    private List<RunningOn> runningOn(Run run, Edge covering) {
        double x = run.segment().midpoint().x();
        double topY = covering.yAt(x);
        if (run.highY() < topY - SHORT_OF_COVERING_MM || run.lowY() > topY - LEAST_DEPTH_MM) {
            return List.of();
        }
        double atTop = Math.min(Math.abs(run.highY() - topY), MOST_AT_TOP);
        return place.crossLines()
                .find(Level.uprightAt(x), run.lowY() - 1.6, topY - LEAST_DEPTH_MM, view.slope(), y -> 0.3, y -> 4.4, 0.8)
                .stream()
                .filter(row -> row.ink() >= 0.5 * view.outlineInk() && isNoneOfTheRoofs(x, row.position()))
                .map(row -> new RunningOn(
                        run,
                        row.position(),
                        atTop
                                + 4 * (1 - row.coverage())
                                + expectation.cost("barge-board.depth", topY - row.position()) / 2))
                .toList();
    }

    private boolean isNoneOfTheRoofs(double x, double y) {
        return Stream.of(roof.rafterBottom(), roof.rafterTop(), roof.coveringBottom())
                .flatMap(Optional::stream)
                .allMatch(edge -> Math.abs(edge.yAt(x) - y) > SAME_FOOT_MM);
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
