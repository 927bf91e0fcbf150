package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Walls and plates drawn otherwise than asked, or with lines that could be read in two ways. */
class WallPlateTest {

    private static final ExpectedDrawing NET_LOFT = MeasureTasks.solved(MeasureTasks.NET_LOFT);
    private static final ExpectedDrawing TOLL_HOUSE = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
    private static final String PLATE = "wall-plate: {width: 110, depth: 70}";
    private static final String OTHER_FACES = "other uprights could be the wall's faces";
    private static final double WITHIN_MM = 0.12;

    /** A flat plate, 1.9 mm deep on paper, drawn as deep as it is wide: four times as deep as asked for. */
    @ParameterizedTest
    @ValueSource(ints = {152, 76})
    void measuresAPlateAsDeepAsTheSlipOfTakingItsWidthMakesIt(int widthMm) {
        ExpectedDrawing asked = MeasureTasks.solved(
                MeasureTasks.TOLL_HOUSE.replace(PLATE, "wall-plate: {width: 152, depth: 38}"));
        ExpectedDrawing drawn = MeasureTasks.solved(
                MeasureTasks.TOLL_HOUSE.replace(PLATE, "wall-plate: {width: %d, depth: 152}".formatted(widthMm)));
        MeasuredSheet sheet = measured(asked, drawn.lines());

        assertLength(sheet, "wall-plate.width", widthMm / 20.0);
        assertLength(sheet, "wall-plate.depth", 152 / 20.0);
    }

    /**
     * Two level lines could be the wall's top: at some distance from one another, which is looked for, one is as likely
     * as the other. What both give alike is stated.
     */
    @Test
    void statesAPlatesWidthWhereItsDepthIsOpen() {
        List<MeasuredSheet> sheets = IntStream.rangeClosed(0, 6)
                .mapToObj(step -> measured(TOLL_HOUSE, withTwoTops(1.5 + 0.05 * step)))
                .toList();

        assertThat(sheets.stream().map(sheet -> isOpen(sheet, "wall-plate.depth"))).contains(true);
        sheets.forEach(sheet -> assertLength(sheet, "wall-plate.width", 5.5));
    }

    /** The same of two uprights that could be the plate's inner side. */
    @Test
    void statesAPlatesDepthWhereItsWidthIsOpen() {
        List<MeasuredSheet> sheets = IntStream.rangeClosed(0, 6)
                .mapToObj(step -> measured(TOLL_HOUSE, withTwoInnerSides(2.05 + 0.05 * step)))
                .toList();

        assertThat(sheets.stream().map(sheet -> isOpen(sheet, "wall-plate.width"))).contains(true);
        sheets.forEach(sheet -> assertLength(sheet, "wall-plate.depth", 3.5));
    }

    /** So short an upright may be the side of a plate that was drawn too deep. */
    @ParameterizedTest
    @CsvSource({"outer, 3", "outer, 5", "inner, 3", "inner, 5"})
    void leavesOpenAWallWhoseFaceHardlyComesDownBelowItsTop(String face, double belowTopMm) {
        MeasuredSheet sheet = measured(NET_LOFT, withFaceTo(face, belowTopMm));

        for (String key : List.of("wall.thickness", "rafter.overhang")) {
            assertThat(finding(sheet, key))
                    .as(key)
                    .isInstanceOfSatisfying(
                            Finding.Uncertain.class, open -> assertThat(open.reason()).isEqualTo(OTHER_FACES));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"outer", "inner"})
    void measuresAWallWhoseFaceComesDownALittleWay(String face) {
        MeasuredSheet sheet = measured(NET_LOFT, withFaceTo(face, 7));

        assertLength(sheet, "wall.thickness", 12);
        assertLength(sheet, "rafter.overhang", 21);
    }

    /** The upper of the two half a millimetre higher than the wall's top should be. */
    private static List<DrawnLine> withTwoTops(double apartMm) {
        Segment top = MeasureTasks.segment(TOLL_HOUSE, "wall", "top");
        double upperY = top.start().y() + 0.5;
        double lowerY = upperY - apartMm;
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("wall-plate") || isEdge(line, "wall", "top"));
        for (String side : List.of("outer", "inner")) {
            double x = MeasureTasks.segment(TOLL_HOUSE, "wall-plate", side).start().x();
            lines.add(outline("wall-plate", side, new Point(x, lowerY), new Point(x, 0)));
        }
        for (double y : new double[] {upperY, lowerY}) {
            lines.add(outline("wall", "top", new Point(top.start().x(), y), new Point(top.end().x(), y)));
        }
        return lines;
    }

    /** The first of the two 0.8 mm before the place of the inner side. */
    private static List<DrawnLine> withTwoInnerSides(double apartMm) {
        Segment inner = MeasureTasks.segment(TOLL_HOUSE, "wall-plate", "inner");
        double firstX = inner.start().x() - 0.8;
        double lowY = MeasureTasks.segment(TOLL_HOUSE, "wall", "top").start().y();
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("wall-plate") && !List.of("outer", "top").contains(line.edge()));
        for (double x : new double[] {firstX, firstX + apartMm}) {
            lines.add(outline("wall-plate", "inner", new Point(x, lowY), new Point(x, 0)));
        }
        return lines;
    }

    /** One face ends so far below the wall's top. */
    private static List<DrawnLine> withFaceTo(String face, double belowTopMm) {
        Segment whole = MeasureTasks.segment(NET_LOFT, "wall", face);
        double x = whole.start().x();
        double highY = Math.max(whole.start().y(), whole.end().y());
        double topY = MeasureTasks.segment(NET_LOFT, "wall", "top").start().y();
        List<DrawnLine> lines = new ArrayList<>(NET_LOFT.lines());
        lines.removeIf(line -> List.of(face, "break", "hatch").stream().anyMatch(edge -> isEdge(line, "wall", edge)));
        lines.add(outline("wall", face, new Point(x, topY - belowTopMm), new Point(x, highY)));
        return lines;
    }

    private static boolean isEdge(DrawnLine line, String part, String edge) {
        return line.part().equals(part) && line.edge().equals(edge);
    }

    private static DrawnLine outline(String part, String edge, Point from, Point to) {
        return new DrawnLine(part, 0, edge, new Segment(from, to), LineRole.SEEN_OUTLINE);
    }

    private static MeasuredSheet measured(ExpectedDrawing asked, List<DrawnLine> lines) {
        return new Measurer().measure(ExactPage.of(asked, lines), asked);
    }

    private static Finding finding(MeasuredSheet sheet, String key) {
        return sheet.measurement(key).orElseThrow().finding();
    }

    private static boolean isOpen(MeasuredSheet sheet, String key) {
        return finding(sheet, key) instanceof Finding.Uncertain;
    }

    private static void assertLength(MeasuredSheet sheet, String key, double lengthMm) {
        assertThat(finding(sheet, key)).as(key).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) finding(sheet, key)).value()).as(key).isCloseTo(lengthMm, within(WITHIN_MM));
    }
}
