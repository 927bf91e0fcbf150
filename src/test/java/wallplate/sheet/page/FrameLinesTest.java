package wallplate.sheet.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
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
                List.of(WALL, edge)), true);

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM, BAR);
        assertThat(segments(ruled.alongY())).containsExactly(WALL);
    }

    /** Pencil rows found in pieces: one reaches the frame, the others end where their pieces do. */
    @Test
    void leavesOutRowsThatWereFoundInPieces() {
        Segment left = Segment.between(10, 10, 10, 200);
        Segment right = Segment.between(287, 10, 287, 200);
        List<Segment> rows = List.of(
                Segment.between(214, 26, 286, 26),
                Segment.between(215, 34, 268, 34),
                Segment.between(250, 18, 283, 18),
                Segment.between(212, 18, 231, 18),
                Segment.between(216, 41, 283, 41));
        AxisLines ruled = FRAMES.ruledByTheDrawing(
                lines(Stream.concat(Stream.of(BEAM_TOP, BEAM_BOTTOM, BAR), rows.stream()).toList(), List.of(left, right, WALL)),
                true);

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM, BAR);
        assertThat(segments(ruled.alongY())).containsExactly(WALL);
    }

    @Test
    void keepsALongLineOfTheDrawingThatRunsIntoTheFrame() {
        Segment top = Segment.between(10, 200, 287, 200);
        Segment breakLine = Segment.between(240, 85, 240.2, 199.5);
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(List.of(BEAM_TOP, BEAM_BOTTOM, top), List.of(WALL, breakLine)), true);

        assertThat(segments(ruled.alongY())).containsExactlyInAnyOrder(WALL, breakLine);
    }

    /** On a large sheet a frame stands no farther from the edge than on a small one. */
    @Test
    void takesNoBreakLineWellInsideALargeSheetForAFrame() {
        Segment breakLine = Segment.between(48, 60, 48, 240);
        Segment beam = Segment.between(48.5, 150, 250, 150);

        assertThat(segments(new FrameLines(420, 297).without(lines(List.of(beam), List.of(breakLine))).alongX()))
                .containsExactly(beam);
    }

    @Test
    void leavesOutPiecesOfAFrame() {
        Segment lowerPiece = Segment.between(99, 10, 199, 10);
        Segment rightPiece = Segment.between(287, 40, 287, 90);
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(List.of(BEAM_TOP, BEAM_BOTTOM, lowerPiece), List.of(WALL, rightPiece)), true);

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM);
        assertThat(segments(ruled.alongY())).containsExactly(WALL);
    }

    /** Lines of a section that lie over one another and end alike, but not at the frame. */
    @Test
    void keepsTheDrawingsOwnParallels() {
        List<Segment> parts = List.of(
                Segment.between(90, 40, 240, 40.6), Segment.between(90, 46, 240, 46.6), Segment.between(90, 52, 240, 52.6));
        AxisLines ruled = FRAMES.ruledByTheDrawing(lines(parts, List.of(WALL)), true);

        assertThat(segments(ruled.alongX())).isEqualTo(parts);
    }

    /** Leaders and lines under lettering, narrow and ruled along the paper, beside a drawing that lies 0.23 degrees off it. */
    @Test
    void leavesOutNarrowLevelLinesThatWereRuledAlongThePaper() {
        Fitted top = new Fitted(Segment.between(10, 200, 287, 200), 0.6, 1, 0.03);
        Fitted under = new Fitted(Segment.between(120, 150, 160, 150.02), 0.28, 1, 0.03);
        Fitted levelToo = new Fitted(Segment.between(120, 140, 160, 140.16), 0.28, 1, 0.03);
        Fitted construction = new Fitted(Segment.between(200, 90, 200, 130), 0.2, 1, 0.03);
        List<Fitted> outlines = fitted(List.of(BEAM_TOP, BEAM_BOTTOM, BAR));
        AxisLines all = new AxisLines(
                0,
                Stream.concat(outlines.stream(), Stream.of(top, under, levelToo)).toList(),
                List.of(fitted(List.of(WALL)).get(0), construction));

        AxisLines ruled = FRAMES.ruledByTheDrawing(all, true);

        assertThat(segments(ruled.alongX())).containsExactly(BEAM_TOP, BEAM_BOTTOM, BAR, levelToo.segment());
        assertThat(segments(ruled.alongY())).containsExactly(WALL, construction.segment());
    }

    @Test
    void takesWhatThereIsWhereTheDrawingHasHardlyALine() {
        AxisLines drawn = lines(ROWS, List.of(WALL));

        assertThat(FRAMES.ruledByTheDrawing(drawn, true)).isEqualTo(drawn);
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
