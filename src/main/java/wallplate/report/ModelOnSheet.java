package wallplate.report;

import java.util.List;
import java.util.Optional;
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
public final class ModelOnSheet {

    private final ExpectedDrawing expected;
    private final Point heel;
    private final boolean eavesRight;

    private ModelOnSheet(ExpectedDrawing expected, Point heel, boolean eavesRight) {
        this.expected = expected;
        this.heel = heel;
        this.eavesRight = eavesRight;
    }

    /** Empty where the heel point was not found on the page. */
    public static Optional<ModelOnSheet> of(ExpectedDrawing expected, MeasuredSheet measured) {
        return measured.heel().map(heel -> new ModelOnSheet(expected, heel, isDrawnRight(expected, measured)));
    }

    private static boolean isDrawnRight(ExpectedDrawing expected, MeasuredSheet measured) {
        return measured.measurement("drawing.eaves")
                .map(measurement -> measurement.finding())
                .filter(Finding.Word.class::isInstance)
                .map(finding -> ((Finding.Word) finding).word().equals(EavesSide.RIGHT.word()))
                .orElse(expected.task().eaves() == EavesSide.RIGHT);
    }

    /** Whether a line of the model answer is one of a part that feedback speaks of; the roof's pitch is its rafters'. */
    public static boolean isOf(String part, DrawnLine line) {
        return line.part().equals(part.equals("roof") ? "rafter" : part);
    }

    public Point heel() {
        return heel;
    }

    public List<DrawnLine> lines() {
        return expected.lines();
    }

    /** Where a line of the model answer lies on the page. */
    public Segment onSheet(DrawnLine line) {
        Segment segment = eavesRight ? line.segment().mirrored() : line.segment();
        return new Segment(onPage(segment.start()), onPage(segment.end()));
    }

    private Point onPage(Point place) {
        return new Point(place.x() + heel.x(), place.y() + heel.y());
    }

    /** One line, of those that are repeated the first, on the page. */
    public Optional<Segment> first(String partAndEdge) {
        return expected.lines().stream()
                .filter(line -> partAndEdge.equals(line.part() + "." + line.edge()) && line.index() == 0)
                .map(this::onSheet)
                .findFirst();
    }

    /** The lines of a part, of those that are repeated only the first two, on the page. */
    public List<Segment> firstOf(String part) {
        return upTo(part, 1);
    }

    /** The lines of a part, of those that are repeated only the first, on the page. */
    public List<Segment> oneOf(String part) {
        return upTo(part, 0);
    }

    private List<Segment> upTo(String part, int last) {
        return expected.lines().stream()
                .filter(line -> line.part().equals(part) && line.index() <= last)
                .map(this::onSheet)
                .toList();
    }
}
