package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Eaves at which the lines of one part could be taken for those of another. */
class EavesTogetherTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private static final ExpectedDrawing TOLL_HOUSE = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
    private static final ExpectedDrawing KILN_SHED = MeasureTasks.solved(MeasureTasks.KILN_SHED);

    private static final double WITHIN_MM = 0.15;

    /** A scan in black and white shows construction lines as dark as outlines. */
    @ParameterizedTest
    @ValueSource(doubles = {11, 12})
    void readsNoRaftersEndWhereItsConstructionLinesEnd(double beyondMm) {
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        for (String edge : List.of("top", "bottom")) {
            Segment rafter = segment(TOLL_HOUSE, "rafter", edge);
            lines.add(outline("construction", edge, rafter.start(), rafter.start().plus(slope(rafter).times(-beyondMm))));
        }

        assertLength(TOLL_HOUSE, lines, "rafter.overhang", 24);
        assertLength(TOLL_HOUSE, lines, "gutter.width", 7.5);
        assertLength(TOLL_HOUSE, lines, "barge-board.depth", 17);
    }

    /** Half as deep as asked or less, so that its lower end lies above the rafter's top. */
    @ParameterizedTest
    @ValueSource(doubles = {4, 4.4})
    void seesABoardThatStandsAboveTheRafterAlone(double depthMm) {
        double topY = segment(NET_LOFT, "fascia", "top").start().y();
        double outerX = segment(NET_LOFT, "fascia", "outer").start().x();
        double innerX = segment(NET_LOFT, "fascia", "inner").start().x();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> line.part().equals("fascia") && !line.edge().equals("top"));
        lines.removeIf(line -> line.part().equals("gutter") || line.part().equals("barge-board"));
        Point foot = segment(NET_LOFT, "rafter", "bottom").start();
        lines.add(outline("fascia", "outer", new Point(outerX, topY - depthMm), new Point(outerX, topY)));
        lines.add(outline("fascia", "bottom", new Point(outerX, topY - depthMm), new Point(innerX, topY - depthMm)));
        lines.add(outline("fascia", "inner", foot, new Point(innerX, topY)));

        assertLength(NET_LOFT, lines, "fascia.thickness", 1.5);
    }

    /** It is so narrow and deep that it reaches up to the covering as a barge board's end does, and the roof is low. */
    @ParameterizedTest
    @ValueSource(doubles = {1.2, 2})
    void takesNoGuttersSideForABargeBoardsEnd(double belowCoveringMm) {
        ExpectedDrawing lowRoof = MeasureTasks.solved(MeasureTasks.GRAIN_STORE.replace("pitch: 19", "pitch: 12"));
        Segment bottom = segment(lowRoof, "gutter", "bottom");
        double faceX = Math.max(bottom.start().x(), bottom.end().x());
        double outerX = faceX - 2.5;
        double lowY = heightAt(segment(lowRoof, "rafter", "bottom"), outerX);
        double highY = heightAt(segment(lowRoof, "covering", "top"), outerX) - belowCoveringMm;
        List<DrawnLine> lines = new ArrayList<>(lowRoof.lines());
        lines.removeIf(line -> line.part().equals("gutter"));
        lines.add(outline("gutter", "bottom", new Point(outerX, lowY), new Point(faceX, lowY)));
        lines.add(outline("gutter", "outer", new Point(outerX, lowY), new Point(outerX, highY)));

        assertThat(finding(lowRoof, lines, "gutter.width")).isNotEqualTo(new Finding.Absent());
    }

    /** No fascia is drawn, and a narrow gutter as deep as it should be wide hangs on the plumb cut. */
    @ParameterizedTest
    @ValueSource(doubles = {-1.5, -0.5, 0.5, 1.5})
    void takesNoNarrowGutterForTheMissingFascia(double lowerMm) {
        double cutX = segment(TOLL_HOUSE, "fascia", "inner").start().x();
        double topY = segment(TOLL_HOUSE, "fascia", "top").start().y();
        double width = 3.5;
        double depth = exact("gutter.width");
        double rimY = segment(TOLL_HOUSE, "gutter", "bottom").start().y() + exact("gutter.depth") - lowerMm;
        Point foot = new Point(cutX - width, rimY - depth);
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("fascia") || line.part().equals("gutter"));
        lines.add(outline("rafter", "cut", segment(TOLL_HOUSE, "rafter", "bottom").start(), new Point(cutX, topY)));
        lines.add(outline("gutter", "bottom", foot, new Point(cutX, rimY - depth)));
        lines.add(outline("gutter", "outer", foot, new Point(cutX - width, rimY)));

        assertThat(finding(TOLL_HOUSE, lines, "fascia.thickness")).isEqualTo(new Finding.Absent());
        assertLength(TOLL_HOUSE, lines, "gutter.width", width);
    }

    private static double exact(String key) {
        return ((Expected.Length) TOLL_HOUSE.value(key).orElseThrow()).exactMm();
    }

    /** A label was written over the upright just below the covering. */
    @ParameterizedTest
    @ValueSource(doubles = {2.2, 2.4})
    void readsABargeBoardToItsFootWhereLetteringBrokeItsEnd(double gapMm) {
        Segment end = segment(KILN_SHED, "barge-board", "end");
        double x = end.start().x();
        double footY = Math.min(end.start().y(), end.end().y());
        double topY = Math.max(end.start().y(), end.end().y());
        List<DrawnLine> lines = new ArrayList<>(KILN_SHED.lines());
        lines.removeIf(line -> line.part().equals("barge-board") && line.edge().equals("end"));
        lines.add(outline("barge-board", "end", new Point(x, footY), new Point(x, topY - 5.2 - gapMm)));
        lines.add(outline("barge-board", "end", new Point(x, topY - 5.2), new Point(x, topY)));

        assertLength(KILN_SHED, lines, "barge-board.depth", 20);
    }

    @ParameterizedTest
    @ValueSource(doubles = {2.8, 3.6})
    void readsABargeBoardToItsLowerEdgeWhereItsEndRunsOnBelow(double beyondMm) {
        Segment end = segment(TOLL_HOUSE, "barge-board", "end");
        double x = end.start().x();
        double footY = Math.min(end.start().y(), end.end().y());
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.add(outline("construction", "line", new Point(x, footY), new Point(x, footY - beyondMm)));

        assertLength(TOLL_HOUSE, lines, "barge-board.depth", 17);
    }

    /** The construction lines of the board's end and of the gutter are as dark as outlines, as a scan of black and white makes them. */
    @ParameterizedTest
    @CsvSource({"2, -1", "2, 1", "3, -3", "3, 1"})
    void readsABargeBoardWhoseLowerEdgeRunsPastAnotherUpright(double insideMm, double shorterMm) {
        List<DrawnLine> lines = bargeBoardRunningOn(insideMm, shorterMm);

        assertLength(TOLL_HOUSE, lines, "barge-board.depth", 17 - shorterMm);
    }

    @Test
    void callsNoBargeBoardAbsentWhoseEndRunsOnBothWays() {
        assertThat(finding(TOLL_HOUSE, bargeBoardRunningOn(2, 2), "barge-board.depth")).isNotEqualTo(new Finding.Absent());
    }

    /** A board's end and another upright inside it, both of which go on by 6 mm and more above the covering and below the board. */
    private static List<DrawnLine> bargeBoardRunningOn(double insideMm, double shorterMm) {
        Segment end = segment(TOLL_HOUSE, "barge-board", "end");
        Vector slope = slope(segment(TOLL_HOUSE, "barge-board", "bottom"));
        double x = end.start().x();
        Point foot = new Point(x, Math.min(end.start().y(), end.end().y()) + shorterMm);
        double topY = Math.max(end.start().y(), end.end().y());
        double otherX = x + insideMm;
        double otherTopY = heightAt(segment(TOLL_HOUSE, "covering", "top"), otherX);
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("gutter") || line.part().equals("barge-board"));
        lines.add(outline("barge-board", "end", new Point(x, foot.y() - 6), new Point(x, topY + 10)));
        lines.add(outline("barge-board", "bottom", foot, foot.plus(slope.times(20 / slope.x()))));
        lines.add(outline("construction", "line", new Point(otherX, foot.y() - 6), new Point(otherX, otherTopY + 7)));
        return lines;
    }

    private static void assertLength(ExpectedDrawing drawing, List<DrawnLine> lines, String key, double lengthMm) {
        Finding finding = finding(drawing, lines, key);
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) finding).value()).as(key).isCloseTo(lengthMm, within(WITHIN_MM));
    }

    private static Finding finding(ExpectedDrawing drawing, List<DrawnLine> lines, String key) {
        return new Measurer().measure(ExactPage.of(drawing, lines), drawing).measurement(key).orElseThrow().finding();
    }

    private static double heightAt(Segment segment, double x) {
        Vector slope = slope(segment);
        return segment.start().y() + (x - segment.start().x()) * slope.y() / slope.x();
    }

    private static Vector slope(Segment segment) {
        Vector vector = segment.vector().unit();
        return vector.x() < 0 ? vector.times(-1) : vector;
    }

    private static DrawnLine outline(String part, String edge, Point from, Point to) {
        return new DrawnLine(part, 0, edge, new Segment(from, to), LineRole.SEEN_OUTLINE);
    }

    private static Segment segment(ExpectedDrawing drawing, String part, String edge) {
        return drawing.lines().stream()
                .filter(line -> line.part().equals(part) && line.edge().equals(edge))
                .findFirst()
                .orElseThrow()
                .segment();
    }
}
