package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
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
    /** How far above a level line the break line may have been left off. */
    private static final double SHORT_OF_LEVEL_MM = 8;
    /** No level line of beam or ceiling lies further below the eaves. */
    private static final double BELOW_EAVES_MM = 20;
    /** A level line nearer under the rafter than this is none of beam or ceiling. */
    private static final double CLEAR_OF_RAFTER_MM = 2;

    /** No slip makes a tie beam so much thinner than it was asked for. */
    private static final double THINNEST_BEAM_SHARE = 0.4;

    private static final double BOARD_COST = 8;

    static RoofLines of(DrawingView view, Expectation expectation) {
        Optional<Edge> breakLine = expectation.draws("break")
                ? BreakLine.of(view).or(() -> PlumbEnd.whereLinesEnd(view))
                : PlumbEnd.of(view);
        LongLines longLines = new LongLines(view, breakLine);
        List<Edge> slopes = parted(view, longLines.slopes());
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
                allAsked(SLOPES),
                (role, line) -> 0,
                lines -> 0);
        Optional<Edge> rafterBottom = roof.line(0).map(slopes::get);
        List<Edge> found = expectation.knows("tie-beam") || expectation.knows("ceiling")
                ? levels(longLines, breakLine, rafterBottom, eavesY(slopes))
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

    private static double heightAcross(DrawingView view, Edge edge, List<Edge> all) {
        return all.get(0).distanceTo(edge, view.slope());
    }

    /** @param eavesY the height of the lowest place of rafter and covering */
    private static List<Edge> levels(
            LongLines longLines, Optional<Edge> breakLine, Optional<Edge> rafterBottom, double eavesY) {
        if (rafterBottom.isEmpty()) {
            return longLines.levels(longLines.levelsToBreak());
        }
        Edge rafter = rafterBottom.get();
        // The sheet's frame is longer than any line of the drawing, by which these would seem short.
        List<Run> runs = longLines.levelsToBreak().stream()
                .filter(run -> isUnder(rafter, run.segment(), 0) && run.segment().midpoint().y() > eavesY - BELOW_EAVES_MM)
                .toList();
        List<Edge> levels = longLines.levels(runs);
        levels.removeIf(edge -> !isUnder(rafter, edge.segment(), CLEAR_OF_RAFTER_MM));
        breakLine.ifPresent(end -> levels.removeIf(edge -> isFarBelow(edge, end)
                || edge.segment().end().x() > end.xAt(edge.middle().y()) + LongLines.REACHES_BREAK_MM));
        levels.sort(Comparator.comparingDouble((Edge edge) -> edge.middle().y()).reversed());
        return levels;
    }

    /** Whether the break line does not come down to a level line, which ends under it by chance, as one under lettering does. */
    private static boolean isFarBelow(Edge level, Edge breakLine) {
        double lowY = Math.min(breakLine.segment().start().y(), breakLine.segment().end().y());
        return level.middle().y() < lowY - SHORT_OF_LEVEL_MM;
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
        return gapMm < LongLines.THICKEST_BOARD_MM && gapMm < THINNEST_BEAM_SHARE * expectation.exactOr("tie-beam.depth", 0);
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

    /** Whether every sloping line of rafter and covering was found. */
    boolean hasWholeSlope() {
        return rafterBottom.isPresent() && rafterTop.isPresent() && coveringBottom.isPresent() && coveringTop.isPresent();
    }
}
