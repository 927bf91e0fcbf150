package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Pages on which the lead broke, so that a line has a gap, or on which one line more was drawn. */
class BrokenLinesTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private static final double WITHIN_MM = 0.12;

    /** The shares of the line, from the gutter's outer side to the fascia, between which there is no ink. */
    @ParameterizedTest
    @CsvSource({"0.55, 0.95", "0.3, 0.65", "0.62, 0.99"})
    void measuresAGutterWhoseBottomIsBroken(double from, double to) {
        MeasuredSheet sheet = measured(broken("gutter", "bottom", from, to));

        assertThat(length(sheet, "gutter.width")).isCloseTo(6.5, within(WITHIN_MM));
        assertThat(length(sheet, "gutter.depth")).isCloseTo(5, within(2 * WITHIN_MM));
        assertThat(length(sheet, "barge-board.clearance")).isCloseTo(1.2, within(WITHIN_MM));
    }

    /** From the foot of the board's end to the covering. */
    @ParameterizedTest
    @CsvSource({"0.72, 0.9", "0.75, 0.97"})
    void measuresABargeBoardWhoseEndIsBrokenNearTheCovering(double from, double to) {
        MeasuredSheet sheet = measured(broken("barge-board", "end", from, to));

        assertThat(length(sheet, "barge-board.depth")).isCloseTo(15, within(WITHIN_MM));
        assertThat(length(sheet, "barge-board.clearance")).isCloseTo(1.2, within(WITHIN_MM));
    }

    @Test
    void aLoneUprightBeforeThePostIsNoPost() {
        MeasuredSheet sheet = measured(with(upright(45)));

        assertThat(length(sheet, "post.position")).isCloseTo(80, within(WITHIN_MM));
        assertThat(length(sheet, "post.width")).isCloseTo(5, within(WITHIN_MM));
    }

    /** A post of another width, then the right one: which of them is the first that was asked for is not decided. */
    @Test
    void aPairOfUprightsBeforeThePostLeavesItOpen() {
        MeasuredSheet sheet = measured(with(upright(45), upright(53.5)));

        assertThat(sheet.measurement("post.position").orElseThrow().finding()).isInstanceOf(Finding.Uncertain.class);
    }

    /**
     * A scan of black and white may lose the thin break line. A leader along the slope ends on the wall's inner face, where
     * the level lines of beam and ceiling are crossed: no other upright has so much that ends at it.
     */
    @Test
    void measuresADrawingThatHasLostItsBreakLine() {
        Segment face = lines("wall", "inner").findFirst().orElseThrow().segment();
        Segment rafter = lines("rafter", "bottom").findFirst().orElseThrow().segment();
        Point onFace = face.at(0.5);
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("break"));
        for (double shift = 0; shift < 9; shift += 4) {
            Point end = new Point(onFace.x(), onFace.y() - shift);
            Segment leader = new Segment(end.plus(rafter.vector().unit().times(-30)), end);
            lines.add(new DrawnLine("wall", 7, "leader", leader, LineRole.CUT_OUTLINE));
        }
        MeasuredSheet sheet = measured(lines);

        assertThat(length(sheet, "rafter.depth")).isCloseTo(exact("rafter.depth"), within(WITHIN_MM));
        assertThat(length(sheet, "wall.thickness")).isCloseTo(exact("wall.thickness"), within(WITHIN_MM));
        assertThat(length(sheet, "support.spacing")).isCloseTo(43, within(WITHIN_MM));
    }

    private static double exact(String key) {
        return ((Expected.Length) NET_LOFT.value(key).orElseThrow()).exactMm();
    }

    /** One side of a box is there only over a part of its length. */
    @ParameterizedTest
    @CsvSource({"support, 2, low", "support, 2, high", "brander, 3, high"})
    void countsABoxWithAFaintSide(String part, int index, String edge) {
        DrawnLine side = lines(part, edge).filter(line -> line.index() == index).findFirst().orElseThrow();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.remove(side);
        lines.add(piece(side, 0, 0.42));
        MeasuredSheet sheet = measured(lines);

        assertThat(sheet.measurement(part + ".count").orElseThrow().finding())
                .isEqualTo(new Finding.Count((int) lines(part, edge).count()));
        assertThat(length(sheet, part + ".spacing"))
                .isCloseTo(part.equals("support") ? 43 : 21, within(WITHIN_MM));
    }

    /** Two uprights stand about as far from where the inner face should be: nothing is said from either. */
    @ParameterizedTest
    @CsvSource({"-3, 3", "-2, 2", "-4, 4"})
    void leavesOpenWhatIsMeasuredFromAWallInDoubt(double oneMm, double otherMm) {
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        DrawnLine inner = line("wall", "inner");
        lines.remove(inner);
        lines.add(beside(inner, oneMm));
        lines.add(beside(inner, otherMm));
        MeasuredSheet sheet = measured(lines);

        for (String key : List.of("wall.thickness", "rafter.overhang", "post.position", "rafter.heel-offset")) {
            assertThat(sheet.measurement(key).orElseThrow().finding()).as(key).isInstanceOf(Finding.Uncertain.class);
        }
    }

    private static DrawnLine beside(DrawnLine line, double rightMm) {
        Segment segment = line.segment();
        Point start = new Point(segment.start().x() + rightMm, segment.start().y());
        Point end = new Point(segment.end().x() + rightMm, segment.end().y());
        return new DrawnLine(line.part(), line.index(), line.edge(), new Segment(start, end), line.role());
    }

    /** Thin lines carry the rafter's two edges on: the plumb cut is not where those end. */
    @ParameterizedTest
    @ValueSource(doubles = {9, 14, 22})
    void findsThePlumbCutWhereConstructionLinesRunOn(double onMm) {
        MeasuredSheet sheet = measured(with(runOn("top", onMm), runOn("bottom", onMm)));

        assertThat(length(sheet, "rafter.overhang")).isCloseTo(21, within(WITHIN_MM));
        assertThat(length(sheet, "fascia.thickness")).isCloseTo(1.5, within(WITHIN_MM));
        assertThat(length(sheet, "gutter.width")).isCloseTo(6.5, within(WITHIN_MM));
    }

    private static DrawnLine runOn(String edge, double onMm) {
        DrawnLine rafter = line("rafter", edge);
        Segment segment = rafter.segment().start().x() < rafter.segment().end().x()
                ? rafter.segment()
                : new Segment(rafter.segment().end(), rafter.segment().start());
        Point end = segment.start().plus(segment.vector().unit().times(-onMm));
        return new DrawnLine("construction", 1, edge, new Segment(end, segment.start()), LineRole.HATCH);
    }

    /** The frame's lower and upper lines go on beyond the break line, and are many times longer than the beam's. */
    @Test
    void findsShortLevelLinesBesideAFrame() {
        ExpectedDrawing cutShort = MeasureTasks.solved(MeasureTasks.NET_LOFT
                .replace("inside: 2400", "inside: 1100")
                .replaceAll("posts: .*\\n", ""));
        double breakX = 48.5;
        double lowestY = -14;
        List<DrawnLine> lines = new ArrayList<>(cutShort.lines());
        lines.add(frame(breakX - 230, breakX + 30, lowestY - 40));
        lines.add(frame(breakX - 230, breakX + 30, lowestY + 110));
        MeasuredSheet sheet = new Measurer().measure(ExactPage.of(lines, true, 297, 210), cutShort);

        assertThat(length(sheet, "tie-beam.depth")).isCloseTo(8, within(WITHIN_MM));
        assertThat(length(sheet, "ceiling.drop")).isCloseTo(2.5, within(WITHIN_MM));
    }

    private static DrawnLine frame(double fromX, double toX, double y) {
        return new DrawnLine("frame", 0, "line", new Segment(new Point(fromX, y), new Point(toX, y)), LineRole.SEEN_OUTLINE);
    }

    /** A beam half as deep again, which no slip explains, and no ceiling below it: its lines begin where only a beam's do. */
    @Test
    void measuresABeamOfAnyDepthThatStandsInItsPlace() {
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> List.of("ceiling", "brander", "tie-beam").contains(line.part())
                && !(line.part().equals("tie-beam") && line.edge().equals("bottom")));
        Segment top = line("tie-beam", "top").segment();
        Segment slope = line("rafter", "bottom").segment();
        double upMm = 4.2;
        double in = upMm * Math.abs(slope.vector().x() / slope.vector().y());
        double startX = Math.min(top.start().x(), top.end().x()) + in;
        double endX = Math.max(top.start().x(), top.end().x());
        double y = top.start().y() + upMm;
        lines.add(new DrawnLine(
                "tie-beam", 0, "top", new Segment(new Point(startX, y), new Point(endX, y)), LineRole.SEEN_OUTLINE));
        MeasuredSheet sheet = measured(lines);

        assertThat(length(sheet, "tie-beam.depth")).isCloseTo(8 + upMm, within(WITHIN_MM));
        assertThat(sheet.measurement("ceiling.drop").orElseThrow().finding()).isEqualTo(new Finding.Absent());
        assertThat(sheet.measurement("brander.count").orElseThrow().finding()).isEqualTo(new Finding.Count(0));
    }

    /** Neither beam nor ceiling tells the heel's height, and the lines at the eaves run on as far as a wall's faces do. */
    @Test
    void findsTheWallWhereNoLevelLineTellsItsHeight() {
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> List.of("ceiling", "brander", "tie-beam", "post", "barge-board").contains(line.part()));
        lines.add(runOn("bottom", 40));
        lines.add(down(line("rafter", "cut")));
        lines.add(down(line("gutter", "outer")));
        MeasuredSheet sheet = measured(lines);

        assertThat(length(sheet, "wall.thickness")).isCloseTo(12, within(WITHIN_MM));
        assertThat(length(sheet, "rafter.overhang")).isCloseTo(21, within(WITHIN_MM));
    }

    private static DrawnLine down(DrawnLine upright) {
        double x = upright.segment().start().x();
        double y = Math.min(upright.segment().start().y(), upright.segment().end().y());
        return new DrawnLine(
                "construction", 3, upright.part(), new Segment(new Point(x, y - 25), new Point(x, y + 12)), LineRole.HATCH);
    }

    /** The box at the eaves has another line where one of its sides should be: the others say that it is not its own. */
    @Test
    void leavesOpenTheWidthOfABoxUnlikeTheOthers() {
        DrawnLine high = lines("support", "high").filter(line -> line.index() == 0).findFirst().orElseThrow();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("support") && line.index() == 0 && !line.edge().equals("low"));
        lines.add(beside(high, 0.7));
        MeasuredSheet sheet = measured(lines);

        assertThat(sheet.measurement("support.width").orElseThrow().finding()).isInstanceOf(Finding.Uncertain.class);
        assertThat(length(sheet, "support.depth")).isCloseTo(4, within(WITHIN_MM));
    }

    private static Stream<DrawnLine> lines(String part, String edge) {
        return NET_LOFT.lines().stream().filter(line -> line.part().equals(part) && line.edge().equals(edge));
    }

    private static List<DrawnLine> with(DrawnLine... more) {
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.addAll(List.of(more));
        return lines;
    }

    /** An upright from the tie beam to the rafter, places counted from the wall as the solver's lines are. */
    private static DrawnLine upright(double x) {
        DrawnLine beam = line("tie-beam", "top");
        DrawnLine rafter = line("rafter", "bottom");
        double low = beam.segment().start().y();
        Segment slope = rafter.segment();
        double high = slope.start().y() + (x - slope.start().x()) * slope.vector().y() / slope.vector().x();
        return new DrawnLine("post", 9, "outer", new Segment(new Point(x, low), new Point(x, high)), LineRole.SEEN_OUTLINE);
    }

    private static DrawnLine line(String part, String edge) {
        return lines(part, edge).findFirst().orElseThrow();
    }

    private static List<DrawnLine> broken(String part, String edge, double from, double to) {
        DrawnLine whole = line(part, edge);
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.remove(whole);
        lines.add(piece(whole, 0, from));
        lines.add(piece(whole, to, 1));
        return lines;
    }

    private static DrawnLine piece(DrawnLine whole, double from, double to) {
        Segment segment = whole.segment();
        return new DrawnLine(
                whole.part(), whole.index(), whole.edge(), new Segment(segment.at(from), segment.at(to)), whole.role());
    }

    private static MeasuredSheet measured(List<DrawnLine> lines) {
        return new Measurer().measure(ExactPage.of(NET_LOFT, lines), NET_LOFT);
    }

    private static double length(MeasuredSheet sheet, String key) {
        Finding finding = sheet.measurement(key).orElseThrow().finding();
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        return ((Finding.Quantity) finding).value();
    }
}
