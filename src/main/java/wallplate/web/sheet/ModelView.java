package wallplate.web.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import wallplate.geometry.Segment;
import wallplate.measure.MeasuredSheet;
import wallplate.records.PageFacts;
import wallplate.report.Box;
import wallplate.report.ModelOnSheet;
import wallplate.solver.DrawnLine;

/**
 * A place of a level page with the model answer laid onto it, aligned at the heel point. Places are millimetres from the
 * page's upper left corner, y down, as SVG has it.
 *
 * @param x the left edge of what is shown
 * @param y its upper edge
 * @param pageWidth the whole page's, so that its picture can be laid under
 * @param strokes the learner's strokes that are spoken of
 * @param model the lines of the model answer; none where the heel point was not found
 */
public record ModelView(
        double x,
        double y,
        double width,
        double height,
        double pageWidth,
        double pageHeight,
        List<Line> strokes,
        List<Line> model) {

    private static final double AROUND_DRAWING_MM = 8;

    public ModelView {
        strokes = List.copyOf(strokes);
        model = List.copyOf(model);
    }

    /**
     * A straight piece.
     *
     * @param kind how it is drawn: {@code cut}, {@code seen} or {@code thin}, with {@code spoken} for the part spoken of
     */
    public record Line(double x1, double y1, double x2, double y2, String kind) {}

    /** The whole drawing with the model answer; empty where the heel point was not found. */
    public static Optional<ModelView> ofDrawing(PageFacts page, MeasuredSheet measured, Optional<ModelOnSheet> model) {
        return model.map(answer -> {
            List<Segment> all = new ArrayList<>();
            measured.parts().values().forEach(all::addAll);
            answer.lines().forEach(line -> all.add(answer.onSheet(line)));
            return of(page, Box.around(all).grown(AROUND_DRAWING_MM), List.of(), model, "");
        });
    }

    /**
     * One place.
     *
     * @param part the part of the model answer that is spoken of
     */
    public static ModelView of(
            PageFacts page, Box region, List<Segment> strokes, Optional<ModelOnSheet> model, String part) {
        Box shown = region.within(new Box(0, 0, page.widthMm(), page.heightMm()));
        List<Line> lines = model.stream()
                .flatMap(answer -> answer.lines().stream().map(line -> line(page, answer.onSheet(line), kind(line, part))))
                .toList();
        return new ModelView(
                hundredth(shown.left()),
                hundredth(page.heightMm() - shown.top()),
                hundredth(shown.width()),
                hundredth(shown.height()),
                page.widthMm(),
                page.heightMm(),
                strokes.stream().map(stroke -> line(page, stroke, "")).toList(),
                lines);
    }

    private static Line line(PageFacts page, Segment segment, String kind) {
        return new Line(
                hundredth(segment.start().x()),
                hundredth(page.heightMm() - segment.start().y()),
                hundredth(segment.end().x()),
                hundredth(page.heightMm() - segment.end().y()),
                kind);
    }

    private static String kind(DrawnLine line, String part) {
        String weight =
                switch (line.role()) {
                    case CUT_OUTLINE -> "cut";
                    case SEEN_OUTLINE -> "seen";
                    case DIAGONAL, HATCH, BREAK -> "thin";
                };
        return Stream.of(weight, ModelOnSheet.isOf(part, line) ? "spoken" : "")
                .filter(word -> !word.isEmpty())
                .reduce((one, other) -> one + " " + other)
                .orElse("");
    }

    private static double hundredth(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
