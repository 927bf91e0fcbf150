package wallplate.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
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
    /** Broken lead and lettering leave gaps of a few millimetres. */
    private static final double LONGEST_GAP_MM = 3.6;

    private static final double FOOT_SHIFT_MM = 0.8;
    private static final double FOOT_STEP_MM = 0.1;
    private static final double READ_INSIDE_MM = 5;
    private static final double MOST_OF_LINE = 0.8;
    private static final double HALF_OF_LINE = 0.5;
    /** Construction lines, which run on, are broken where a scan of black and white shows them. */
    private static final double WHOLE_LINE = 0.9;

    private static final double CLEAR_OF_UPRIGHT_MM = 0.3;
    private static final double CLEARLY_DARKER = 1.15;

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

    /**
     * Whether an upright that was taken for the board's end is joined to the fascia's face by a level line, as a gutter's
     * side is, rather than by a sloping one. The board's lower edge would go on inside the plumb cut.
     */
    boolean isClosedByALevel(Edge end, double faceX, double cutX) {
        double footY = lowEnd(end);
        double footX = end.xAt(footY);
        double covered = 0;
        double level = 0;
        double sloping = 0;
        boolean isSlopingOn = false;
        for (double shift = -FOOT_SHIFT_MM; shift <= FOOT_SHIFT_MM + 1e-9; shift += FOOT_STEP_MM) {
            Point foot = new Point(footX, footY + shift);
            covered = Math.max(covered, view.levelInk(foot.y(), footX + 0.3, faceX - 0.3));
            level = Math.max(level, meanInk(foot, Level.RIGHT, faceX));
            sloping = Math.max(sloping, meanInk(foot, view.slope(), faceX));
            Line edge = new Line(foot, view.slope());
            Point inside = edge.pointAt((cutX + READ_INSIDE_MM / 2 - footX) / view.slope().x());
            isSlopingOn |= isNoneOfTheRoofs(inside.x(), inside.y())
                    && place.slopingInk(cutX + 1, cutX + READ_INSIDE_MM, footX, foot.y()) > HALF_OF_LINE;
        }
        return covered > MOST_OF_LINE && level > CLEARLY_DARKER * sloping && !isSlopingOn;
    }

    /** The mean ink from beside an upright's foot to beside the fascia's face, along a direction. */
    private double meanInk(Point foot, Vector direction, double faceX) {
        double sum = 0;
        int samples = 0;
        for (double x = foot.x() + 0.4; x < faceX - 0.4; x += FOOT_STEP_MM) {
            double far = (x - foot.x()) / direction.x();
            sum += view.ink().at(x, foot.y() + far * direction.y());
            samples++;
        }
        return samples == 0 ? 0 : sum / samples;
    }

    /** The dark uprights before the face that are no other part's; where lettering broke one, its pieces together as well. */
    private List<Run> uprights(double rightMost, Optional<Edge> other) {
        return Stream.concat(view.upright().stream(), view.upright().stream().flatMap(this::joined))
                .filter(run -> run.length() >= 5 && run.ink() >= 0.5 * view.outlineInk())
                .filter(run -> {
                    double x = run.segment().midpoint().x();
                    return x <= rightMost
                            && x >= rightMost - FURTHEST_OUT_MM
                            && !EavesPlace.standsAt(other, x, run.lowY(), SAME_UPRIGHT_MM);
                })
                .toList();
    }

    /** An upright together with each that goes on below it beyond a gap. */
    private Stream<Run> joined(Run upper) {
        return view.upright().stream()
                .filter(lower -> standsWith(lower, upper))
                .filter(lower -> upper.lowY() > lower.highY() && upper.lowY() - lower.highY() < LONGEST_GAP_MM)
                .map(lower -> new Run(
                        new Segment(low(lower), high(upper)), upper.stroke(), Math.min(upper.ink(), lower.ink())));
    }

    /** Whether an upright stands where another does. */
    private static boolean standsWith(Run run, Run other) {
        return Math.abs(run.segment().midpoint().x() - other.segment().midpoint().x()) < SAME_UPRIGHT_MM;
    }

    private static Point low(Run run) {
        Segment segment = run.segment();
        return segment.start().y() < segment.end().y() ? segment.start() : segment.end();
    }

    private static Point high(Run run) {
        Segment segment = run.segment();
        return segment.start().y() < segment.end().y() ? segment.end() : segment.start();
    }

    /** An upright that may be the board's end from its lower edge up to the covering, whatever more of it there is. */
    private record RunningOn(Run run, double footY, double cost) {}

    /**
     * The board's end as a part of an upright that runs on above the covering or below the board, as construction lines do,
     * which a scan of black and white shows as dark as outlines: told from the sloping line that starts at it.
     */
    private Optional<Edge> endThatRunsOn(Edge covering, List<Run> uprights) {
        List<RunningOn> all = uprights.stream()
                .flatMap(run -> runningOn(run, covering).stream())
                .sorted(Comparator.comparingDouble(RunningOn::cost))
                .toList();
        List<RunningOn> likely = all.stream().filter(end -> end.cost <= MOST_COST).toList();
        List<RunningOn> ends = all.stream()
                .filter(end -> end.cost > MOST_COST || likely.stream().noneMatch(further -> goesOnTo(end, further)))
                .toList();
        if (ends.isEmpty() || ends.get(0).cost > MOST_COST) {
            return Optional.empty();
        }
        RunningOn best = ends.get(0);
        boolean isOpen = ends.stream()
                .skip(1)
                .anyMatch(next -> next.cost < best.cost + CLEARLY_CHEAPER
                        && !(standsWith(next.run, best.run) && Math.abs(next.footY - best.footY) < SAME_FOOT_MM));
        return isOpen ? Optional.empty() : Optional.of(between(view.fit(best.run, 0.5), best.footY, covering));
    }

    /** Whether the sloping line of one end goes on whole to an upright further out: that is where it starts. */
    private boolean goesOnTo(RunningOn end, RunningOn further) {
        double x = end.run.segment().midpoint().x();
        double furtherX = further.run.segment().midpoint().x();
        Line edge = new Line(new Point(x, end.footY), view.slope());
        Point start = edge.pointAt((furtherX - x) / view.slope().x());
        return furtherX < x - SAME_UPRIGHT_MM
                && Math.abs(start.y() - further.footY) < SAME_FOOT_MM
                && place.slopingInk(furtherX + CLEAR_OF_UPRIGHT_MM, x - CLEAR_OF_UPRIGHT_MM, x, end.footY) > WHOLE_LINE;
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

    /** Whether a sloping line is the covering's underside, which the board hides: its lower edge is never there. */
    private boolean isCoverings(double x, double y) {
        return roof.coveringBottom().map(edge -> Math.abs(edge.yAt(x) - y) < SAME_FOOT_MM).orElse(false);
    }

    /** The share of ink on a sloping line that rises to the right from about a point. */
    private double slopesFrom(double x, double y) {
        double best = 0;
        for (double shift = -1.6; shift <= 1.6; shift += 0.15) {
            if (isCoverings(x, y + shift)) {
                continue;
            }
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
        Crossing best = rows.stream()
                .filter(row -> !isCoverings(footX, row.position()))
                .min(Comparator.comparingDouble(row -> Math.abs(row.position() - footY)))
                .or(() -> onlyOneAbove(end, footY, readTo))
                .orElse(null);
        if (best == null) {
            return Optional.empty();
        }
        Line rough = new Line(new Point(footX, best.position()), view.slope());
        double whole = place.wall().outer().map(edge -> (edge.xAt(Math.max(lowEnd(edge), footY)) - footX) / cosine).orElse(free);
        Edge alone = view.fit().fit(rough, 0.4, readTo, 0.12, 0.3);
        return Optional.of(overWholeLength(alone, readTo, whole));
    }

    /** The lower edge of a board whose end runs on further below it, as a construction line does: the one that slopes from there. */
    private Optional<Crossing> onlyOneAbove(Edge end, double footY, double readTo) {
        double x = end.xAt(footY);
        List<Crossing> rows = place.crossLines()
                .find(Level.uprightAt(x), footY, place.coveringY(x) - LEAST_DEPTH_MM, view.slope(), y -> 0.3, y -> readTo, MOST_OF_LINE)
                .stream()
                .filter(row -> row.ink() >= 0.5 * view.outlineInk() && isNoneOfTheRoofs(x, row.position()))
                .toList();
        return rows.size() == 1 ? Optional.of(rows.get(0)) : Optional.empty();
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
