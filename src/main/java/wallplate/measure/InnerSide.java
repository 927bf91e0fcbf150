package wallplate.measure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;
import wallplate.stroke.HalfHeight;

/**
 * The gutter's own inner side where it was drawn over the fascia's face, a few tenths of a millimetre beside it, so that both
 * make one broader stroke.
 *
 * <p>Above and below the gutter the face stands alone and shows where it runs and how broad a stroke is. Beside the gutter
 * one flank of the ink is still the face's, and the other is that of the inner side, half a breadth from its centre. Fitted
 * to all their ink, either would be drawn half-way to the other.
 *
 * @param face the fascia's face, from where it stands alone
 */
record InnerSide(Edge face, Edge inner) {

    private static final double STEP_MM = 0.05;
    private static final int REACH_STEPS = 18;
    private static final int CENTRE_STEPS = 6;
    private static final double ROW_STEP_MM = 0.1;
    /** Ink of lines that cross lies in fewer rows than this share at either end of the order. */
    private static final double TRIMMED = 0.2;

    /** So far from other lines' centres the rows are clear of their ink. */
    private static final double CLEAR_MM = 0.5;

    private static final double SHORTEST_PIECE_MM = 0.6;
    private static final double LEAST_ALONE_MM = 1.8;
    /** One stroke is no broader beside the gutter than this: the flanks of two differ by more, and only then are two seen. */
    private static final double BROADER_MM = 0.06;
    /** Two strokes further apart than this would be seen as two. */
    private static final double FURTHEST_MM = 0.5;

    private static final double DIRECTION_DOUBT_DEGREES = 0.12;
    private static final double WINDOW_MM = 0.2;

    /** A range of heights, in millimetres. */
    record Heights(double from, double to) {

        double length() {
            return to - from;
        }
    }

    /** Where a stroke's ink falls to half to the left and to the right, from a line. */
    private record Flanks(double left, double right) {}

    /**
     * Both lines; empty where only one stroke is seen, or too little of the face alone to tell.
     *
     * @param face the fascia's face as it was found
     * @param board from the fascia's lower to its upper end
     * @param gutter from the gutter's bottom to its rim
     */
    static Optional<InnerSide> of(DrawingView view, Edge face, Heights board, Heights gutter) {
        List<Heights> alone = Stream.of(
                        new Heights(board.from + CLEAR_MM, gutter.from - CLEAR_MM), new Heights(gutter.to + CLEAR_MM, board.to - CLEAR_MM))
                .filter(rows -> rows.length() > SHORTEST_PIECE_MM)
                .toList();
        Heights beside = new Heights(gutter.from + CLEAR_MM, gutter.to - CLEAR_MM);
        if (alone.stream().mapToDouble(Heights::length).sum() < LEAST_ALONE_MM || beside.length() < SHORTEST_PIECE_MM) {
            return Optional.empty();
        }
        Heights longest = alone.stream().max(Comparator.comparingDouble(Heights::length)).orElseThrow();
        Edge alongFace = view.fit().fit(
                Level.uprightAt(face.xAt((longest.from + longest.to) / 2)),
                longest.from,
                longest.to,
                DIRECTION_DOUBT_DEGREES,
                WINDOW_MM);
        Optional<Flanks> single = flanks(view, alongFace, alone);
        Optional<Flanks> both = flanks(view, alongFace, List.of(beside));
        return single.isEmpty() || both.isEmpty()
                ? Optional.empty()
                : shift(single.get(), both.get()).map(shift -> beside(alongFace, beside, shift));
    }

    /** How far beside the face the inner side lies, to the right. */
    private static Optional<Double> shift(Flanks single, Flanks both) {
        double left = single.left - both.left;
        double right = both.right - single.right;
        double shift = left > right ? -left : right;
        boolean areTwo = left + right > BROADER_MM && Math.abs(shift) < FURTHEST_MM;
        return areTwo ? Optional.of(shift) : Optional.empty();
    }

    private static InnerSide beside(Edge face, Heights gutter, double shift) {
        double middleY = (gutter.from + gutter.to) / 2;
        Vector up = face.line().direction().y() < 0 ? face.line().direction().times(-1) : face.line().direction();
        Line line = new Line(new Point(face.xAt(middleY) + shift, middleY), up);
        return new InnerSide(
                face,
                new Edge(
                        line,
                        -gutter.length() / 2,
                        gutter.length() / 2,
                        face.offsetSigmaMm(),
                        face.residualMm(),
                        face.ink(),
                        face.coverage()));
    }

    private static Optional<Flanks> flanks(DrawingView view, Edge face, List<Heights> rows) {
        double[] ink = new double[2 * REACH_STEPS + 1];
        for (int step = -REACH_STEPS; step <= REACH_STEPS; step++) {
            ink[step + REACH_STEPS] = middleInk(view, face, rows, step * STEP_MM);
        }
        int peak = REACH_STEPS;
        for (int step = REACH_STEPS - CENTRE_STEPS; step <= REACH_STEPS + CENTRE_STEPS; step++) {
            peak = ink[step] > ink[peak] ? step : peak;
        }
        OptionalDouble left = HalfHeight.stepsFrom(ink, peak, -1);
        OptionalDouble right = HalfHeight.stepsFrom(ink, peak, 1);
        if (left.isEmpty() || right.isEmpty()) {
            return Optional.empty();
        }
        double peakMm = (peak - REACH_STEPS) * STEP_MM;
        return Optional.of(new Flanks(peakMm - left.getAsDouble() * STEP_MM, peakMm + right.getAsDouble() * STEP_MM));
    }

    /** The mean ink so far beside the face, without the rows in which there is most and least. */
    private static double middleInk(DrawingView view, Edge face, List<Heights> rows, double offset) {
        double[] ink = rows.stream()
                .flatMapToDouble(each -> DoubleStream.iterate(each.from, y -> y <= each.to, y -> y + ROW_STEP_MM))
                .map(y -> view.ink().at(face.xAt(y) + offset, y))
                .sorted()
                .toArray();
        int trimmed = (int) (TRIMMED * ink.length);
        return Arrays.stream(ink, trimmed, ink.length - trimmed).average().orElse(0);
    }
}
