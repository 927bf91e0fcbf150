package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Line quality on pages rastered by Java 2D with outlines 0.35 mm broad and ends where this test puts them. */
class LineQualityTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);

    @Test
    void knowsTheBreadthThatTheOutlinesWereDrawnWith() {
        Finding breadth = finding(LineMeasure.OUTLINE_BREADTH.key(), line -> line);

        assertThat(((Finding.Quantity) breadth).value()).isCloseTo(0.35, within(0.04));
    }

    /** The page's hatch lines, and the lines of a dimension set under the drawing, are 0.2 mm broad. */
    @Test
    void knowsTheBreadthsOfHatchingAndDimensionLines() {
        MeasuredSheet sheet = measured(NET_LOFT, withDimension());

        assertThat(breadth(sheet, LineMeasure.OUTLINE_BREADTH)).isCloseTo(0.35, within(0.04));
        assertThat(breadth(sheet, LineMeasure.HATCHING_BREADTH)).isCloseTo(0.2, within(0.04));
        assertThat(breadth(sheet, LineMeasure.DIMENSION_BREADTH)).isCloseTo(0.2, within(0.04));
    }

    @Test
    void takesNoLineOfTheDrawingForADimensionLine() {
        MeasuredSheet sheet = measured(NET_LOFT, NET_LOFT.lines());

        assertThat(sheet.measurement(LineMeasure.DIMENSION_BREADTH.key()).orElseThrow().finding())
                .isInstanceOf(Finding.Uncertain.class);
    }

    @Test
    void findsNoHatchingInAWallWithoutIt() {
        assertThat(finding(LineMeasure.HATCHING_BREADTH.key(), line -> line)).isInstanceOf(Finding.Uncertain.class);
    }

    @Test
    void findsNothingToSayOfACleanDrawing() {
        assertThat(finding(LineMeasure.POOR_CORNERS.key(), line -> line)).isEqualTo(new Finding.Count(0));
        assertThat(finding(LineMeasure.CONSTRUCTION_DARKNESS.key(), line -> line)).isEqualTo(new Finding.Absent());
    }

    @Test
    void countsAnEndThatOvershootsItsCorner() {
        assertThat(finding(LineMeasure.POOR_CORNERS.key(), line -> is(line, "fascia", "bottom") ? movedEnd(line, true, new Vector(-2, 0)) : line))
                .isEqualTo(new Finding.Count(1));
    }

    @Test
    void countsAnEndThatStopsShortOfItsCorner() {
        assertThat(finding(LineMeasure.POOR_CORNERS.key(), line -> is(line, "gutter", "outer") ? movedEnd(line, false, new Vector(0, 1.7)) : line))
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

    /** The drawing with a dimension 50 mm long under it, its extension lines 1.5 mm past the dimension line, two strokes for a figure. */
    private static List<DrawnLine> withDimension() {
        double low = NET_LOFT.lines().stream()
                .flatMapToDouble(line -> DoubleStream.of(line.segment().start().y(), line.segment().end().y()))
                .min()
                .orElseThrow();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.add(thin(Segment.between(0, low - 10, 50, low - 10)));
        lines.add(thin(Segment.between(0, low - 11.5, 0, low - 2)));
        lines.add(thin(Segment.between(50, low - 11.5, 50, low - 2)));
        lines.add(thin(Segment.between(23, low - 8.8, 24, low - 6.5)));
        lines.add(thin(Segment.between(25, low - 8.8, 26, low - 6.5)));
        return lines;
    }

    private static DrawnLine thin(Segment segment) {
        return new DrawnLine("dimension", 0, "line", segment, LineRole.HATCH);
    }

    private static double breadth(MeasuredSheet sheet, LineMeasure measure) {
        return ((Finding.Quantity) sheet.measurement(measure.key()).orElseThrow().finding()).value();
    }

    private static Finding finding(String key, UnaryOperator<DrawnLine> change) {
        List<DrawnLine> lines = NET_LOFT.lines().stream()
                .filter(line -> line.role() != LineRole.HATCH)
                .map(change)
                .toList();
        return measured(NET_LOFT, lines).measurement(key).orElseThrow().finding();
    }

    private static MeasuredSheet measured(ExpectedDrawing drawing, List<DrawnLine> lines) {
        return new Measurer().measure(ExactPage.of(drawing, lines), drawing);
    }
}
