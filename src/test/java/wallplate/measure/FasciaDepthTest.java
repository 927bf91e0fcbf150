package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.task.EavesSide;

/** Which two level lines close the fascia, where its depth is not the one asked for or other lines cross it there. */
class FasciaDepthTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private static final ExpectedDrawing GRAIN_STORE = MeasureTasks.solved(MeasureTasks.GRAIN_STORE);

    private static final double WITHIN_MM = 0.12;
    /** Well below the rafter's lower corner. */
    private static final double BELOW_TOP_MM = 15;

    /** Ten asked for; no slip makes it so deep. */
    @ParameterizedTest
    @ValueSource(doubles = {24, 27})
    void measuresABoardThatHangsFarBelowTheRafter(double depthMm) {
        assertThat(depth(GRAIN_STORE, withBoard(GRAIN_STORE, depthMm))).isCloseTo(depthMm, within(WITHIN_MM));
    }

    /** The board's lower end lies higher than most of the rafter's end behind it. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 6})
    void measuresABoardThatLeavesMostOfTheRaftersEndBare(double depthMm) {
        assertThat(depth(GRAIN_STORE, withBoard(GRAIN_STORE, depthMm))).isCloseTo(depthMm, within(WITHIN_MM));
    }

    /** As a barge board's lower edge does. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.5, 0.5})
    void takesTheLevelLineWhereASlopingOneCrossesTheBoardBesideItsBottom(double aboveMm) {
        assertThat(depth(NET_LOFT, crossed(edge(NET_LOFT, "bottom"), aboveMm))).isCloseTo(11.5, within(WITHIN_MM));
    }

    /** As a leader does, or a diagonal of the purlin's box. */
    @Test
    void takesTheLevelLineWhereASlopingOneCrossesTheBoardBelowItsTop() {
        assertThat(depth(NET_LOFT, crossed(edge(NET_LOFT, "top"), -0.5))).isCloseTo(11.5, within(WITHIN_MM));
    }

    /** A dimension line of the depth that the board should have, and which neither of its sides reaches. */
    @Test
    void takesNoDimensionLineBelowTheBoardForItsBottom() {
        List<DrawnLine> lines = new ArrayList<>(withBoard(GRAIN_STORE, 5));
        double x = edge(GRAIN_STORE, "outer").start().x();
        double y = edge(GRAIN_STORE, "top").start().y() - BELOW_TOP_MM;
        lines.add(outline("wall", "other", new Point(x - 30, y), new Point(x + 60, y)));

        assertThat(depth(GRAIN_STORE, lines)).isCloseTo(5, within(WITHIN_MM));
    }

    /** The drawing with a fascia of another depth, its top where it was. */
    private static List<DrawnLine> withBoard(ExpectedDrawing drawing, double depthMm) {
        double outerX = edge(drawing, "outer").start().x();
        double innerX = edge(drawing, "inner").start().x();
        double topY = edge(drawing, "top").start().y();
        double bottomY = topY - depthMm;
        List<DrawnLine> lines = new ArrayList<>(drawing.lines());
        lines.removeIf(line -> line.part().equals("fascia"));
        lines.add(outline("fascia", "outer", new Point(outerX, bottomY), new Point(outerX, topY)));
        lines.add(outline("fascia", "inner", new Point(innerX, bottomY), new Point(innerX, topY)));
        lines.add(outline("fascia", "top", new Point(outerX, topY), new Point(innerX, topY)));
        lines.add(outline("fascia", "bottom", new Point(outerX, bottomY), new Point(innerX, bottomY)));
        return lines;
    }

    /** One line more, along the slope, whose middle lies above that of a closing line. */
    private static List<DrawnLine> crossed(Segment closing, double aboveMm) {
        Vector slope = slopeOf(NET_LOFT);
        Point middle = new Point((closing.start().x() + closing.end().x()) / 2, closing.start().y() + aboveMm);
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.add(outline("barge-board", "other", middle.plus(slope.times(-5)), middle.plus(slope.times(5))));
        return lines;
    }

    private static Vector slopeOf(ExpectedDrawing drawing) {
        return lines(drawing, "rafter", "bottom").findFirst().orElseThrow().segment().vector().unit();
    }

    private static DrawnLine outline(String part, String edge, Point start, Point end) {
        return new DrawnLine(part, 9, edge, new Segment(start, end), LineRole.CUT_OUTLINE);
    }

    private static Segment edge(ExpectedDrawing drawing, String edge) {
        return lines(drawing, "fascia", edge).findFirst().orElseThrow().segment();
    }

    private static Stream<DrawnLine> lines(ExpectedDrawing drawing, String part, String edge) {
        return drawing.lines().stream().filter(line -> line.part().equals(part) && line.edge().equals(edge));
    }

    private static double depth(ExpectedDrawing drawing, List<DrawnLine> lines) {
        boolean isRight = drawing.task().eaves() == EavesSide.RIGHT;
        MeasuredSheet sheet = new Measurer().measure(ExactPage.of(lines, isRight, 297, 210), drawing);
        Finding finding = sheet.measurement("fascia.depth").orElseThrow().finding();
        assertThat(finding).isInstanceOf(Finding.Quantity.class);
        return ((Finding.Quantity) finding).value();
    }
}
