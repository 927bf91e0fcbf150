package wallplate.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.Edge;

/** The measuring of one sheet, from its view to its keys. */
final class SheetMeasuring {

    /** A drawing so many times larger or smaller than asked for is noticed from its thicknesses, or would not fit the sheet. */
    private static final double FURTHEST_SCALE = 2.1;

    private final DrawingView view;
    private final LevelPage page;
    private final Arrangement drawing;
    private final Findings findings;
    private final ChoiceLog log;
    private final Map<String, Edge> posts;

    private SheetMeasuring(DrawingView view, LevelPage page, Arrangement drawing, ChoiceLog log) {
        this.view = view;
        this.page = page;
        this.drawing = drawing;
        this.findings = new Findings(view, page.calibration());
        this.log = log;
        this.posts = measure();
    }

    /** Reads and measures a sheet; once more where all its sizes together say that it was drawn at another scale. */
    static MeasuredSheet measured(DrawingView view, LevelPage page, ExpectedDrawing expected, ChoiceLog log) {
        Expectation asked = new Expectation(expected);
        SheetMeasuring measuring = new SheetMeasuring(view, page, Arrangement.read(view, asked, log), log);
        OptionalDouble factor = measuring.scale().another();
        if (factor.isPresent()) {
            measuring = atScale(view, page, asked.atScale(factor.getAsDouble()), log);
        } else if (measuring.coherence().isInDoubt()) {
            measuring = atLikeliestScale(measuring, asked);
        }
        return measuring.lookedAtAgain(expected);
    }

    private static SheetMeasuring atScale(
            DrawingView view, LevelPage page, Expectation expectation, ChoiceLog log) {
        return new SheetMeasuring(view, page, Arrangement.readAtScale(view, expectation, log), log);
    }

    /** A drawing that was not understood at the scale asked for, or not in all its parts, may be understood at another. */
    private static SheetMeasuring atLikeliestScale(SheetMeasuring atAsked, Expectation asked) {
        SheetMeasuring likeliest = atAsked;
        for (double factor : asked.otherScaleFactors()) {
            if (factor < 1 / FURTHEST_SCALE || factor > FURTHEST_SCALE) {
                continue;
            }
            SheetMeasuring other = atScale(atAsked.view, atAsked.page, asked.atScale(factor), ChoiceLog.NONE);
            boolean isPlausible = other.coherence().isWellUnderstood()
                    && other.scale().isClearlyBetter(atAsked.scale());
            if (isPlausible && other.scale().misfit() < likeliest.scale().misfit()) {
                likeliest = other;
            }
        }
        return likeliest;
    }

    private Coherence coherence() {
        return new Coherence(drawing.expectation(), findings);
    }

    private DrawnScale scale() {
        return new DrawnScale(drawing.expectation(), findings);
    }

    /** Puts down what is found key by key, and returns the posts' lines by their names. */
    private Map<String, Edge> measure() {
        Calibration calibration = page.calibration();
        findings.word("drawing.eaves", view.mirrored() ? "right" : "left");
        SlopeKeys slope = new SlopeKeys(drawing, calibration, findings);
        WallKeys wall = new WallKeys(drawing, findings);
        RowKeys rows = new RowKeys(drawing, findings, log);
        BeamKeys beam = new BeamKeys(drawing, findings, rows);
        EavesKeys eaves = new EavesKeys(drawing, findings);
        slope.pitch();
        wall.wallAndPlate();
        slope.rafter();
        slope.covering();
        List<BoxRow.Box> supports = rows.supports();
        beam.tieBeam();
        beam.ceiling();
        Map<String, Edge> found = beam.posts();
        eaves.fascia();
        eaves.gutter();
        eaves.bargeBoard();
        eaves.doubts();
        wall.beamFilling(supports);
        new HighWallKeys(drawing, calibration, findings).highWall();
        return found;
    }

    private MeasuredSheet lookedAtAgain(ExpectedDrawing expected) {
        new SecondLook(drawing.expectation(), findings).look(page);

        Map<String, Edge> edges = drawing.edges();
        List<Measurement> measurements = new ArrayList<>(findings.of(expected));
        measurements.addAll(new LineQuality(view, edges, page).measured(expected));
        return new MeasuredSheet(measurements, parts(edges), heelOnPage());
    }

    private Map<String, List<Segment>> parts(Map<String, Edge> edges) {
        Map<String, List<Segment>> parts = new LinkedHashMap<>();
        edges.forEach((part, edge) -> parts.put(part, List.of(view.onPage(edge.segment()))));
        posts.forEach((part, edge) -> parts.put(part, List.of(view.onPage(edge.segment()))));
        return parts;
    }

    private Optional<Point> heelOnPage() {
        return drawing.heel().map(point -> view.onPage(new Segment(point, point)).start());
    }
}
