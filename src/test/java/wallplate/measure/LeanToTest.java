package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/** Sections through lean-to roofs: the parts that they share with the eaves section, and the high wall of their own. */
class LeanToTest {

    private static final String TOOL_SHED =
            """
            id: tool-shed-lean-to
            title: Section through the lean-to of the tool shed
            detail: mono-pitch-section
            scale: "1:20"
            eaves: left
            pitch: 12
            wall: {thickness: 220, plate-flush: inner}
            wall-plate: {width: 100, depth: 50}
            high-wall: {clear-span: 2200, thickness: 220}
            high-plate: {width: 100, depth: 50}
            rafter: {depth: 150, overhang: 300}
            support: {name: purlin, width: 50, depth: 75, spacing: 800}
            covering: {name: corrugated sheeting, thickness: 40, projection: 60}
            fascia: {thickness: 30, depth: 220}
            gutter: {width: 120, depth: 100}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    private static final String PUMP_HOUSE =
            """
            id: pump-house-lean-to
            title: Section through the lean-to of the pump house
            detail: mono-pitch-section
            scale: "1:20"
            eaves: right
            pitch: 24
            wall: {thickness: 150, plate-flush: outer}
            wall-plate: {width: 110, depth: 75}
            high-wall: {clear-span: 2000, thickness: 190}
            high-plate: {width: 76, depth: 63}
            rafter: {depth: 125, overhang: 350}
            support: {name: purlin, width: 60, depth: 80, spacing: 640}
            covering: {name: profiled sheeting, thickness: 30, projection: 70}
            fascia: {thickness: 32, depth: 200}
            gutter: {width: 120, depth: 100}
            barge-board: {depth: 280, clearance: 40}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    static final List<String> TASKS = List.of(TOOL_SHED, PUMP_HOUSE);

    private static final ExpectedDrawing PUMP_DRAWING = MeasureTasks.solved(PUMP_HOUSE);

    @ParameterizedTest
    @FieldSource("TASKS")
    void measuresEveryKeyOfAnExactDrawing(String yaml) {
        ExpectedDrawing drawing = MeasureTasks.solved(yaml);
        MeasurerTest.assertRight(drawing, new Measurer().measure(ExactPage.of(drawing), drawing));
    }

    @ParameterizedTest
    @FieldSource("TASKS")
    void answersOnlyForPartsOfItsDetail(String yaml) {
        ExpectedDrawing drawing = MeasureTasks.solved(yaml);
        assertThat(new Measurer().measure(ExactPage.of(drawing), drawing).measurements())
                .extracting(Measurement::key)
                .noneMatch(key -> key.startsWith("tie-beam") || key.startsWith("brander") || key.startsWith("post"));
    }

    /** A learner's plates stand right on their walls, and the whole roof lies so far above or below them. */
    @ParameterizedTest
    @CsvSource({"4.2", "1.5", "-1.4", "-3.1"})
    void measuresPlatesThatTheRafterPassesBy(double upMm) {
        for (ExpectedDrawing drawing : List.of(PUMP_DRAWING, MeasureTasks.solved(TOOL_SHED))) {
            List<DrawnLine> lines =
                    drawing.lines().stream().map(line -> ofWalls(line) ? line : lifted(line, upMm)).toList();
            MeasuredSheet sheet = new Measurer().measure(ExactPage.of(drawing, lines), drawing);

            for (String key : List.of("wall-plate.width", "wall-plate.depth", "high-plate.width", "high-plate.depth")) {
                assertThat(length(sheet, key)).as("%s of %s", key, drawing.task().id()).isCloseTo(
                        ((Expected.Length) drawing.value(key).orElseThrow()).exactMm(), within(0.15));
            }
            double pitch = Math.toRadians(((Expected.Angle) drawing.value("roof.pitch").orElseThrow()).degrees());
            assertThat(length(sheet, "rafter.heel-offset")).isCloseTo(upMm * Math.cos(pitch), within(0.15));
        }
    }

    private static boolean ofWalls(DrawnLine line) {
        return line.part().contains("wall") || line.part().contains("plate");
    }

    private static DrawnLine lifted(DrawnLine line, double upMm) {
        Vector up = new Vector(0, upMm);
        Segment segment = line.segment();
        return new DrawnLine(
                line.part(), line.index(), line.edge(),
                new Segment(segment.start().plus(up), segment.end().plus(up)), line.role());
    }

    private static double length(MeasuredSheet sheet, String key) {
        Finding finding = sheet.measurement(key).orElseThrow().finding();
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        return ((Finding.Quantity) finding).value();
    }

    @Test
    void seesThatTheHighPlateIsNotCrossed() {
        LevelPage page = ExactPage.of(
                PUMP_DRAWING, line -> !(line.part().equals("high-plate") && line.edge().startsWith("cross")));
        assertThat(measured(page).measurement("high-plate.crossed").orElseThrow().finding())
                .isEqualTo(new Finding.YesNo(false));
    }

    @Test
    void doesNotMeasureAHighWallThatIsNotDrawn() {
        MeasuredSheet sheet = measured(ExactPage.of(PUMP_DRAWING, line -> !line.part().startsWith("high-")));
        SoftAssertions softly = new SoftAssertions();
        for (String key : List.of("high-wall.thickness", "high-wall.clear-span", "high-plate.width", "high-plate.rise")) {
            Finding finding = sheet.measurement(key).orElseThrow().finding();
            softly.assertThat(finding.isMeasured()).as("%s: %s", key, finding).isFalse();
        }
        softly.assertAll();
    }

    private static MeasuredSheet measured(LevelPage page) {
        return new Measurer().measure(page, PUMP_DRAWING);
    }
}
