package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.sheet.LevelPage;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.Edge;

/**
 * How well the lines of a sheet are drawn, wherever they lie: the breadth of each kind of line, how dark construction lines were
 * left against the outlines, and the ends that overshoot or gape at their corners. What each is compared with stands where it is
 * marked.
 */
final class LineQuality {

    /** An end that runs on further than this overshoots; common practice, no source. */
    static final double OVERSHOT_MM = 1;
    /** An end that stops further short than this gapes; common practice, no source. */
    static final double GAPING_MM = 1;

    /** What runs on further than this is another line, a leader's or one that was read wrongly, and tells nothing. */
    private static final double ANOTHER_LINE_MM = 3.8;

    private static final int FEWEST_CORNERS = 4;
    private static final int FEWEST_OUTLINES = 4;
    private static final int FEWEST_CONSTRUCTION = 2;
    private static final int FEWEST_HATCHES = 4;

    private static final double STEP_MM = 0.1;
    /** So near to a line that crosses, the ink of what ends there cannot be told from its own. */
    private static final double UNDER_CROSSING_MM = 0.45;

    private static final double FARTHEST_MM = 5;
    private static final int LONGEST_BREAK_STEPS = 3;

    private static final double SHORTEST_OUTLINE_MM = 8;
    private static final double PIECE_MM = 3;
    /** What the blur of a scanner leaves open of a breadth, and what that of a telephone's lens does; one standard deviation. */
    private static final double SCAN_SIGMA_MM = 0.05;

    private static final double PHOTOGRAPH_SIGMA_MM = 0.12;

    /** Ink from this share of an outline's up to {@link DrawingView#OUTLINE_PART} is a construction line's. */
    private static final double FAINTEST = 0.08;

    private static final double CLEAR_OF_END_MM = 1.5;
    private static final double CONSTRUCTION_PIECE_MM = 6;
    private static final double INKED_SHARE = 0.7;

    private final DrawingView view;
    private final Map<String, Edge> edges;
    private final LevelPage page;

    /** The lines found, by part and edge. */
    LineQuality(DrawingView view, Map<String, Edge> edges, LevelPage page) {
        this.view = view;
        this.edges = edges;
        this.page = page;
    }

    /** One measurement for each key. */
    List<Measurement> measured(ExpectedDrawing drawing) {
        List<Edge> construction = construction();
        return List.of(
                outlineBreadth(),
                hatchingBreadth(),
                dimensionBreadth(),
                constructionBreadth(construction),
                constructionDarkness(construction),
                poorCorners(drawing));
    }

    private Measurement outlineBreadth() {
        List<Edge> outlines = edges.values().stream()
                .filter(edge -> edge.length() >= SHORTEST_OUTLINE_MM)
                .toList();
        return outlines.size() < FEWEST_OUTLINES
                ? uncertain(LineMeasure.OUTLINE_BREADTH, "too few outlines were found")
                : breadth(LineMeasure.OUTLINE_BREADTH, outlines, outlines.stream().flatMapToDouble(this::breadths));
    }

    private Measurement hatchingBreadth() {
        Optional<List<Edge>> hatches = new HatchLines(view).between(edges);
        if (hatches.isEmpty()) {
            return uncertain(LineMeasure.HATCHING_BREADTH, "the wall's faces, between which the hatching would be, were not found");
        }
        return hatches.get().size() < FEWEST_HATCHES
                ? uncertain(LineMeasure.HATCHING_BREADTH, "too few hatch lines could be seen")
                : breadth(LineMeasure.HATCHING_BREADTH, hatches.get(), ofEach(hatches.get()));
    }

    private Measurement dimensionBreadth() {
        List<Edge> lines = new DimensionLines(view, page.bar()).beside(edges.values());
        return lines.isEmpty()
                ? uncertain(LineMeasure.DIMENSION_BREADTH, "no line is clearly a dimension line")
                : breadth(LineMeasure.DIMENSION_BREADTH, lines, lines.stream().flatMapToDouble(this::breadths));
    }

    private Measurement constructionBreadth(List<Edge> construction) {
        return construction.size() < FEWEST_CONSTRUCTION
                ? Measurement.of(LineMeasure.CONSTRUCTION_BREADTH.key(), new Finding.Absent())
                : breadth(LineMeasure.CONSTRUCTION_BREADTH, construction, ofEach(construction));
    }

    private DoubleStream ofEach(List<Edge> pieces) {
        return pieces.stream().mapToDouble(view.fit()::breadth);
    }

    /** The median of all breadths. */
    private Measurement breadth(LineMeasure measure, List<Edge> lines, DoubleStream breadths) {
        double[] sorted = breadths.sorted().toArray();
        double sigma = page.photograph() ? PHOTOGRAPH_SIGMA_MM : SCAN_SIGMA_MM;
        Finding found = new Finding.Quantity(sorted[sorted.length / 2], sigma);
        return new Measurement(measure.key(), found, lines.stream().map(this::onPage).toList());
    }

    private static Measurement uncertain(LineMeasure measure, String reason) {
        return Measurement.uncertain(measure.key(), reason);
    }

    private DoubleStream breadths(Edge edge) {
        int pieces = (int) ((edge.length() - 2) / PIECE_MM);
        return IntStream.range(0, pieces)
                .mapToObj(piece -> edge.within(edge.from() + 1 + piece * PIECE_MM, edge.from() + 1 + (piece + 1) * PIECE_MM))
                .mapToDouble(view.fit()::breadth);
    }

    private Segment onPage(Edge edge) {
        return view.onPage(edge.segment());
    }

    /** Pieces of construction lines, which are seen where they run on behind an outline's end. */
    private List<Edge> construction() {
        List<Edge> pieces = new ArrayList<>();
        for (Edge edge : edges.values()) {
            for (boolean atEnd : new boolean[] {false, true}) {
                double start = atEnd ? edge.to() + CLEAR_OF_END_MM : edge.from() - CLEAR_OF_END_MM - CONSTRUCTION_PIECE_MM;
                Edge behind = edge.within(start, start + CONSTRUCTION_PIECE_MM);
                if (constructionInk(behind).isPresent()) {
                    pieces.add(behind);
                }
            }
        }
        return pieces;
    }

    private Measurement constructionDarkness(List<Edge> construction) {
        if (construction.size() < FEWEST_CONSTRUCTION) {
            return Measurement.of(LineMeasure.CONSTRUCTION_DARKNESS.key(), new Finding.Absent());
        }
        double[] sorted = construction.stream()
                .mapToDouble(piece -> constructionInk(piece).orElseThrow())
                .sorted()
                .toArray();
        double median = sorted[sorted.length / 2];
        double spread = sorted[(int) (0.84 * (sorted.length - 1))] - sorted[(int) (0.16 * (sorted.length - 1))];
        double sigma = Math.max(0.03, spread / 2 / Math.sqrt(sorted.length));
        return new Measurement(
                LineMeasure.CONSTRUCTION_DARKNESS.key(),
                new Finding.Quantity(100 * median, 100 * sigma),
                construction.stream().map(this::onPage).toList());
    }

    /** The ink along a piece as a share of an outline's; none where there is no construction line, or an outline. */
    private OptionalDouble constructionInk(Edge piece) {
        int steps = (int) Math.round(piece.length() / STEP_MM);
        double[] own = new double[steps];
        for (int step = 0; step < steps; step++) {
            own[step] = ownInk(piece.line().pointAt(piece.from() + (step + 0.5) * STEP_MM), piece.line().direction())
                    / view.outlineInk();
        }
        long inked = DoubleStream.of(own).filter(share -> share > FAINTEST).count();
        double[] sorted = DoubleStream.of(own).sorted().toArray();
        double median = sorted[steps / 2];
        return inked >= INKED_SHARE * steps && median < DrawingView.OUTLINE_PART ? OptionalDouble.of(median) : OptionalDouble.empty();
    }

    private Measurement poorCorners(ExpectedDrawing drawing) {
        int seen = 0;
        List<Segment> poor = new ArrayList<>();
        for (Corners.Corner corner : Corners.of(drawing)) {
            if (edges.containsKey(corner.line()) && edges.containsKey(corner.at())) {
                Edge line = edges.get(corner.line());
                Point meeting = Level.crossing(line, edges.get(corner.at()));
                double runsOn = runsOn(line, meeting);
                seen += runsOn > ANOTHER_LINE_MM ? 0 : 1;
                if (runsOn > OVERSHOT_MM && runsOn <= ANOTHER_LINE_MM || runsOn < -GAPING_MM) {
                    Vector outwards = meeting.minus(line.middle()).unit();
                    poor.add(view.onPage(new Segment(meeting, meeting.plus(outwards.times(runsOn)))));
                }
            }
        }
        if (seen < FEWEST_CORNERS) {
            return uncertain(LineMeasure.POOR_CORNERS, "too few corners could be seen");
        }
        return new Measurement(LineMeasure.POOR_CORNERS.key(), new Finding.Count(poor.size()), poor);
    }

    /** How far a line runs on behind the place where it should end; less than nothing where it stops short. */
    double runsOn(Edge line, Point meeting) {
        Vector outwards = meeting.minus(line.middle()).unit();
        double behind = lastInk(meeting, outwards);
        if (behind > UNDER_CROSSING_MM) {
            return behind - view.fit().breadth(line) / 2;
        }
        double before = firstInk(meeting, outwards.times(-1));
        return before > UNDER_CROSSING_MM + 2 * STEP_MM ? -before : 0;
    }

    private double lastInk(Point from, Vector outwards) {
        double last = 0;
        int blank = 0;
        for (double away = UNDER_CROSSING_MM; away < FARTHEST_MM && blank <= LONGEST_BREAK_STEPS; away += STEP_MM) {
            boolean inked = isOutline(from.plus(outwards.times(away)), outwards);
            blank = inked ? 0 : blank + 1;
            last = inked ? away : last;
        }
        return last;
    }

    private double firstInk(Point from, Vector inwards) {
        double away = UNDER_CROSSING_MM;
        while (away < FARTHEST_MM && !isInked(from.plus(inwards.times(away)), inwards)) {
            away += STEP_MM;
        }
        return away;
    }

    /** Whether there is any outline's ink: where diagonals run into a corner a line's own cannot be told from theirs. */
    private boolean isInked(Point place, Vector along) {
        return here(place, along.leftNormal()) >= DrawingView.OUTLINE_PART * view.outlineInk();
    }

    private boolean isOutline(Point place, Vector along) {
        return ownInk(place, along) >= DrawingView.OUTLINE_PART * view.outlineInk();
    }

    /** The ink at a place beyond that on both sides of it, so that a line which crosses there does not count. */
    private double ownInk(Point place, Vector along) {
        Vector across = along.leftNormal();
        double left = beside(place, along, across);
        double right = beside(place, along, across.times(-1));
        return Math.max(0, here(place, across) - Math.min(left, right));
    }

    private double here(Point place, Vector across) {
        return Math.max(inkAt(place, across, 0), Math.max(inkAt(place, across, 0.1), inkAt(place, across, -0.1)));
    }

    private double beside(Point place, Vector along, Vector across) {
        Point away = place.plus(across.times(0.5));
        return Math.max(inkAt(away, along, 0), Math.max(inkAt(away, along, 0.25), inkAt(away, along, -0.25)));
    }

    private double inkAt(Point place, Vector direction, double distance) {
        return view.ink().at(place.x() + distance * direction.x(), place.y() + distance * direction.y());
    }
}
