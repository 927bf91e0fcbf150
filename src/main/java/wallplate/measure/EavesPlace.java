package wallplate.measure;

import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * What the readers of the eaves share: the drawing, what is expected of it, and the lines that were found before.
 *
 * @param rafterTop the rafter's upper edge, {@code rafterBottom} its lower one
 */
record EavesPlace(
        DrawingView view,
        Expectation expectation,
        RoofLines roof,
        WallReader.Wall wall,
        CrossLines crossLines,
        Edge rafterTop,
        Edge rafterBottom,
        ChoiceLog log) {

    /** How far beside a place a leaning line may pass it. */
    private static final double MOST_OFF_MM = 0.3;

    private static final double OFF_STEP_MM = 0.15;
    private static final double LEAST_LEANING_MM = 1;

    /** An upright is fitted clear of the lines that it ends at. */
    private static final double CLEAR_OF_ENDS_MM = 0.3;

    private static final double WIDEST_WINDOW_MM = 0.25;
    private static final double WINDOW_OF_CLOSEST = 0.2;
    private static final double DIRECTION_DOUBT_DEGREES = 0.12;

    /** The height of the uppermost known sloping line at a place. */
    double coveringY(double x) {
        return roof.coveringTop().or(roof::coveringBottom).map(edge -> edge.yAt(x)).orElse(rafterTop.yAt(x));
    }

    /** The height half-way up the rafter at a place. */
    double middleY(double x) {
        return (rafterBottom.yAt(x) + rafterTop.yAt(x)) / 2;
    }

    /** The share of ink where a line sloping like the roof through (x, y) would run. */
    double slopingInk(double fromX, double toX, double x, double y) {
        Line line = new Line(new Point(x, y), view.slope());
        double cosine = view.slope().x();
        return view.fit().coverage(line, (fromX - x) / cosine, (toX - x) / cosine, DrawingView.OUTLINE_PART);
    }

    /**
     * An upright fitted between two heights.
     *
     * @param closestMm how near another upright stands, whose ink may not draw the fit
     */
    Edge upright(Crossing column, double lowY, double highY, double closestMm) {
        double window = Math.min(WIDEST_WINDOW_MM, WINDOW_OF_CLOSEST * closestMm);
        return view.fit().fit(
                Level.uprightAt(column.position()), lowY + CLEAR_OF_ENDS_MM, highY - CLEAR_OF_ENDS_MM, DIRECTION_DOUBT_DEGREES, window);
    }

    /** Whether an edge that may be there stands at a place, at a height. */
    static boolean standsAt(Optional<Edge> upright, double x, double y, double withinMm) {
        return upright.map(edge -> Math.abs(edge.xAt(y) - x) < withinMm).orElse(false);
    }

    /**
     * Whether what is inked between two heights surely stands plumb rather than square to the slope, as a purlin's side
     * does. Where one of both leans by no more than its breadth, that cannot be told.
     */
    boolean isPlumb(double x, double lowY, double highY) {
        if ((highY - lowY) * Math.tan(Math.toRadians(view.slopeDegrees())) < LEAST_LEANING_MM) {
            return false;
        }
        Line square = new Line(new Point(x, (lowY + highY) / 2), view.squareToSlope());
        double half = (highY - lowY) / 2 / view.squareToSlope().y();
        double leaning = 0;
        for (double off = -MOST_OFF_MM; off <= MOST_OFF_MM + 1e-9; off += OFF_STEP_MM) {
            leaning = Math.max(leaning, view.fit().coverage(square.offset(off), -half, half, DrawingView.OUTLINE_PART));
        }
        return view.uprightInk(x, lowY, highY) >= leaning;
    }
}
