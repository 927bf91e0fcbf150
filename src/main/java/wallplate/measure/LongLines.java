package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.stroke.Edge;

/**
 * Tells which lines end at the break line and follows each over its whole length: a long line may have been found in
 * pieces, led astray where another runs into it, or drawn on as a construction line.
 */
final class LongLines {

    /** A line ends at the break line if it ends no further than this from it. */
    static final double REACHES_BREAK_MM = 3.0;
    /** How far it may run on where the break line is known: a scan of black and white shows construction lines as outlines. */
    static final double LONG_RUNS_ON_MM = 35;
    /** Two level lines no further apart than this may be a ceiling board's. */
    static final double THICKEST_BOARD_MM = 1.3;
    /** How far before the break line one of two lines that lie close together may lose itself in the other. */
    private static final double LOST_MM = 40;

    private static final double ALMOST_WHOLE = 0.85;
    /** How dark, as a share of the outlines' ink, a line must be where it is carried on. */
    private static final double OF_OUTLINE = 0.43;
    /** How dark where it fades on the last bit before the break line, in a photograph's glare. */
    private static final double FADED = 0.2;
    /** A fit so far from the run that it began with has been drawn to a neighbouring line. */
    private static final double DRAWN_AWAY_MM = 0.25;

    private static final double CLOSE_BY_MM = 0.16;
    /** As much of one line must another run beside it to be its neighbour. */
    private static final double LONG_OF_NEIGHBOUR = 0.5;
    /** A piece no further than this from a line carried on to it is a piece of it. */
    private static final double SAME_LINE_MM = 0.35;
    /** A piece must be so many times longer than the gap over which it is carried on, and the gap inked to so much. */
    private static final double LONG_FOR_ITS_GAP = 2;

    private static final double MOSTLY_INKED = 0.75;
    /** A line may be found in pieces; this long a piece at the break line is enough to follow it back. */
    private static final double SHORTEST_PIECE_MM = 10;

    private static final double SHORTEST_SLOPE_MM = 30;
    private static final double SLOPE_OF_LONGEST = 0.4;
    private static final double SAME_SLOPE_MM = 0.6;
    private static final double SHORTEST_LEVEL_MM = 20;
    private static final double LEVEL_OF_LONGEST = 0.25;
    private static final double SAME_LEVEL_MM = 0.45;

    private final DrawingView view;
    private final Optional<Edge> breakLine;

    /** @param breakLine where the drawing ends on the inside; where it was not found every line may be one of these */
    LongLines(DrawingView view, Optional<Edge> breakLine) {
        this.view = view;
        this.breakLine = breakLine;
    }

    /** The sloping lines, longest first. */
    List<Edge> slopes() {
        return mains(slopesToBreak(), SHORTEST_SLOPE_MM, SLOPE_OF_LONGEST, SAME_SLOPE_MM);
    }

    /** The edges of level lines, longest first. */
    List<Edge> levels(List<Run> runs) {
        return mains(runs, SHORTEST_LEVEL_MM, LEVEL_OF_LONGEST, SAME_LEVEL_MM);
    }

    private boolean endsAtPaper(Run run) {
        return run.segment().end().y() > view.ink().heightMm() - 2 || run.segment().end().x() > view.ink().widthMm() - 2;
    }

    /**
     * The sloping lines that reach the break line: among them those that were drawn on far beyond it, and those that lost
     * themselves in a neighbouring line just before it.
     */
    private List<Run> slopesToBreak() {
        double longest = view.sloping().stream()
                .filter(run -> reaches(run, REACHES_BREAK_MM, BreakLine.RUNS_ON_MM))
                .mapToDouble(Run::length)
                .max()
                .orElse(0);
        return view.sloping().stream()
                .filter(run -> reaches(run, REACHES_BREAK_MM, LONG_RUNS_ON_MM)
                        || endsAtPaper(run)
                        || (run.length() > ALMOST_WHOLE * longest && reaches(run, LOST_MM, BreakLine.RUNS_ON_MM))
                        || isInkedToBreak(run))
                .toList();
    }

    /** The level lines that reach the break line. */
    List<Run> levelsToBreak() {
        return view.level().stream()
                .filter(run -> reaches(run, REACHES_BREAK_MM, LONG_RUNS_ON_MM)
                        || endsAtPaper(run)
                        || isInkedToBreak(run)
                        || isLostInAnother(run))
                .toList();
    }

    /** Whether a level line runs into its neighbour, as those of a thin board may, and that one goes on to the break line. */
    private boolean isLostInAnother(Run run) {
        return neighbours(run)
                .anyMatch(other -> other.segment().end().x() > run.segment().end().x()
                        && run.length() > LONG_OF_NEIGHBOUR * other.length()
                        && reaches(other, REACHES_BREAK_MM, LONG_RUNS_ON_MM));
    }

    /** The other level lines that lie no further from a line than those of a thin board, where both are. */
    private Stream<Run> neighbours(Run run) {
        Segment own = run.segment();
        return view.level().stream().filter(other -> {
            double both = Math.min(own.end().x(), other.segment().end().x())
                    - Math.max(own.start().x(), other.segment().start().x());
            return other != run
                    && both > LONG_OF_NEIGHBOUR * (own.end().x() - own.start().x())
                    && Math.abs(own.line().distanceTo(other.segment().midpoint())) < THICKEST_BOARD_MM;
        });
    }

    /** Whether a line that was found only in a lower piece goes on to the break line all the same. */
    private boolean isInkedToBreak(Run run) {
        if (breakLine.isEmpty() || !reaches(run, LOST_MM, 0)) {
            return false;
        }
        Edge edge = view.fit(run, 1);
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        return edge.length() > LONG_FOR_ITS_GAP * (end - edge.to())
                && view.fit().coverage(edge.line(), edge.to(), end, FADED) > MOSTLY_INKED;
    }

    /** The edge carried on to the break line where it ends short of it and its own line is inked as far. */
    private Edge toBreak(Edge edge) {
        if (breakLine.isEmpty()) {
            return edge;
        }
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        boolean isShort = end - edge.to() > REACHES_BREAK_MM && end - edge.to() < LOST_MM;
        return isShort && view.fit().coverage(edge.line(), edge.to(), end, OF_OUTLINE) > MOSTLY_INKED
                ? over(edge, edge.from(), end)
                : edge;
    }

    /**
     * The edges of runs, longest first, each once.
     *
     * @param shortest the least length of one, in millimetres
     * @param partOfLongest the least length as a share of the longest one's
     * @param sameMm how near to another an edge is that one again
     */
    private List<Edge> mains(List<Run> runs, double shortest, double partOfLongest, double sameMm) {
        List<Edge> mains = new ArrayList<>();
        double longest = 0;
        for (Run run : runs) {
            if (run.length() < SHORTEST_PIECE_MM) {
                continue;
            }
            Edge edge = upTo(toBreak(joined(extended(fitted(run)))));
            if (edge.length() < Math.max(shortest, partOfLongest * longest)) {
                continue;
            }
            longest = Math.max(longest, edge.length());
            boolean known = mains.stream()
                    .anyMatch(main -> Math.abs(main.distanceTo(edge, main.line().direction())) < sameMm);
            if (!known) {
                mains.add(edge);
            }
        }
        return mains;
    }

    /**
     * The edge carried on to the left as far as its own line is inked, and fitted again over the whole: a long line may
     * have been found in pieces, or led astray where another runs into it.
     */
    private Edge extended(Edge edge) {
        double reach = 0.5;
        double blank = 0;
        double end = edge.from();
        for (double position = edge.from() - reach; blank < 3; position -= reach) {
            boolean inked = view.fit().coverage(edge.line(), position, position + reach, OF_OUTLINE) > 0.5;
            blank = inked ? 0 : blank + reach;
            if (inked) {
                end = position;
            }
        }
        if (edge.from() - end < 3) {
            return edge;
        }
        return over(edge, end, edge.to());
    }

    /**
     * The edge with the piece of its own line that was found beyond a gap to its left, where light or rubbing left hardly
     * anything of it, and fitted again over both.
     */
    private Edge joined(Edge edge) {
        return Stream.concat(view.sloping().stream(), view.level().stream())
                .filter(run -> continues(run, edge))
                .max(Comparator.comparingDouble(Run::length))
                .map(run -> edge.line().positionOf(run.segment().start()))
                .map(from -> over(edge, from, edge.to()))
                .orElse(edge);
    }

    private boolean continues(Run run, Edge edge) {
        double gap = edge.from() - edge.line().positionOf(run.segment().end());
        return gap > 0
                && run.length() > LONG_FOR_ITS_GAP * gap
                && Math.abs(edge.line().distanceTo(run.segment().end())) < SAME_LINE_MM
                && Math.abs(edge.line().distanceTo(run.segment().start())) < SAME_LINE_MM
                && view.fit().coverage(edge.line(), edge.from() - gap, edge.from(), FADED) > MOSTLY_INKED;
    }

    /** The edge fitted again over another length of its line. */
    private Edge over(Edge edge, double from, double to) {
        return view.fit().fit(edge.line(), from + 1, to - 1, 1, 0.25).extendedTo(from, to, edge.line());
    }

    /** The run's own line: where the ink beside it drew the fit away, or may, fitted from close by. */
    private Edge fitted(Run run) {
        Edge edge = view.fit(run, 1);
        Point middle = run.segment().line().pointAt(run.length() / 2);
        boolean hasNeighbour = neighbours(run).findAny().isPresent();
        if (Math.abs(edge.line().distanceTo(middle)) < DRAWN_AWAY_MM && !hasNeighbour) {
            return edge;
        }
        double half = run.length() / 2;
        return view.fit().fit(run.segment().line(), 1, run.length() - 1, 1, CLOSE_BY_MM).within(-half, half);
    }

    /** Whether a line ends at the break line, not more than one length short of it and another beyond it. */
    private boolean reaches(Run run, double shortMm, double onMm) {
        if (breakLine.isEmpty()) {
            return true;
        }
        double beyond = run.segment().end().x() - breakLine.get().xAt(run.segment().end().y());
        double before = breakLine.get().xAt(run.segment().start().y()) - run.segment().start().x();
        return beyond > -shortMm && beyond < onMm && before > SHORTEST_PIECE_MM;
    }

    /** The edge without what runs on beyond the break line. */
    private Edge upTo(Edge edge) {
        if (breakLine.isEmpty()) {
            return edge;
        }
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        return edge.to() > end + 1 && end > edge.from() + SHORTEST_PIECE_MM ? edge.within(edge.from(), end) : edge;
    }
}
