package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.InkCanvas;

/** Coverings so thin that the pencil's two lines run into one, and single lines that were drawn twice. */
class ThinCoveringTest {

    private static final long SEED = 20261129;
    private static final double DARKNESS = 150;

    /** The thickness in millimetres of the building at 1:20, and the breadth of the pencil's lines on paper. */
    @ParameterizedTest
    @CsvSource({"14, 0.6", "16, 0.6", "15, 0.7", "16, 0.7", "34, 0.6"})
    void measuresBothLines(int thicknessMm, double breadthMm) {
        ExpectedDrawing drawing = solved(thicknessMm);

        MeasuredSheet sheet = new Measurer().measure(page(drawing, drawing.lines(), breadthMm), drawing);

        assertLength(sheet, "covering.thickness", thicknessMm / 20.0, 0.1);
        assertLength(sheet, "covering.gap", 100 / 20.0, 0.1);
        assertLength(sheet, "rafter.depth", 150 / 20.0, 0.05);
    }

    /** A covering of one line only, drawn over again a little beside itself: no two lines are made of it. */
    @Test
    void partsNoLineThatWasDrawnTwice() {
        ExpectedDrawing drawing = solved(34);
        List<DrawnLine> lines = new ArrayList<>(drawing.lines());
        lines.removeIf(line -> line.part().equals("covering") && !line.edge().equals("bottom"));
        DrawnLine underside = lines.stream().filter(line -> line.part().equals("covering")).findFirst().orElseThrow();
        Segment again = underside.segment().line().offset(0.25).between(0, underside.segment().length());
        lines.add(new DrawnLine("covering", 1, "bottom", again, underside.role()));

        MeasuredSheet sheet = new Measurer().measure(page(drawing, lines, 0.4), drawing);

        assertThat(sheet.measurement("covering.thickness").orElseThrow().finding()).isInstanceOf(Finding.Uncertain.class);
    }

    /** The ceiling's board in millimetres of the building, and the breadth of the pencil's lines on paper. */
    @ParameterizedTest
    @CsvSource({"14, 0.5", "16, 0.6", "14, 0.6", "15, 0.7"})
    void measuresToTheUpperOfAThinBoardsLines(int boardMm, double breadthMm) {
        ExpectedDrawing drawing = withBoard(boardMm);

        MeasuredSheet sheet = new Measurer().measure(page(drawing, drawing.lines(), breadthMm), drawing);

        assertLength(sheet, "ceiling.drop", exact(drawing, "ceiling.drop"), 0.1);
    }

    /** The board's upper line falls, and ends in the lower one far before the break line. */
    @Test
    void findsBothOfABoardsLinesThatRunTogether() {
        ExpectedDrawing drawing = withBoard(24);
        List<DrawnLine> lines = new ArrayList<>(drawing.lines());
        DrawnLine upper = lines.stream()
                .filter(line -> line.part().equals("ceiling") && line.edge().equals("top"))
                .findFirst()
                .orElseThrow();
        Segment level = upper.segment();
        lines.remove(upper);
        Segment falling = new Segment(level.start(), level.at(0.6).plus(new Vector(0, -0.6)));
        lines.add(new DrawnLine("ceiling", 0, "top", falling, upper.role()));

        MeasuredSheet sheet = new Measurer().measure(page(drawing, lines, 0.45), drawing);

        // Between both ends of the upper line; the lower one lies 1.2 mm further down.
        assertLength(sheet, "ceiling.drop", exact(drawing, "ceiling.drop") + 0.4, 0.4);
    }

    private static double exact(ExpectedDrawing drawing, String key) {
        return ((Expected.Length) drawing.value(key).orElseThrow()).exactMm();
    }

    private static ExpectedDrawing withBoard(int boardMm) {
        String task = MeasureTasks.TOLL_HOUSE.replaceFirst("board: [0-9]+", "board: " + boardMm);
        return MeasureTasks.solved(task);
    }

    private static ExpectedDrawing solved(int thicknessMm) {
        return MeasureTasks.solved(MeasureTasks.TOLL_HOUSE.replace(
                "thickness: 34, projection: 80", "thickness: " + thicknessMm + ", projection: 80"));
    }

    /** The lines as a pencil draws them that wavers by a twentieth of a millimetre, which is an assumed figure. */
    private static LevelPage page(ExpectedDrawing drawing, List<DrawnLine> lines, double breadthMm) {
        double width = drawing.task().sheet().widthMm();
        double height = drawing.task().sheet().heightMm();
        InkCanvas canvas = new InkCanvas(width, height, 10, SEED);
        var shift = ExactPage.shift(lines, false, width, height);
        Random random = new Random(SEED);
        for (DrawnLine line : lines) {
            Segment segment = line.segment();
            canvas.stroke(
                    new Segment(segment.start().plus(shift), segment.end().plus(shift))
                            .line()
                            .offset(0.02 * random.nextGaussian())
                            .between(0, segment.length()),
                    ExactPage.isOutline(line) ? breadthMm : 0.3,
                    DARKNESS);
        }
        InkImage ink = canvas.image(0.2, 4);
        return ExactPage.levelPage(ink);
    }

    private static void assertLength(MeasuredSheet sheet, String key, double expectedMm, double withinMm) {
        Finding finding = sheet.measurement(key).orElseThrow().finding();
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) finding).value()).as(key).isCloseTo(expectedMm, within(withinMm));
    }
}
