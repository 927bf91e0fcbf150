package wallplate.measure;

import java.util.List;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;
import wallplate.stroke.StrokeAmongOthers;

/**
 * Places the sides of the boxes in a row, into whose corners diagonals run, and the first of which stands where the plumb
 * cut and the fascia's face cross the row.
 *
 * @param others lines that cross the row and belong to other parts
 * @param breadthMm the usual breadth of the sides
 */
record BoxSides(DrawingView view, Edge lower, Vector across, double height, List<Line> others, double breadthMm) {

    /** Diagonals run into the sides over so much of the height at either end, where the middle is asked for the breadth. */
    private static final double MIDDLE_FROM = 0.3;
    /** In small boxes diagonals broaden the middle of some sides, too: below the middle one of all breadths. */
    private static final double BREADTH_QUANTILE = 0.4;

    /** So far beyond the box the row's own lines are known to run. */
    private static final double ROW_RUNS_ON_MM = 5;
    /** Near the corners the diagonals run into the sides. */
    private static final double MOST_TRIM_MM = 1.2;

    private static final double TRIM_SHARE = 0.25;
    private static final double DIRECTION_DOUBT_DEGREES = 0.15;
    private static final double WINDOW_MM = 0.2;

    /**
     * The sides of a row's boxes.
     *
     * @param lower the row's lower line
     * @param height of the row, square to it
     * @param sides where the sides of the row's boxes were met
     */
    static BoxSides of(
            DrawingView view, Edge lower, Vector across, double height, List<Line> others, List<Crossing> sides) {
        double[] breadths = sides.stream()
                .mapToDouble(side -> {
                    Line line = new Line(lower.line().pointAt(side.position()), across);
                    return UsualBreadth.ofPiece(view, line, MIDDLE_FROM * height, (1 - MIDDLE_FROM) * height);
                })
                .sorted()
                .toArray();
        double ofSides = breadths.length == 0 ? UsualBreadth.UNKNOWN_MM : breadths[(int) (breadths.length * BREADTH_QUANTILE)];
        return new BoxSides(view, lower, across, height, others, Math.min(ofSides, UsualBreadth.of(view, lower)));
    }

    /** The box between two sides. */
    BoxRow.Box box(Crossing first, Crossing second) {
        List<Segment> touching = touching(first.position(), second.position());
        Edge low = side(first.position(), touching);
        Edge high = side(second.position(), touching);
        return new BoxRow.Box(low, high, positionOf(low), positionOf(high));
    }

    /** A side from the row's lower to its upper line. */
    private Edge side(double position, List<Segment> touching) {
        Line line = new Line(lower.line().pointAt(position), across);
        double trim = Math.min(MOST_TRIM_MM, TRIM_SHARE * height);
        Edge fitted = view.fit()
                .fit(line, trim, height - trim, DIRECTION_DOUBT_DEGREES, WINDOW_MM, others)
                .within(-height / 2, height / 2);
        Edge asMet = new Edge(
                new Line(line.pointAt(height / 2), across),
                -height / 2,
                height / 2,
                fitted.offsetSigmaMm(),
                fitted.residualMm(),
                fitted.ink(),
                fitted.coverage());
        return new StrokeAmongOthers(view.ink(), view.outlineInk(), breadthMm).place(asMet, touching).orElse(fitted);
    }

    /** The row's own lines, the box's diagonals and the lines of other parts. */
    private List<Segment> touching(double low, double high) {
        Vector along = lower.line().direction();
        Point lowFoot = lower.line().pointAt(low);
        Point highFoot = lower.line().pointAt(high);
        Point lowTop = lowFoot.plus(across.times(height));
        Point highTop = highFoot.plus(across.times(height));
        Vector beyond = along.times(ROW_RUNS_ON_MM);
        return Stream.concat(
                        Stream.of(
                                new Segment(lowFoot.plus(beyond.times(-1)), highFoot.plus(beyond)),
                                new Segment(lowTop.plus(beyond.times(-1)), highTop.plus(beyond)),
                                new Segment(lowFoot, highTop),
                                new Segment(highFoot, lowTop)),
                        others.stream().map(other -> near(other, lowFoot)))
                .toList();
    }

    private Segment near(Line other, Point place) {
        double position = other.positionOf(place);
        double reach = height + 2 * ROW_RUNS_ON_MM;
        return other.between(position - reach, position + reach);
    }

    /** Where along the row a side lies half-way up. */
    private double positionOf(Edge side) {
        double origin = lower.line().distanceTo(side.line().origin());
        double rise = lower.line().direction().cross(side.line().direction());
        return lower.line().positionOf(side.line().pointAt((height / 2 - origin) / rise));
    }
}
