package wallplate.report.pdf;

import java.util.List;
import java.util.Optional;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.EavesSide;

/**
 * The model answer laid onto a learner's page: aligned at the heel point, its eaves on the side where the learner drew
 * them, so that like places coincide.
 */
final class ModelOnSheet {

    private final ExpectedDrawing expected;
    private final Point heel;
    private final boolean eavesRight;

    private ModelOnSheet(ExpectedDrawing expected, Point heel, boolean eavesRight) {
        this.expected = expected;
        this.heel = heel;
        this.eavesRight = eavesRight;
    }

    /** Empty where the heel point was not found on the page. */
    static Optional<ModelOnSheet> of(AssessedSheet.Read sheet) {
        MeasuredSheet measured = sheet.measured();
        return measured.heel().map(heel -> new ModelOnSheet(sheet.expected(), heel, isDrawnRight(sheet)));
    }

    private static boolean isDrawnRight(AssessedSheet.Read sheet) {
        return sheet.measured()
                .measurement("drawing.eaves")
                .map(measurement -> measurement.finding())
                .filter(Finding.Word.class::isInstance)
                .map(finding -> ((Finding.Word) finding).word().equals(EavesSide.RIGHT.word()))
                .orElse(sheet.expected().task().eaves() == EavesSide.RIGHT);
    }

    Point heel() {
        return heel;
    }

    List<DrawnLine> lines() {
        return expected.lines();
    }

    /** Where a line of the model answer lies on the page. */
    Segment onSheet(DrawnLine line) {
        Segment segment = eavesRight ? line.segment().mirrored() : line.segment();
        return new Segment(onPage(segment.start()), onPage(segment.end()));
    }

    private Point onPage(Point place) {
        return new Point(place.x() + heel.x(), place.y() + heel.y());
    }

    /** One line, of those that are repeated the first, on the page. */
    Optional<Segment> first(String partAndEdge) {
        return expected.lines().stream()
                .filter(line -> partAndEdge.equals(line.part() + "." + line.edge()) && line.index() == 0)
                .map(this::onSheet)
                .findFirst();
    }

    /** The lines of a part, of those that are repeated only the first two, on the page. */
    List<Segment> firstOf(String part) {
        return expected.lines().stream()
                .filter(line -> line.part().equals(part) && line.index() <= 1)
                .map(this::onSheet)
                .toList();
    }
}
