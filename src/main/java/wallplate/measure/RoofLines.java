package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/**
 * The long lines that end at the break line: the four sloping ones of rafter and covering, and the level ones of tie
 * beam and ceiling where the detail has these parts.
 *
 * @param breakLine where the drawing ends on the inside, drawn or, where a scan has lost that thin line, told by where the
 *     others end; of a roof without a break line its own plumb end
 */
record RoofLines(
        Optional<Edge> breakLine,
        Optional<Edge> rafterBottom,
        Optional<Edge> rafterTop,
        Optional<Edge> coveringBottom,
        Optional<Edge> coveringTop,
        Optional<Edge> tieBeamTop,
        Optional<Edge> tieBeamBottom,
        Optional<Edge> ceilingTop,
        Optional<Edge> ceilingBottom) {

    /** Of rafter and covering, two each. */
    private static final int SLOPES = 4;

    private static final double REACHES_BREAK_MM = 3.0;
    /** How far a line that is to tell where the break line is may run on beyond it. */
    private static final double RUNS_ON_MM = 16;
    /** How far where the break line is known: construction lines, which a scan of black and white shows as dark as outlines. */
    private static final double LONG_RUNS_ON_MM = 35;
    /** A line is a long one of its family from this share of the longest on. */
    private static final double OF_LONGEST = 0.6;
    /** So many long sloping lines are a roof's; leaders and construction lines are fewer. */
    private static final int MOST_PASSING = 3;
    /** How far before the break line one of two lines that lie close together may lose itself in the other. */
    private static final double LOST_MM = 40;
    /** How far above a level line the break line may have been left off. */
    private static final double SHORT_OF_LEVEL_MM = 8;

    /** No level line of beam or ceiling lies further below the eaves. */
    private static final double BELOW_EAVES_MM = 20;
    /** A level line nearer under the rafter than this is none of beam or ceiling. */
    private static final double CLEAR_OF_RAFTER_MM = 2;

    private static final double ALMOST_WHOLE = 0.85;
    /** How dark, as a share of the outlines' ink, a line must be where it is carried on. */
    private static final double OF_OUTLINE = 0.43;
    /** How dark where it fades on the last bit before the break line, in a photograph's glare. */
    private static final double FADED = 0.2;
    /** A fit so far from the run that it began with has been drawn to a neighbouring line. */
    private static final double DRAWN_AWAY_MM = 0.25;

    private static final double CLOSE_BY_MM = 0.16;
    /** A piece no further than this from a line carried on to it is a piece of it. */
    private static final double SAME_LINE_MM = 0.35;
    /** A piece must be so many times longer than the gap over which it is carried on, and the gap inked to so much. */
    private static final double LONG_FOR_ITS_GAP = 2;

    private static final double MOSTLY_INKED = 0.75;
    /** A line may be found in pieces; this long a piece at the break line is enough to follow it back. */
    private static final double SHORTEST_PIECE_MM = 10;
    /** How far a thickness may lie from what a scale makes of it: a share of it, or this much where it is thin. */
    private static final double AGREEING_SHARE = 0.14;
    private static final double AGREEING_MM = 0.25;
    /** The logarithm of a factor that cannot come from careless drawing: 1.2. */
    private static final double CLEARLY_ANOTHER = 0.18;

    private static final double THICKEST_BOARD_MM = 1.3;
    /** As much of one line must another run beside it to be its neighbour. */
    private static final double LONG_OF_NEIGHBOUR = 0.5;
    /** No slip makes a tie beam so much thinner than it was asked for. */
    private static final double THINNEST_BEAM_SHARE = 0.4;

    private static final double BOARD_COST = 8;

    static RoofLines of(DrawingView view, Expectation expectation) {
        Optional<Edge> breakLine = expectation.draws("break")
                ? breakLine(view).or(() -> PlumbEnd.whereLinesEnd(view))
                : PlumbEnd.of(view);
        List<Edge> slopes = parted(view, mains(view, slopesToBreak(view, breakLine), breakLine, 30, 0.4, 0.6));
        slopes.sort(Comparator.comparingDouble(edge -> view.squareToSlope().dot(edge.middle().minus(Point.ORIGIN))));
        Ordered.Assignment roof = Ordered.assign(
                slopes.stream().mapToDouble(edge -> heightAcross(view, edge, slopes)).toArray(),
                slopes.stream().mapToDouble(Edge::length).toArray(),
                List.of(
                        (Ordered.Gap) gap -> expectation.cost("rafter.depth", gap),
                        gap -> expectation.cost("support.depth", gap),
                        gap -> expectation.cost("covering.thickness", gap)),
                new double[] {
                    expectation.exactOr("rafter.depth", 6),
                    expectation.exactOr("support.depth", 3),
                    expectation.exactOr("covering.thickness", 2)
                },
                allAsked(4),
                (role, line) -> 0,
                lines -> 0);
        Optional<Edge> rafterBottom = roof.line(0).map(slopes::get);
        List<Edge> found = expectation.knows("tie-beam") || expectation.knows("ceiling")
                ? levels(view, breakLine, rafterBottom, eavesY(slopes))
                : List.of();
        List<Edge> levels = withBothOfBoard(view, expectation, found, beams(view, expectation, found, rafterBottom));
        Ordered.Assignment beams = beams(view, expectation, levels, rafterBottom);
        return new RoofLines(
                breakLine,
                rafterBottom,
                roof.line(1).map(slopes::get),
                roof.line(2).map(slopes::get),
                roof.line(3).map(slopes::get),
                beams.line(0).map(levels::get),
                beams.line(1).map(levels::get),
                beams.line(2).map(levels::get),
                beams.line(3).map(levels::get));
    }

    /** The sloping lines, where some are missing, with each that is two in truth parted into these. */
    private static List<Edge> parted(DrawingView view, List<Edge> slopes) {
        if (slopes.size() >= SLOPES || slopes.isEmpty()) {
            return slopes;
        }
        TwinLines twins = twins(view, slopes);
        List<Edge> parted = new ArrayList<>();
        for (Edge edge : slopes) {
            parted.addAll(twins.parted(edge).orElse(List.of(edge)));
        }
        return parted.size() > SLOPES ? slopes : parted;
    }

    /** Of some lines of which the broadest may be two. */
    private static TwinLines twins(DrawingView view, List<Edge> lines) {
        double breadth = lines.stream()
                .mapToDouble(edge -> UsualBreadth.of(view, edge))
                .sorted()
                .limit(2)
                .average()
                .orElseThrow();
        return new TwinLines(view, breadth);
    }

    /** The level lines, the one that was found of a ceiling board's two parted into both where it is two in truth. */
    private static List<Edge> withBothOfBoard(
            DrawingView view, Expectation expectation, List<Edge> levels, Ordered.Assignment beams) {
        boolean hasOne = beams.line(2).isPresent() != beams.line(3).isPresent();
        if (!hasOne || !expectation.draws("ceiling", "bottom")) {
            return levels;
        }
        Edge one = levels.get(beams.line(2).or(() -> beams.line(3)).orElseThrow());
        return twins(view, levels)
                .parted(one)
                .map(both -> Stream.concat(levels.stream().filter(edge -> edge != one), both.stream())
                        .sorted(Comparator.comparingDouble((Edge edge) -> edge.middle().y()).reversed())
                        .toList())
                .orElse(levels);
    }

    /** The lower end of the longest lines: one of them may have been found only in its upper piece. */
    private static double eavesY(List<Edge> slopes) {
        return slopes.stream().mapToDouble(edge -> edge.segment().start().y()).min().orElse(0);
    }

    private static double[] allAsked(int roles) {
        double[] costs = new double[roles];
        Arrays.fill(costs, Ordered.MISSING_COST);
        return costs;
    }

    /** The upright at which most long sloping and level lines end. */
    private static Optional<Edge> breakLine(DrawingView view) {
        Run best = null;
        double bestScore = 0;
        double longest = view.sloping().stream().mapToDouble(Run::length).max().orElse(0);
        List<Run> longOnes = view.sloping().stream().filter(run -> run.length() > OF_LONGEST * longest).toList();
        for (Run upright : view.upright()) {
            if (upright.stroke().length() < 15 || isPassed(upright, longOnes)) {
                continue;
            }
            double score = 0;
            int slopingEnds = 0;
            int ends = 0;
            for (List<Run> family : List.of(view.sloping(), view.level())) {
                for (Run run : family) {
                    if (run.length() < 25) {
                        continue;
                    }
                    double endX = run.segment().end().x();
                    double endY = run.segment().end().y();
                    double breakX = upright.stroke().centreLine().line().direction().y() == 0
                            ? Double.NaN
                            : xAt(upright, endY);
                    boolean spanned = endY > upright.stroke().centreLine().start().y() - 3
                            && endY < upright.stroke().centreLine().end().y() + 3;
                    double part = endsAt(breakX, endX);
                    if (spanned && part > 0) {
                        // The frame's level lines end together too; sloping ones only at the break line.
                        boolean slopes = family == view.sloping();
                        score += (slopes ? 3 : 1) * part * Math.min(run.length(), 120);
                        slopingEnds += slopes ? 1 : 0;
                        ends++;
                    }
                }
            }
            // One sloping line may run on to the frame, where the frame's own level lines end.
            double likely = slopingEnds > 1 ? score : score / 2;
            if (ends >= 2 && slopingEnds >= 1 && likely > bestScore) {
                bestScore = likely;
                best = upright;
            }
        }
        return Optional.ofNullable(best).map(run -> view.fit(new Run(run.stroke().centreLine(), run.stroke(), run.ink()), 1));
    }

    /**
     * Whether a roof's long lines go on beyond an upright further than construction lines do: where a scan has lost the thin
     * break line, a face of the wall with a leader that ends on it may look like one.
     */
    private static boolean isPassed(Run upright, List<Run> longOnes) {
        return longOnes.stream()
                .map(run -> run.segment().end())
                .filter(end -> end.x() - xAt(upright, end.y()) > LONG_RUNS_ON_MM)
                .count() >= MOST_PASSING;
    }

    /**
     * How far a line may be said to end at an upright, from 0 to 1: less where it runs on, as construction lines do, which a
     * scan of black and white shows as dark as outlines.
     */
    private static double endsAt(double breakX, double endX) {
        double beyond = endX - breakX;
        if (Math.abs(beyond) < 1.5) {
            return 1;
        }
        return beyond > 0 && beyond < RUNS_ON_MM ? 0.5 * (1 - beyond / RUNS_ON_MM) : 0;
    }

    private static double xAt(Run upright, double y) {
        var line = upright.stroke().centreLine();
        double slope = (line.end().x() - line.start().x()) / (line.end().y() - line.start().y());
        return line.start().x() + slope * (y - line.start().y());
    }

    private static boolean endsAtPaper(DrawingView view, Run run) {
        return run.segment().end().y() > view.ink().heightMm() - 2 || run.segment().end().x() > view.ink().widthMm() - 2;
    }

    /**
     * The sloping lines that reach the break line: among them those that were drawn on far beyond it, and those that lost
     * themselves in a neighbouring line just before it.
     */
    private static List<Run> slopesToBreak(DrawingView view, Optional<Edge> breakLine) {
        double longest = view.sloping().stream()
                .filter(run -> reaches(run, breakLine, REACHES_BREAK_MM, RUNS_ON_MM))
                .mapToDouble(Run::length)
                .max()
                .orElse(0);
        return view.sloping().stream()
                .filter(run -> reaches(run, breakLine, REACHES_BREAK_MM, LONG_RUNS_ON_MM)
                        || endsAtPaper(view, run)
                        || (run.length() > ALMOST_WHOLE * longest && reaches(run, breakLine, LOST_MM, RUNS_ON_MM))
                        || isInkedToBreak(view, run, breakLine))
                .toList();
    }

    private static List<Run> levelsToBreak(DrawingView view, Optional<Edge> breakLine) {
        return view.level().stream()
                .filter(run -> reaches(run, breakLine, REACHES_BREAK_MM, LONG_RUNS_ON_MM)
                        || endsAtPaper(view, run)
                        || isInkedToBreak(view, run, breakLine)
                        || isLostInAnother(view, run, breakLine))
                .toList();
    }

    /** Whether a line runs into its neighbour, as those of a thin board may, and that one goes on to the break line. */
    private static boolean isLostInAnother(DrawingView view, Run run, Optional<Edge> breakLine) {
        return beside(view.level(), run)
                .anyMatch(other -> other.segment().end().x() > run.segment().end().x()
                        && run.length() > LONG_OF_NEIGHBOUR * other.length()
                        && reaches(other, breakLine, REACHES_BREAK_MM, LONG_RUNS_ON_MM));
    }

    /** The other lines of a family that lie no further from one than those of a thin board, where both are. */
    private static Stream<Run> beside(List<Run> family, Run run) {
        Segment own = run.segment();
        return family.stream().filter(other -> {
            double both = Math.min(own.end().x(), other.segment().end().x()) - Math.max(own.start().x(), other.segment().start().x());
            return other != run
                    && both > LONG_OF_NEIGHBOUR * (own.end().x() - own.start().x())
                    && Math.abs(own.line().distanceTo(other.segment().midpoint())) < THICKEST_BOARD_MM;
        });
    }

    /** Whether a line that was found only in a lower piece goes on to the break line all the same. */
    private static boolean isInkedToBreak(DrawingView view, Run run, Optional<Edge> breakLine) {
        if (breakLine.isEmpty() || !reaches(run, breakLine, LOST_MM, 0)) {
            return false;
        }
        Edge edge = view.fit(run, 1);
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        return edge.length() > LONG_FOR_ITS_GAP * (end - edge.to())
                && view.fit().coverage(edge.line(), edge.to(), end, FADED) > MOSTLY_INKED;
    }

    /** The edge carried on to the break line where it ends short of it and its own line is inked as far. */
    private static Edge toBreak(DrawingView view, Edge edge, Optional<Edge> breakLine) {
        if (breakLine.isEmpty()) {
            return edge;
        }
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        boolean isShort = end - edge.to() > REACHES_BREAK_MM && end - edge.to() < LOST_MM;
        return isShort && view.fit().coverage(edge.line(), edge.to(), end, OF_OUTLINE) > MOSTLY_INKED
                ? over(view, edge, edge.from(), end)
                : edge;
    }

    private static List<Edge> mains(
            DrawingView view, List<Run> runs, Optional<Edge> breakLine, double shortest, double partOfLongest, double sameMm) {
        List<Edge> mains = new ArrayList<>();
        double longest = 0;
        for (Run run : runs) {
            if (run.length() < SHORTEST_PIECE_MM) {
                continue;
            }
            Edge edge = upTo(breakLine, toBreak(view, joined(view, extended(view, fitted(view, run))), breakLine));
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
    private static Edge extended(DrawingView view, Edge edge) {
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
        return over(view, edge, end, edge.to());
    }

    /**
     * The edge with the piece of its own line that was found beyond a gap to its left, where light or rubbing left hardly
     * anything of it, and fitted again over both.
     */
    private static Edge joined(DrawingView view, Edge edge) {
        return Stream.concat(view.sloping().stream(), view.level().stream())
                .filter(run -> continues(view, run, edge))
                .max(Comparator.comparingDouble(Run::length))
                .map(run -> edge.line().positionOf(run.segment().start()))
                .map(from -> over(view, edge, from, edge.to()))
                .orElse(edge);
    }

    private static boolean continues(DrawingView view, Run run, Edge edge) {
        double gap = edge.from() - edge.line().positionOf(run.segment().end());
        return gap > 0
                && run.length() > LONG_FOR_ITS_GAP * gap
                && Math.abs(edge.line().distanceTo(run.segment().end())) < SAME_LINE_MM
                && Math.abs(edge.line().distanceTo(run.segment().start())) < SAME_LINE_MM
                && view.fit().coverage(edge.line(), edge.from() - gap, edge.from(), FADED) > MOSTLY_INKED;
    }

    /** The edge fitted again over another length of its line. */
    private static Edge over(DrawingView view, Edge edge, double from, double to) {
        return view.fit().fit(edge.line(), from + 1, to - 1, 1, 0.25).extendedTo(from, to, edge.line());
    }

    /** The run's own line: where the ink beside it drew the fit away, or may, fitted from close by. */
    private static Edge fitted(DrawingView view, Run run) {
        Edge edge = view.fit(run, 1);
        Point middle = run.segment().line().pointAt(run.length() / 2);
        boolean hasNeighbour = beside(view.level(), run).findAny().isPresent();
        if (edge.line().distanceTo(middle) < DRAWN_AWAY_MM && !hasNeighbour) {
            return edge;
        }
        double half = run.length() / 2;
        return view.fit().fit(run.segment().line(), 1, run.length() - 1, 1, CLOSE_BY_MM).within(-half, half);
    }

    /** Whether a line ends at the break line, not more than one length short of it and another beyond it. */
    private static boolean reaches(Run run, Optional<Edge> breakLine, double shortMm, double onMm) {
        if (breakLine.isEmpty()) {
            return true;
        }
        double beyond = run.segment().end().x() - breakLine.get().xAt(run.segment().end().y());
        double before = breakLine.get().xAt(run.segment().start().y()) - run.segment().start().x();
        return beyond > -shortMm && beyond < onMm && before > SHORTEST_PIECE_MM;
    }

    /** The edge without what runs on beyond the break line. */
    private static Edge upTo(Optional<Edge> breakLine, Edge edge) {
        if (breakLine.isEmpty()) {
            return edge;
        }
        double end = edge.line().positionOf(Level.crossing(breakLine.get(), edge));
        return edge.to() > end + 1 && end > edge.from() + SHORTEST_PIECE_MM ? edge.within(edge.from(), end) : edge;
    }

    private static double heightAcross(DrawingView view, Edge edge, List<Edge> all) {
        return all.get(0).distanceTo(edge, view.slope());
    }

    /** @param eavesY the height of the lowest place of rafter and covering */
    private static List<Edge> levels(
            DrawingView view, Optional<Edge> breakLine, Optional<Edge> rafterBottom, double eavesY) {
        if (rafterBottom.isEmpty()) {
            return mainLevels(view, levelsToBreak(view, breakLine), breakLine);
        }
        Edge rafter = rafterBottom.get();
        // The sheet's frame is longer than any line of the drawing, by which these would seem short.
        List<Run> runs = levelsToBreak(view, breakLine).stream()
                .filter(run -> isUnder(rafter, run.segment(), 0) && run.segment().midpoint().y() > eavesY - BELOW_EAVES_MM)
                .toList();
        List<Edge> levels = mainLevels(view, runs, breakLine);
        levels.removeIf(edge -> !isUnder(rafter, edge.segment(), CLEAR_OF_RAFTER_MM));
        breakLine.ifPresent(end -> levels.removeIf(
                edge -> edge.segment().end().x() > end.xAt(edge.middle().y()) + REACHES_BREAK_MM || isFarBelow(edge, end)));
        levels.sort(Comparator.comparingDouble((Edge edge) -> edge.middle().y()).reversed());
        return levels;
    }

    /** Whether the break line does not come down to a level line, which ends under it by chance, as one under lettering does. */
    private static boolean isFarBelow(Edge level, Edge breakLine) {
        double lowY = Math.min(breakLine.segment().start().y(), breakLine.segment().end().y());
        return level.middle().y() < lowY - SHORT_OF_LEVEL_MM;
    }

    private static List<Edge> mainLevels(DrawingView view, List<Run> runs, Optional<Edge> breakLine) {
        return mains(view, runs, breakLine, 20, 0.25, 0.45);
    }

    /** Whether a level line lies under the rafter's underside where it ends, at least by so much. */
    private static boolean isUnder(Edge rafter, Segment level, double clearMm) {
        double endX = Math.min(rafter.segment().end().x(), level.end().x());
        return level.midpoint().y() < rafter.yAt(endX) - clearMm;
    }

    /**
     * Beam top, beam underside, ceiling top and underside from above; beside the gaps the left ends tell them apart:
     * the beam's lines begin at the rafter's underside, the ceiling's at the inner face of the wall.
     */
    private static Ordered.Assignment beams(
            DrawingView view, Expectation expectation, List<Edge> levels, Optional<Edge> rafterBottom) {
        double wallInside = expectation.exactOr("wall.thickness", 10) / 2;
        double board = 0.7;
        return Ordered.assign(
                levels.stream().mapToDouble(edge -> -edge.middle().y()).toArray(),
                levels.stream().mapToDouble(Edge::length).toArray(),
                List.of(
                        (Ordered.Gap) gap -> expectation.cost("tie-beam.depth", gap) + (isBoard(expectation, gap) ? BOARD_COST : 0),
                        gap -> expectation.cost("ceiling.drop", gap),
                        gap -> Math.abs(Math.log(gap / board))),
                new double[] {
                    expectation.exactOr("tie-beam.depth", 6), expectation.exactOr("ceiling.drop", 2.5), board
                },
                new double[] {
                    expectation.asks("tie-beam.depth") ? Ordered.MISSING_COST : 0.5,
                    expectation.asks("tie-beam.depth") ? Ordered.MISSING_COST : 0.5,
                    expectation.asks("ceiling.drop") ? Ordered.MISSING_COST : 0.5,
                    expectation.draws("ceiling", "bottom") ? Ordered.MISSING_COST : 0
                },
                (role, line) -> {
                    if (rafterBottom.isEmpty()) {
                        return 0;
                    }
                    Edge edge = levels.get(line);
                    double start = edge.segment().start().x();
                    double rafterX = rafterBottom.get().xAt(edge.middle().y());
                    double beyond = start - rafterX;
                    double asBeam = Math.min(4, Math.abs(beyond) / 2.5);
                    double asCeiling = beyond > wallInside ? 0 : beyond > 0.8 ? 1.5 : 3;
                    double unasked = role == 3 && !expectation.draws("ceiling", "bottom") ? 2 : 0;
                    return role <= 1 ? asBeam : asCeiling + unasked;
                },
                // A learner leaves out the whole beam, hardly ever one of its two lines.
                lines -> ((lines[0] < 0) != (lines[1] < 0) ? 3 : 0) + (lines[2] < 0 && lines[3] >= 0 ? 6 : 0));
    }

    /** Whether two lines lie so close together that they are a ceiling board's rather than a tie beam's, however wrongly that was drawn. */
    private static boolean isBoard(Expectation expectation, double gapMm) {
        return gapMm < THICKEST_BOARD_MM && gapMm < THINNEST_BEAM_SHARE * expectation.exactOr("tie-beam.depth", 0);
    }

    /**
     * The rafter's underside fitted only inside the wall: outside it the barge board's lower edge may lie over it.
     */
    RoofLines withRafterClearOfBargeBoard(DrawingView view, Optional<Edge> wallOuter) {
        if (rafterBottom.isEmpty() || wallOuter.isEmpty()) {
            return this;
        }
        Edge bottom = rafterBottom.get();
        double from = bottom.line().positionOf(Level.crossing(wallOuter.get(), bottom)) + 1;
        if (bottom.to() - from < 30) {
            return this;
        }
        Edge clear = view.fit().fit(bottom.line(), from, bottom.to() - 1, 1, 0.25)
                .extendedTo(bottom.from(), bottom.to(), bottom.line());
        return new RoofLines(
                breakLine, Optional.of(clear), rafterTop, coveringBottom, coveringTop, tieBeamTop, tieBeamBottom, ceilingTop,
                ceilingBottom);
    }

    /**
     * By how much the whole drawing is larger than the task asks for: 1 where its thicknesses do not agree on another
     * scale.
     */
    double scaleFactor(DrawingView view, Expectation expectation) {
        List<Ratio> ratios = slopeRatios(view, expectation);
        addRatio(ratios, expectation, "tie-beam.depth", tieBeamBottom, tieBeamTop, Level.RIGHT);
        addRatio(ratios, expectation, "ceiling.drop", ceilingTop, tieBeamBottom, Level.RIGHT);
        if (!expectation.asks("tie-beam.depth") && !expectation.asks("ceiling.drop")) {
            return scaleOfSlopes(view, expectation);
        }
        return ratios.size() < 4 ? 1 : agreed(ratios, Math.max(4, ratios.size() - 1));
    }

    /** The same from the sloping lines alone, which must all agree. */
    double scaleOfSlopes(DrawingView view, Expectation expectation) {
        List<Ratio> ratios = slopeRatios(view, expectation);
        return ratios.size() < 3 ? 1 : agreed(ratios, ratios.size());
    }

    private List<Ratio> slopeRatios(DrawingView view, Expectation expectation) {
        List<Ratio> ratios = new ArrayList<>();
        addRatio(ratios, expectation, "rafter.depth", rafterBottom, rafterTop, view.slope());
        addRatio(ratios, expectation, "covering.gap", rafterTop, coveringBottom, view.slope());
        addRatio(ratios, expectation, "covering.thickness", coveringBottom, coveringTop, view.slope());
        return ratios;
    }

    /** A thickness as drawn and as asked, in millimetres on paper. */
    private record Ratio(double drawnMm, double askedMm) {

        double log() {
            return Math.log(Math.max(drawnMm, 0.1) / askedMm);
        }

        boolean agreesWith(double factor) {
            double there = factor * askedMm;
            return Math.abs(drawnMm - there) <= Math.max(AGREEING_SHARE * there, AGREEING_MM);
        }
    }

    /** The median factor where it is clearly not 1 and enough of the thicknesses agree with it, else 1. */
    private static double agreed(List<Ratio> ratios, int enough) {
        double[] logs = ratios.stream().mapToDouble(Ratio::log).sorted().toArray();
        double median = logs[logs.length / 2];
        double factor = Math.exp(median);
        long agreeing = ratios.stream().filter(ratio -> ratio.agreesWith(factor)).count();
        return Math.abs(median) > CLEARLY_ANOTHER && agreeing >= enough ? factor : 1;
    }

    private static void addRatio(
            List<Ratio> ratios,
            Expectation expectation,
            String key,
            Optional<Edge> low,
            Optional<Edge> high,
            Vector along) {
        if (low.isPresent() && high.isPresent() && expectation.asks(key)) {
            ratios.add(new Ratio(low.get().distanceTo(high.get(), along), expectation.exactOr(key, 1)));
        }
    }

    /** Whether every sloping line of rafter and covering was found. */
    boolean hasWholeSlope() {
        return rafterBottom.isPresent() && rafterTop.isPresent() && coveringBottom.isPresent() && coveringTop.isPresent();
    }
}
