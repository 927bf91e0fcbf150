package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Segment;
import wallplate.sheet.page.LineRefit.Fitted;

/** A drawing on A4 lying, with a frame found in pieces and a title block in its lower right corner. */
class FrameLinesTest {

    private static final FrameLines FRAMES = new FrameLines(297, 210);

    private static final Segment BEAM_TOP = Segment.between(90, 100, 240, 100.6);
    private static final Segment BEAM_BOTTOM = Segment.between(90, 94, 240, 94.6);
    private static final Segment WALL = Segment.between(110, 60, 109.7, 92);
    private static final Segment BAR = Segment.between(30, 25, 130, 25.4);

    private static final List<Segment> ROWS = List.of(
            Segment.between(213, 18, 287, 18), Segment.between(213, 26, 287, 26), Segment.between(240, 34, 287, 34));

    @Test
    void leavesOutTheRowsOfATitleBlockAndItsUprights() {
        Segment edge = Segment.between(213, 11, 213, 34);
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(
                List.of(BEAM_TOP, BEAM_BOTTOM, BAR, ROWS.get(0), ROWS.get(1), Segment.between(213, 34, 287, 34)),
                List.of(WALL, edge)));

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM, BAR);
        assertThat(segments(ruled.alongY())).containsExactly(WALL);
    }

    @Test
    void leavesOutPiecesOfAFrame() {
        Segment lowerPiece = Segment.between(99, 10, 199, 10);
        Segment rightPiece = Segment.between(287, 40, 287, 90);
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(List.of(BEAM_TOP, BEAM_BOTTOM, lowerPiece), List.of(WALL, rightPiece)));

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM);
        assertThat(segments(ruled.alongY())).containsExactly(WALL);
    }

    /** Lines of a section that lie over one another and end alike, but not at the frame. */
    @Test
    void keepsTheDrawingsOwnParallels() {
        List<Segment> parts = List.of(
                Segment.between(90, 40, 240, 40.6), Segment.between(90, 46, 240, 46.6), Segment.between(90, 52, 240, 52.6));
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(parts, List.of(WALL)));

        assertThat(segments(ruled.alongX())).isEqualTo(parts);
    }

    @Test
    void takesWhatThereIsWhereTheDrawingHasHardlyALine() {
        AxisLines drawn = lines(ROWS, List.of(WALL));

        assertThat(FRAMES.ruledByTheDrawing(drawn)).isEqualTo(drawn);
    }

    private static AxisLines lines(List<Segment> alongX, List<Segment> alongY) {
        return new AxisLines(0, fitted(alongX), fitted(alongY));
    }

    private static List<Fitted> fitted(List<Segment> segments) {
        return segments.stream().map(segment -> new Fitted(segment, 0.5, 1, 0.03)).toList();
    }

    private static List<Segment> segments(List<Fitted> lines) {
        return lines.stream().map(Fitted::segment).toList();
    }
}
