package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.ExpectedDrawing;
import wallplate.stroke.Edge;

/**
 * How well the lines of a sheet are drawn, wherever they lie: the breadth of the outlines, how dark construction lines were left
 * against them, and the ends that overshoot or gape at their corners.
 *
 * <p>The breadths to compare with are those of ISO 128-2: 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0 mm and so on (the series is given
 * from memory).
 */
final class LineQuality {

    /** The median breadth of the outlines, in millimetres. */
    static final String OUTLINE_BREADTH = "line-quality.outline-breadth";
    /** How dark the construction lines are, in percent of the outlines' darkness; the median. */
    static final String CONSTRUCTION_DARKNESS = "line-quality.construction-darkness";
    /** How many ends overshoot or gape. */
    static final String POOR_CORNERS = "line-quality.poor-corners";

    /** An end that runs on further than this overshoots; common practice, no source. */
    static final double OVERSHOT_MM = 1;
    /** An end that stops further short than this gapes; common practice, no source. */
    static final double GAPING_MM = 1;

    /** What runs on further than this is another line, a leader's or one that was read wrongly, and tells nothing. */
    private static final double ANOTHER_LINE_MM = 3.8;

    private static final int FEWEST_CORNERS = 4;
    private static final int FEWEST_OUTLINES = 4;
    private static final int FEWEST_CONSTRUCTION = 2;

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

    /** Ink between these shares of an outline's is a construction line's. */
    private static final double FAINTEST = 0.08;

    private static final double CLEAR_OF_END_MM = 1.5;
    private static final double CONSTRUCTION_PIECE_MM = 6;
    private static final double INKED_SHARE = 0.7;

    private final DrawingView view;
    private final Map<String, Edge> edges;
    private final boolean isPhotograph;

    /** The lines found, by part and edge. */
    LineQuality(DrawingView view, Map<String, Edge> edges, boolean isPhotograph) {
        this.view = view;
        this.edges = edges;
        this.isPhotograph = isPhotograph;
    }

    /** One measurement for each key. */
    List<Measurement> measured(ExpectedDrawing drawing) {
        return List.of(outlineBreadth(), constructionDarkness(), poorCorners(drawing));
    }

    private Measurement outlineBreadth() {
        List<Edge> outlines = edges.values().stream()
                .filter(edge -> edge.length() >= SHORTEST_OUTLINE_MM)
                .toList();
        double[] breadths = outlines.stream().flatMapToDouble(this::breadths).sorted().toArray();
        if (outlines.size() < FEWEST_OUTLINES) {
            return Measurement.uncertain(OUTLINE_BREADTH, "too few outlines were found");
        }
        double sigma = isPhotograph ? PHOTOGRAPH_SIGMA_MM : SCAN_SIGMA_MM;
        Finding found = new Finding.Quantity(breadths[breadths.length / 2], sigma);
        return new Measurement(OUTLINE_BREADTH, found, outlines.stream().map(this::onPage).toList());
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

    /** Construction lines are seen where they run on behind an outline's end. */
    private Measurement constructionDarkness() {
        List<Segment> seen = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        for (Edge edge : edges.values()) {
            for (boolean atEnd : new boolean[] {false, true}) {
                double start = atEnd ? edge.to() + CLEAR_OF_END_MM : edge.from() - CLEAR_OF_END_MM - CONSTRUCTION_PIECE_MM;
                Edge behind = edge.within(start, start + CONSTRUCTION_PIECE_MM);
                constructionInk(behind).ifPresent(share -> {
                    shares.add(share);
                    seen.add(onPage(behind));
                });
            }
        }
        if (shares.size() < FEWEST_CONSTRUCTION) {
            return Measurement.of(CONSTRUCTION_DARKNESS, new Finding.Absent());
        }
        double[] sorted = shares.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double median = sorted[sorted.length / 2];
        double spread = sorted[(int) (0.84 * (sorted.length - 1))] - sorted[(int) (0.16 * (sorted.length - 1))];
        double sigma = Math.max(0.03, spread / 2 / Math.sqrt(sorted.length));
        return new Measurement(CONSTRUCTION_DARKNESS, new Finding.Quantity(100 * median, 100 * sigma), seen);
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
            return Measurement.uncertain(POOR_CORNERS, "too few corners could be seen");
        }
        return new Measurement(POOR_CORNERS, new Finding.Count(poor.size()), poor);
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
