package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.task.EavesSide;

/** Line quality on pages rastered by Java 2D with outlines 0.35 mm broad and ends where this test puts them. */
class LineQualityTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);

    @Test
    void knowsTheBreadthThatTheOutlinesWereDrawnWith() {
        Finding breadth = finding(LineQuality.OUTLINE_BREADTH, line -> line);

        assertThat(((Finding.Quantity) breadth).value()).isCloseTo(0.35, within(0.04));
    }

    @Test
    void findsNothingToSayOfACleanDrawing() {
        assertThat(finding(LineQuality.POOR_CORNERS, line -> line)).isEqualTo(new Finding.Count(0));
        assertThat(finding(LineQuality.CONSTRUCTION_DARKNESS, line -> line)).isEqualTo(new Finding.Absent());
    }

    @Test
    void countsAnEndThatOvershootsItsCorner() {
        assertThat(finding(LineQuality.POOR_CORNERS, line -> is(line, "fascia", "bottom") ? movedEnd(line, true, new Vector(-2, 0)) : line))
                .isEqualTo(new Finding.Count(1));
    }

    @Test
    void countsAnEndThatStopsShortOfItsCorner() {
        assertThat(finding(LineQuality.POOR_CORNERS, line -> is(line, "gutter", "outer") ? movedEnd(line, false, new Vector(0, 1.7)) : line))
                .isEqualTo(new Finding.Count(1));
    }

    @Test
    void looksAtNoEndBehindWhichTheDrawingRunsOn() {
        assertThat(Corners.of(NET_LOFT))
                .contains(new Corners.Corner("fascia.bottom", "fascia.outer"))
                .noneMatch(corner -> corner.line().equals("wall-plate.inner") && corner.at().equals("wall.top"));
    }

    private static boolean is(DrawnLine line, String part, String edge) {
        return line.part().equals(part) && line.edge().equals(edge);
    }

    /** The line with its end farther to the left, or else its lower end, moved. */
    private static DrawnLine movedEnd(DrawnLine line, boolean leftEnd, Vector by) {
        Segment segment = line.segment();
        boolean isStart = leftEnd
                ? segment.start().x() < segment.end().x()
                : segment.start().y() < segment.end().y();
        Segment moved = isStart
                ? new Segment(segment.start().plus(by), segment.end())
                : new Segment(segment.start(), segment.end().plus(by));
        return new DrawnLine(line.part(), line.index(), line.edge(), moved, line.role());
    }

    private static Finding finding(String key, UnaryOperator<DrawnLine> change) {
        List<DrawnLine> lines = NET_LOFT.lines().stream()
                .filter(line -> line.role() != LineRole.HATCH)
                .map(change)
                .toList();
        boolean right = NET_LOFT.task().eaves() == EavesSide.RIGHT;
        MeasuredSheet sheet = new Measurer().measure(
                ExactPage.of(lines, right, NET_LOFT.task().sheet().widthMm(), NET_LOFT.task().sheet().heightMm()), NET_LOFT);
        return sheet.measurement(key).orElseThrow().finding();
    }
}
