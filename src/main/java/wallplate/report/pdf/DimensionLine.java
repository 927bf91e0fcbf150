package wallplate.report.pdf;

import java.io.IOException;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.report.Box;

/**
 * A dimension between two parallel lines, square to them, as it stands on a drawing: a thin line with arrowheads and
 * the size.
 *
 * @param line from the one line to the other, on the report
 */
record DimensionLine(Segment line, String size) {

    private static final int PLACES = 40;
    private static final double PARALLEL_DEGREES = 4;
    private static final double ARROW_MM = 1.7;
    private static final double ARROW_HALF_WIDTH_MM = 0.4;
    /** What both arrows and a little line beside the size take. */
    private static final double ROOM_FOR_ARROWS_MM = 5;

    private static final double OUTSIDE_MM = 3.5;
    private static final Pen PEN = Pen.solid(0.22, Ink.GRAPHITE);
    private static final Type SIZE = Type.SMALL_BOLD.sized(2.7);

    /**
     * The dimension between two lines where both show within a place; empty where they are not parallel or show nowhere
     * opposite each other.
     */
    static Optional<DimensionLine> between(Segment one, Segment other, Box place, String size) {
        if (one.length() == 0 || other.length() == 0 || turnBetween(one, other) > PARALLEL_DEGREES) {
            return Optional.empty();
        }
        Box inside = place.grown(-1);
        int first = -1;
        int last = -1;
        for (int step = 0; step <= PLACES; step++) {
            Point from = one.at((double) step / PLACES);
            Point to = foot(from, other);
            if (inside.contains(from) && inside.contains(to) && other.distanceTo(to) < 0.5) {
                first = first < 0 ? step : first;
                last = step;
            }
        }
        if (first < 0) {
            return Optional.empty();
        }
        Point from = one.at((first + last) / 2.0 / PLACES);
        return Optional.of(new DimensionLine(new Segment(from, foot(from, other)), size));
    }

    private static double turnBetween(Segment one, Segment other) {
        double turn = Math.abs(one.inclinationDegrees() - other.inclinationDegrees()) % 180;
        return Math.min(turn, 180 - turn);
    }

    private static Point foot(Point from, Segment line) {
        Vector along = line.vector();
        double share = from.minus(line.start()).dot(along) / along.dot(along);
        return line.at(share);
    }

    void draw(Canvas canvas, Box place) throws IOException {
        Vector across = line.length() == 0 ? new Vector(1, 0) : line.vector().times(1 / line.length());
        boolean roomy = line.length() >= roomNeeded(canvas, across);
        Point start = roomy ? line.start() : line.start().plus(across.times(-OUTSIDE_MM));
        Point end = roomy ? line.end() : line.end().plus(across.times(OUTSIDE_MM));
        canvas.clip(place);
        canvas.line(new Segment(start, end), PEN);
        arrow(canvas, line.start(), across.times(roomy ? 1 : -1));
        arrow(canvas, line.end(), across.times(roomy ? -1 : 1));
        canvas.unclip();
        double beyond = 1 + extent(canvas, across) / 2;
        size(canvas, roomy ? line.midpoint() : end.plus(across.times(beyond)), place);
    }

    /**
     * Shorter dimensions have their arrows outside, pointing inwards, and the size beyond them, as drawings have it.
     */
    private double roomNeeded(Canvas canvas, Vector across) throws IOException {
        return ROOM_FOR_ARROWS_MM + extent(canvas, across);
    }

    /** How far the written size reaches along the dimension. */
    private double extent(Canvas canvas, Vector across) throws IOException {
        return Math.min(
                (canvas.width(size, SIZE) + 1.2) / Math.max(1e-6, Math.abs(across.x())),
                (SIZE.sizeMm() + 0.8) / Math.max(1e-6, Math.abs(across.y())));
    }

    /** An arrowhead with its point at a place; the head lies in the given direction. */
    private static void arrow(Canvas canvas, Point point, Vector into) throws IOException {
        Vector square = new Vector(-into.y(), into.x());
        Point back = point.plus(into.times(ARROW_MM));
        canvas.triangle(
                point,
                back.plus(square.times(ARROW_HALF_WIDTH_MM)),
                back.plus(square.times(-ARROW_HALF_WIDTH_MM)),
                Ink.GRAPHITE);
    }

    private void size(Canvas canvas, Point middle, Box place) throws IOException {
        double width = canvas.width(size, SIZE) + 1.2;
        double height = SIZE.sizeMm() + 0.8;
        double left = Math.max(place.left() + 0.5, Math.min(place.right() - width - 0.5, middle.x() - width / 2));
        double bottom = Math.max(place.bottom() + 0.5, Math.min(place.top() - height - 0.5, middle.y() - height / 2));
        canvas.fill(new Box(left, bottom, width, height), Ink.PAPER);
        canvas.text(size, left + 0.6, bottom + 0.9, SIZE);
    }
}
