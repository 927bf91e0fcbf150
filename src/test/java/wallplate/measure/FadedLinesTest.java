package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.LevelPage;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.InkCanvas;

/** Long lines of which light or rubbing has left little over some millimetres. */
class FadedLinesTest {

    private static final ExpectedDrawing TOLL_HOUSE = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);
    private static final long SEED = 20261129;
    private static final double OUTLINE_MM = 0.4;
    private static final double THIN_MM = 0.3;
    private static final double DARKNESS = 150;
    /** Darker than paper, and paler than a construction line. */
    private static final double FADED = 42;

    /** The share of the line, from the eaves, at which its shorter piece begins; how long it is pale before that. */
    @ParameterizedTest
    @CsvSource({"covering, top, 0.7, 6", "covering, bottom, 0.75, 9", "rafter, top, 0.6, 9", "rafter, bottom, 0.7, 6"})
    void aSlopesLongerPieceBeyondAPaleOneBelongsToIt(String part, String edge, double from, double paleMm) {
        MeasuredSheet sheet = new Measurer().measure(page(part, edge, from, paleMm), TOLL_HOUSE);

        assertLength(sheet, "rafter.depth", 7.5);
        assertLength(sheet, "rafter.overhang", 24);
        assertLength(sheet, "covering.gap", 5);
        assertLength(sheet, "covering.thickness", 1.7);
        assertLength(sheet, "barge-board.depth", 17);
    }

    private static LevelPage page(String part, String edge, double from, double paleMm) {
        double width = TOLL_HOUSE.task().sheet().widthMm();
        double height = TOLL_HOUSE.task().sheet().heightMm();
        Segment whole = fromEaves(MeasureTasks.segment(TOLL_HOUSE, part, edge));
        double to = from - paleMm / whole.length();
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals(part) && line.edge().equals(edge));
        Vector shift = ExactPage.shift(TOLL_HOUSE.lines(), false, width, height);
        InkCanvas canvas = new InkCanvas(width, height, 10, SEED);
        lines.forEach(line -> canvas.stroke(
                shifted(line.segment(), shift), ExactPage.isOutline(line) ? OUTLINE_MM : THIN_MM, DARKNESS));
        canvas.stroke(shifted(new Segment(whole.start(), whole.at(to)), shift), OUTLINE_MM, DARKNESS);
        canvas.piece(shifted(new Segment(whole.at(to), whole.at(from)), shift), OUTLINE_MM, FADED);
        canvas.stroke(shifted(new Segment(whole.at(from), whole.end()), shift), OUTLINE_MM, DARKNESS);
        return ExactPage.levelPage(canvas.image(0.1, 3));
    }

    private static Segment fromEaves(Segment segment) {
        return segment.start().x() < segment.end().x() ? segment : new Segment(segment.end(), segment.start());
    }

    private static Segment shifted(Segment segment, Vector shift) {
        return new Segment(segment.start().plus(shift), segment.end().plus(shift));
    }

    private static void assertLength(MeasuredSheet sheet, String key, double lengthMm) {
        Finding finding = sheet.measurement(key).orElseThrow().finding();
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) finding).value()).as(key).isCloseTo(lengthMm, within(0.05));
    }
}
