package wallplate.measure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Point;
import wallplate.stroke.Edge;

/**
 * How the lines of a sheet were understood: which of them is which edge of which part.
 *
 * @param expectation what the task asks for, at the scale in which the sheet was drawn
 * @param vacancy whether the places of parts that were not found are clean
 */
record Arrangement(
        DrawingView view,
        Expectation expectation,
        RoofLines roof,
        WallReader.Wall wall,
        Optional<HighWallReader.HighWall> highWall,
        EavesReader.Eaves eaves,
        Vacancy vacancy) {

    /** Lines whose directions differ by less than this sine run along one another. */
    private static final double ALONG = 0.1;

    /** The long lines first, then the wall below them, what hangs at the eaves, and the far wall where there is one. */
    static Arrangement read(DrawingView view, Expectation asked, ChoiceLog log) {
        RoofLines longLines = longLines(view, asked);
        return read(view, asked.atScale(new ThicknessScale(longLines, view, asked).factor()), longLines, log);
    }

    /** The same where the scale of the drawing is known and the expectation is at that scale. */
    static Arrangement readAtScale(DrawingView view, Expectation expectation, ChoiceLog log) {
        return read(view, expectation, RoofLines.of(view, expectation), log);
    }

    private static Arrangement read(DrawingView view, Expectation expectation, RoofLines longLines, ChoiceLog log) {
        WallReader.Wall wall = new WallReader(view, expectation, longLines, log).read();
        RoofLines roof = longLines.withRafterClearOfBargeBoard(view, wall.outer());
        EavesReader.Eaves eaves = new EavesReader(view, expectation, roof, wall, log).read();
        Optional<HighWallReader.HighWall> highWall = expectation.asksPart("high-wall")
                ? Optional.of(new HighWallReader(view, expectation, roof, wall, log).read())
                : Optional.empty();
        Vacancy vacancy = new Vacancy(view, expectation, roof, wall, eaves);
        return new Arrangement(view, expectation, roof, wall, highWall, eaves, vacancy);
    }

    /** The long lines; where the slopes alone speak for another scale, the level ones are told apart at that scale. */
    private static RoofLines longLines(DrawingView view, Expectation asked) {
        RoofLines asAsked = RoofLines.of(view, asked);
        double factor = new ThicknessScale(asAsked, view, asked).ofSlopes();
        if (factor == 1) {
            return asAsked;
        }
        RoofLines atScale = RoofLines.of(view, asked.atScale(factor));
        return new ThicknessScale(atScale, view, asked).factor() == 1 ? asAsked : atScale;
    }

    /** Where the rafter's underside, the tie beam's and the plate's outer side should meet. */
    Optional<Point> heel() {
        return wall.plateOuter().flatMap(outer -> wall.plateTop().map(top -> Level.crossing(outer, top)));
    }

    /** @param pageLevelSigmaDegrees how well the page itself was levelled, one standard deviation */
    DrawnLevel level(double pageLevelSigmaDegrees) {
        return DrawnLevel.of(
                List.of(
                        roof.tieBeamTop(), roof.tieBeamBottom(), roof.ceilingTop(), roof.ceilingBottom(), roof.breakLine(),
                        wall.outer(), wall.inner(), eaves.cut(), eaves.fasciaOuter(), eaves.bargeEnd(), eaves.gutterBottom(),
                        highWall.flatMap(HighWallReader.HighWall::inner), highWall.flatMap(HighWallReader.HighWall::outer)),
                pageLevelSigmaDegrees);
    }

    /**
     * The place along a line up to which boxes are looked for: just short of the break line or, where that was not found,
     * of the furthest that one of the lines beside it was seen, as this one may have been found only in a piece.
     */
    double shortOfBreak(Edge line) {
        double end = roof.breakLine()
                .map(edge -> line.line().positionOf(Level.crossing(edge, line)))
                .orElseGet(() -> Stream.of(roof.rafterBottom(), roof.rafterTop(), roof.coveringBottom(), roof.coveringTop())
                        .flatMap(Optional::stream)
                        .filter(edge -> Math.abs(edge.line().direction().cross(line.line().direction())) < ALONG)
                        .map(edge -> edge.segment().end().x())
                        .map(x -> line.line().positionOf(new Point(x, line.yAt(x))))
                        .reduce(line.to(), Math::max));
        return end - 0.3;
    }

    /** The edges found, by part and edge such as {@code rafter.top}. */
    Map<String, Edge> edges() {
        Map<String, Edge> edges = new LinkedHashMap<>();
        highWall.ifPresent(high -> {
            name(edges, "high-wall.inner", high.inner());
            name(edges, "high-wall.outer", high.outer());
            name(edges, "high-wall.top", high.top());
            if (high.inner().isPresent() && high.outer().isPresent()) {
                name(edges, "high-plate.inner", high.plate().map(HighWallReader.Plate::inner));
                name(edges, "high-plate.outer", high.plate().map(HighWallReader.Plate::outer));
                name(edges, "high-plate.top", high.plate().map(HighWallReader.Plate::top));
            }
        });
        name(edges, expectation.draws("break") ? "break" : "high-end.cut", roof.breakLine());
        name(edges, "rafter.bottom", roof.rafterBottom());
        name(edges, "rafter.top", roof.rafterTop());
        name(edges, "covering.bottom", roof.coveringBottom());
        name(edges, "covering.top", roof.coveringTop());
        name(edges, "covering.end", eaves.coveringEnd().map(CoveringEnd::edge));
        name(edges, "tie-beam.top", roof.tieBeamTop());
        name(edges, "tie-beam.bottom", roof.tieBeamBottom());
        name(edges, "ceiling.top", roof.ceilingTop());
        name(edges, "ceiling.bottom", roof.ceilingBottom());
        name(edges, "wall.outer", wall.outer());
        name(edges, "wall.inner", wall.inner());
        name(edges, "wall.top", wall.top());
        name(edges, "wall-plate.top", wall.plateTop());
        name(edges, "wall-plate.outer", wall.plateOuter());
        name(edges, "wall-plate.inner", wall.plateInner());
        name(edges, "rafter.cut", eaves.cut());
        name(edges, "fascia.outer", eaves.fasciaOuter());
        name(edges, "fascia.top", eaves.fasciaClosing().map(FasciaReader.Closing::top));
        name(edges, "fascia.bottom", eaves.fasciaClosing().map(FasciaReader.Closing::bottom));
        name(edges, "gutter.outer", eaves.gutterOuter());
        name(edges, "gutter.bottom", eaves.gutterBottom());
        name(edges, "barge-board.end", eaves.bargeEnd());
        name(edges, "barge-board.bottom", eaves.bargeBottom());
        return edges;
    }

    private static void name(Map<String, Edge> edges, String part, Optional<Edge> edge) {
        edge.ifPresent(seen -> edges.put(part, seen));
    }
}
