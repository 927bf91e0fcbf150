package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.task.EavesSide;

/** Pages on which a part is left out, or that are drawn the other way round. */
class AbsentPartsTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);

    @ParameterizedTest
    @CsvSource({
        "gutter, gutter.width gutter.depth barge-board.clearance",
        "fascia gutter, fascia.thickness fascia.depth gutter.width gutter.depth",
        "post, post.width post.position",
        "tie-beam, tie-beam.depth",
        "ceiling brander, ceiling.drop brander.width brander.depth brander.spacing",
    })
    void saysThatAPartIsAbsentThatIsNotDrawn(String parts, String keys) {
        List<String> leftOut = List.of(parts.split(" "));
        LevelPage page = ExactPage.of(NET_LOFT, line -> !leftOut.contains(line.part()));
        MeasuredSheet sheet = new Measurer().measure(page, NET_LOFT);
        SoftAssertions softly = new SoftAssertions();
        for (String key : keys.split(" ")) {
            softly.assertThat(sheet.measurement(key).orElseThrow().finding()).as(key).isEqualTo(new Finding.Absent());
        }
        softly.assertAll();
    }

    /** A leader to the fascia and a construction line along the slope cross the place where the gutter would hang. */
    @ParameterizedTest
    @CsvSource({"35, 27", "-40, 27", "27, 27"})
    void saysThatAGutterIsAbsentWhereOnlySlopingLinesCrossItsPlace(double leaderDegrees, double otherDegrees) {
        DrawnLine face = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("fascia") && line.edge().equals("outer"))
                .findFirst()
                .orElseThrow();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("gutter"));
        lines.add(towards(face.segment().at(0.4), leaderDegrees, LineRole.SEEN_OUTLINE));
        lines.add(towards(face.segment().at(0.7), otherDegrees, LineRole.HATCH));
        LevelPage page = page(lines);

        for (String key : List.of("gutter.width", "gutter.depth", "barge-board.clearance")) {
            assertThat(finding(page, key)).as(key).isEqualTo(new Finding.Absent());
        }
    }

    /** One side of an arrow's head on the face, or a dimension line that runs through it: neither ends at an upright. */
    @ParameterizedTest
    @CsvSource({"3, 0", "6, 9"})
    void saysThatAGutterIsAbsentWhereALevelLineEndsAtNoUpright(double outwardsMm, double inwardsMm) {
        Segment face = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("fascia") && line.edge().equals("outer"))
                .findFirst()
                .orElseThrow()
                .segment();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("gutter"));
        Segment level = new Segment(
                face.at(0.4).plus(new Vector(-outwardsMm, 0)), face.at(0.4).plus(new Vector(inwardsMm, 0)));
        lines.add(new DrawnLine("dimension", 0, "line", level, LineRole.SEEN_OUTLINE));
        LevelPage page = page(lines);

        for (String key : List.of("gutter.width", "gutter.depth", "barge-board.clearance")) {
            assertThat(finding(page, key)).as(key).isEqualTo(new Finding.Absent());
        }
    }

    /** A line from a place on the fascia outwards, 20 mm long. */
    private static DrawnLine towards(Point place, double degrees, LineRole role) {
        Point away = place.plus(new Vector(-20, 0).rotatedDegrees(degrees));
        return new DrawnLine("leader", 0, "line", new Segment(away, place), role);
    }

    /** As construction lines of a wall do; without a tie beam a post would stand on the plate's height. */
    @Test
    void takesNoFaceOfTheWallThatRunsOnForAPost() {
        Segment face = MeasureTasks.segment(NET_LOFT, "wall", "inner");
        Point underRafter = crossing(MeasureTasks.segment(NET_LOFT, "rafter", "bottom"), face.start().x());
        List<DrawnLine> lines = without("post", "tie-beam");
        lines.add(outline(face.start(), underRafter));

        assertThat(finding(page(lines), "post.width")).isEqualTo(new Finding.Absent());
        assertThat(finding(page(lines), "post.position")).isEqualTo(new Finding.Absent());
    }

    @ParameterizedTest
    @CsvSource({"0.3, 0", "0.3, 1"})
    void takesNoLeaderThatPointsAtTheGutterForABargeBoard(double partOfBottom, double leanDegrees) {
        Point tip = MeasureTasks.segment(NET_LOFT, "gutter", "bottom").at(partOfBottom);
        List<DrawnLine> lines = without("barge-board");
        lines.add(outline(tip.plus(Vector.atDegrees(-90 - leanDegrees).times(18)), tip));

        assertThat(finding(page(lines), "barge-board.depth")).isEqualTo(new Finding.Absent());
        assertThat(finding(page(lines), "barge-board.clearance")).isEqualTo(new Finding.Absent());
    }

    /** It stands where the covering would come by, were it carried on so far. */
    @ParameterizedTest
    @ValueSource(doubles = {18, 26})
    void takesNoUprightOfALetterForABargeBoard(double outsideMm) {
        ExpectedDrawing tollHouse = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
        double x = MeasureTasks.segment(tollHouse, "fascia", "outer").start().x() - outsideMm;
        Point top = crossing(MeasureTasks.segment(tollHouse, "covering", "top"), x);
        List<DrawnLine> lines = new ArrayList<>(tollHouse.lines());
        lines.removeIf(line -> line.part().equals("barge-board"));
        lines.add(outline(top.plus(new Vector(0, -4.5)), top));
        MeasuredSheet sheet = measured(lines, tollHouse);

        assertThat(sheet.measurement("barge-board.depth").orElseThrow().finding()).isEqualTo(new Finding.Absent());
        assertThat(sheet.measurement("barge-board.clearance").orElseThrow().finding()).isEqualTo(new Finding.Absent());
    }

    /** Drawn with a blunt pencil, the beam's underside and the ceiling's top leave hardly any room between them. */
    @Test
    void takesNoBroadLinesCloseTogetherForARowOfBoxes() {
        ExpectedDrawing tollHouse = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
        Segment ceiling = MeasureTasks.segment(tollHouse, "ceiling", "top");
        double beamY = MeasureTasks.segment(tollHouse, "tie-beam", "bottom").start().y();
        List<DrawnLine> lines = new ArrayList<>(tollHouse.lines());
        lines.removeIf(line -> List.of("ceiling", "brander").contains(line.part()));
        for (double off : List.of(-0.2, 0.2)) {
            lines.add(levelLine(ceiling, beamY + off));
            lines.add(levelLine(ceiling, beamY - 1.2 + off));
        }
        lines.add(levelLine(ceiling, beamY - 2.4));
        MeasuredSheet sheet = measured(lines, tollHouse);

        assertThat(sheet.measurement("brander.count").orElseThrow().finding()).isEqualTo(new Finding.Count(0));
        assertThat(sheet.measurement("brander.width").orElseThrow().finding()).isEqualTo(new Finding.Absent());
    }

    private static DrawnLine levelLine(Segment over, double y) {
        return outline(new Point(over.start().x(), y), new Point(over.end().x(), y));
    }

    private static Point crossing(Segment slope, double x) {
        return slope.at((x - slope.start().x()) / slope.vector().x());
    }

    private static DrawnLine outline(Point from, Point to) {
        return new DrawnLine("other", 0, "line", new Segment(from, to), LineRole.SEEN_OUTLINE);
    }

    private static List<DrawnLine> without(String... parts) {
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> List.of(parts).contains(line.part()));
        return lines;
    }

    private static MeasuredSheet measured(List<DrawnLine> lines, ExpectedDrawing drawing) {
        return new Measurer().measure(ExactPage.of(drawing, lines), drawing);
    }

    /** Both lines of the ceiling's board run on to the rafter, as a wall's top and a plate's lines make them do. */
    @Test
    void takesNoCeilingBoardForATieBeam() {
        ExpectedDrawing tollHouse = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
        Segment slope = tollHouse.lines().stream()
                .filter(line -> line.part().equals("rafter") && line.edge().equals("bottom"))
                .findFirst()
                .orElseThrow()
                .segment();
        List<DrawnLine> lines = new ArrayList<>(tollHouse.lines());
        lines.removeIf(line -> line.part().equals("tie-beam"));
        tollHouse.lines().stream()
                .filter(line -> line.part().equals("ceiling"))
                .map(line -> line.segment().start())
                .map(start -> new Segment(atHeight(slope, start.y()), start))
                .map(segment -> new DrawnLine("ceiling", 1, "board", segment, LineRole.SEEN_OUTLINE))
                .forEach(lines::add);
        MeasuredSheet sheet = measured(lines, tollHouse);

        assertThat(sheet.measurement("tie-beam.depth").orElseThrow().finding()).isEqualTo(new Finding.Absent());
        for (String key : List.of("rafter.depth", "wall.thickness", "support.count", "brander.count")) {
            assertThat(sheet.measurement(key).orElseThrow().finding().isMeasured()).as(key).isTrue();
        }
    }

    /** It ends under the break line by chance, as one does that lettering stands on. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 14})
    void takesNoLineFarBelowTheBreakLineForACeiling(double belowMm) {
        List<String> leftOut = List.of("ceiling", "brander");
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> leftOut.contains(line.part()));
        lines.add(belowBreakLine(belowMm));

        assertThat(finding(page(lines), "ceiling.drop")).isEqualTo(new Finding.Absent());
    }

    /** Nor does it tell the height of a plate on which neither beam nor ceiling lies. */
    @ParameterizedTest
    @ValueSource(doubles = {10, 14})
    void looksForNoPlateAboveALineFarBelowTheBreakLine(double belowMm) {
        List<String> leftOut = List.of("ceiling", "brander", "tie-beam");
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> leftOut.contains(line.part()));
        lines.add(belowBreakLine(belowMm));
        MeasuredSheet sheet = new Measurer().measure(page(lines), NET_LOFT);

        for (String key : List.of("wall.thickness", "wall-plate.width", "wall-plate.depth")) {
            assertThat(sheet.measurement(key).orElseThrow().finding()).as(key).isInstanceOf(Finding.Quantity.class);
        }
    }

    /** A level line, 60 mm long, that ends below the break line's lower end. */
    private static DrawnLine belowBreakLine(double belowMm) {
        Segment breakLine = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("break"))
                .findFirst()
                .orElseThrow()
                .segment();
        double y = Math.min(breakLine.start().y(), breakLine.end().y()) - belowMm;
        Point end = new Point(breakLine.start().x(), y);
        Segment level = new Segment(end.plus(new Vector(-60, 0)), end);
        return new DrawnLine("lettering", 0, "line", level, LineRole.SEEN_OUTLINE);
    }

    private static Point atHeight(Segment slope, double y) {
        return new Point(slope.start().x() + (y - slope.start().y()) * slope.vector().x() / slope.vector().y(), y);
    }

    @Test
    void countsOneSupportFewer() {
        int asked = (int) NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("support") && line.edge().equals("low"))
                .count();
        LevelPage page = ExactPage.of(NET_LOFT, line -> !(line.part().equals("support") && line.index() == asked - 1));
        assertThat(finding(page, "support.count")).isEqualTo(new Finding.Count(asked - 1));
    }

    @Test
    void seesThatTimberIsNotCrossed() {
        LevelPage page = ExactPage.of(NET_LOFT, line -> !line.edge().startsWith("cross"));
        for (String key : List.of("wall-plate.crossed", "support.crossed")) {
            assertThat(finding(page, key)).as(key).isEqualTo(new Finding.YesNo(false));
        }
    }

    @Test
    void takesNoLeaderForHatchingOfTheBeamFilling() {
        Segment hatch = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("beam-filling") && line.edge().equals("hatch"))
                .findFirst()
                .orElseThrow()
                .segment();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("beam-filling") && line.edge().equals("hatch"));
        Vector leader = new Vector(7, 0).rotatedDegrees(68);
        Point end = hatch.at(0.5);
        lines.add(new DrawnLine("leader", 0, "line", new Segment(end, end.plus(leader.times(-1))), LineRole.SEEN_OUTLINE));
        lines.add(new DrawnLine("leader", 0, "line", new Segment(end, end.plus(leader)), LineRole.SEEN_OUTLINE));

        assertThat(finding(page(lines), "beam-filling.hatched")).isNotEqualTo(new Finding.YesNo(true));
    }

    @Test
    void seesThatTheBeamFillingIsNotHatched() {
        LevelPage page = ExactPage.of(NET_LOFT, line -> !line.edge().equals("hatch"));
        assertThat(finding(page, "beam-filling.hatched")).isEqualTo(new Finding.YesNo(false));
    }

    /** The row of purlins is set out further down, so that one with its diagonals stands in the beam filling. */
    @Test
    void takesNoSupportForHatching() {
        List<DrawnLine> supports = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("support"))
                .toList();
        Point foot = supports.stream().filter(line -> line.index() == 1).findFirst().orElseThrow().segment().start();
        // Along the rafter's top to where the filling's outer side stands.
        DrawnLine side = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("beam-filling") && line.edge().equals("outer"))
                .findFirst()
                .orElseThrow();
        double along = side.segment().start().x() + 2.5 - foot.x();
        Segment slope = NET_LOFT.lines().stream()
                .filter(line -> line.part().equals("rafter") && line.edge().equals("top"))
                .findFirst()
                .orElseThrow()
                .segment();
        Vector shift = slope.vector().times(along / slope.vector().x());
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeAll(supports);
        supports.stream()
                .filter(line -> line.index() > 0)
                .map(line -> new DrawnLine(
                        line.part(), line.index(), line.edge(),
                        new Segment(line.segment().start().plus(shift), line.segment().end().plus(shift)), line.role()))
                .forEach(lines::add);

        assertThat(hatched(lines)).isNotEqualTo(new Finding.YesNo(false));
        lines.removeIf(line -> line.part().equals("beam-filling") && line.edge().equals("hatch"));
        assertThat(hatched(lines)).isEqualTo(new Finding.YesNo(false));
    }

    private static Finding hatched(List<DrawnLine> lines) {
        return finding(page(lines), "beam-filling.hatched");
    }

    private static LevelPage page(List<DrawnLine> lines) {
        return ExactPage.of(NET_LOFT, lines);
    }

    @Test
    void mirroredPageGivesTheSameValuesAndMirroredEvidence() {
        double width = NET_LOFT.task().sheet().widthMm();
        double height = NET_LOFT.task().sheet().heightMm();
        boolean right = NET_LOFT.task().eaves() == EavesSide.RIGHT;
        List<DrawnLine> lines = NET_LOFT.lines();
        MeasuredSheet sheet = new Measurer().measure(ExactPage.of(lines, right, width, height), NET_LOFT);
        MeasuredSheet mirrored = new Measurer().measure(ExactPage.of(lines, !right, width, height), NET_LOFT);
        SoftAssertions softly = new SoftAssertions();
        for (Measurement measurement : sheet.measurements()) {
            Measurement other = mirrored.measurement(measurement.key()).orElseThrow();
            if (measurement.key().equals("drawing.eaves")) {
                softly.assertThat(measurement.finding()).isEqualTo(new Finding.Word("right"));
                softly.assertThat(other.finding()).isEqualTo(new Finding.Word("left"));
            } else {
                assertSame(softly, measurement, other, width);
            }
        }
        softly.assertAll();
    }

    private static void assertSame(SoftAssertions softly, Measurement one, Measurement other, double width) {
        if (one.finding() instanceof Finding.Quantity first && other.finding() instanceof Finding.Quantity second) {
            softly.assertThat(Math.abs(first.value() - second.value())).as(one.key()).isLessThan(0.01);
        } else {
            softly.assertThat(other.finding()).as(one.key()).isEqualTo(one.finding());
        }
        softly.assertThat(other.evidence()).as("evidence of %s", one.key()).hasSameSizeAs(one.evidence());
        for (int index = 0; index < Math.min(one.evidence().size(), other.evidence().size()); index++) {
            Segment here = one.evidence().get(index);
            Segment there = other.evidence().get(index);
            double off = Math.hypot(
                    width - here.midpoint().x() - there.midpoint().x(), here.midpoint().y() - there.midpoint().y());
            softly.assertThat(off).as("evidence %d of %s", index, one.key()).isLessThan(0.5);
        }
    }

    private static Finding finding(LevelPage page, String key) {
        return new Measurer().measure(page, NET_LOFT).measurement(key).orElseThrow().finding();
    }
}
