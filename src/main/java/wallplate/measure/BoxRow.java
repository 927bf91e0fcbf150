package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * A row of like boxes between two nearly parallel lines: purlins between rafter and covering, branders between tie
 * beam and ceiling.
 *
 * @param boxes from the eaves inwards
 * @param odds how likely the number of boxes, their width and their spacing are the right ones
 * @param otherCount how many boxes the likeliest row with another number of them has
 * @param isGapInked whether a place of the row without a box holds about as much ink as one with a box and yet no sides
 * @param isFirstUnlike whether the first box is clearly not as wide as the others, which agree: at the eaves the fascia's lines
 *     run into it, and one may have been taken for its side
 */
record BoxRow(
        List<Box> boxes,
        RegularRow.Odds odds,
        Optional<Integer> otherCount,
        boolean isGapInked,
        boolean isFirstUnlike) {

    /** So much of a box's ink makes a place without one doubtful: a leader line or a word has less. */
    private static final double INKED = 0.45;

    private static final double INK_STEP_MM = 0.2;
    /** Of a faint side at least so much must be dark, and of both sides of a box together no more than this not be. */
    private static final double FAINT_COVERAGE = 0.2;

    private static final double MOST_MISSING = 1;
    /** How much wider or narrower than the others a faint box may be. */
    private static final double FAINT_WIDTH_SHARE = 0.2;

    private static final double FAINT_BESIDE_MM = 1.2;
    private static final double DEAREST_FAINT = 4;
    /** So many other boxes say how wide the first should be; so much and twice their own spread it may differ. */
    private static final int FEWEST_OTHERS = 3;

    private static final double UNLIKE_MM = 0.3;
    private static final double UNLIKE_SPREADS = 2;

    /** One box: its two sides, the nearer to the eaves first. */
    record Box(Edge low, Edge high, double from, double to) {

        double centre() {
            return (from + to) / 2;
        }

        double width() {
            return to - from;
        }
    }

    /**
     * Reads the row.
     *
     * @param lower the band's lower line, along which positions are counted
     * @param upper its upper line
     * @param others lines that cross the band and belong to other parts
     * @param across the direction of the boxes' sides
     */
    static BoxRow read(
            DrawingView view,
            Expectation expectation,
            String part,
            Edge lower,
            Edge upper,
            double from,
            double to,
            Vector across,
            List<Line> others,
            ChoiceLog log) {
        Vector along = lower.line().direction();
        double height = lower.distanceTo(upper, along);
        CrossLines crossLines = view.crossLines();
        List<Crossing> columns = crossLines.find(
                lower.line(), from, to, across,
                position -> 0.14 * height,
                position -> 0.86 * height,
                0.4);
        columns = columns.stream()
                .filter(column -> column.ink() > 0.34 * view.outlineInk() && standsTrue(view, lower, column, across, height))
                .toList();
        RegularRow.Chosen row = new RegularRow(columns, view.outlineInk(), expectation, part, log).choose();
        BoxSides sides = BoxSides.of(view, lower, across, height, others, crossings(row, columns));
        List<Box> boxes = new ArrayList<>();
        for (int[] pair : row.boxes()) {
            boxes.add(sides.box(columns.get(pair[0]), columns.get(pair[1])));
        }
        boxes.sort(Comparator.comparingDouble(Box::centre));
        InkOfPlace inkOfPlace = position -> meanInk(view, lower, across, height, position, widthOf(boxes));
        List<Double> gaps = row.spacing() > 0 ? inkedGaps(boxes, row.spacing(), from, to, inkOfPlace) : List.of();
        List<Box> faint = gaps.stream()
                .flatMap(place -> faintBox(sides, view, lower, across, height, place, widthOf(boxes)).stream())
                .toList();
        List<Box> all = Stream.concat(boxes.stream(), faint.stream())
                .sorted(Comparator.comparingDouble(Box::centre))
                .toList();
        return new BoxRow(all, row.odds(), row.otherCount(), faint.size() < gaps.size(), isFirstUnlike(all));
    }

    private static List<Crossing> crossings(RegularRow.Chosen row, List<Crossing> columns) {
        return row.boxes().stream()
                .flatMap(pair -> Stream.of(columns.get(pair[0]), columns.get(pair[1])))
                .toList();
    }

    private static boolean isFirstUnlike(List<Box> boxes) {
        if (boxes.size() <= FEWEST_OTHERS) {
            return false;
        }
        double usual = median(boxes.stream().skip(1).mapToDouble(Box::width));
        double spread = median(boxes.stream().skip(1).mapToDouble(box -> Math.abs(box.width() - usual)));
        return Math.abs(boxes.get(0).width() - usual) > UNLIKE_MM + UNLIKE_SPREADS * spread;
    }

    private static double median(DoubleStream values) {
        double[] sorted = values.sorted().toArray();
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }

    /** The box at a place of the row whose sides are too faint or broken to have been met as lines of their own. */
    private static Optional<Box> faintBox(
            BoxSides sides, DrawingView view, Edge lower, Vector across, double height, double place, double width) {
        List<Crossing> columns = view.crossLines().find(
                lower.line(), place - width, place + width, across,
                position -> 0.14 * height,
                position -> 0.86 * height,
                FAINT_COVERAGE);
        Ranking<Crossing[]> ranking = new Ranking<>(DEAREST_FAINT);
        for (Crossing low : columns) {
            for (Crossing high : columns) {
                double gap = high.position() - low.position();
                double off = Math.abs(gap - width) / (FAINT_WIDTH_SHARE * width);
                double beside = Math.abs((low.position() + high.position()) / 2 - place) / FAINT_BESIDE_MM;
                double missing = 2 - low.coverage() - high.coverage();
                if (off <= 1 && beside <= 1 && missing <= MOST_MISSING) {
                    ranking.offer(new Crossing[] {low, high}, gap, off + beside + missing);
                }
            }
        }
        return ranking.best().map(pair -> sides.box(pair[0], pair[1]));
    }

    /** The mean ink of a place along the lower line that is as wide as a box. */
    private interface InkOfPlace {
        double at(double position);
    }

    private static double widthOf(List<Box> boxes) {
        return boxes.stream().mapToDouble(Box::width).average().orElse(0);
    }

    /** The places of the row, between its boxes or one beyond either end, that have no box and yet the ink of one. */
    private static List<Double> inkedGaps(List<Box> boxes, double spacing, double from, double to, InkOfPlace ink) {
        double usual = boxes.stream().mapToDouble(box -> ink.at(box.centre())).average().orElse(0);
        double half = widthOf(boxes) / 2;
        List<Double> places = new ArrayList<>();
        places.add(boxes.get(0).centre() - spacing);
        places.add(boxes.get(boxes.size() - 1).centre() + spacing);
        for (int index = 1; index < boxes.size(); index++) {
            double start = boxes.get(index - 1).centre();
            double gap = boxes.get(index).centre() - start;
            long steps = Math.round(gap / spacing);
            for (int step = 1; step < steps; step++) {
                places.add(start + step * gap / steps);
            }
        }
        return places.stream()
                .filter(place -> place - half > from && place + half < to)
                .filter(place -> ink.at(place) > INKED * usual)
                .toList();
    }

    private static double meanInk(
            DrawingView view, Edge lower, Vector across, double height, double position, double width) {
        double sum = 0;
        int samples = 0;
        for (double along = -width / 2 - 0.2; along <= width / 2 + 0.2; along += INK_STEP_MM) {
            for (double up = 0.2 * height; up <= 0.8 * height; up += INK_STEP_MM) {
                Point place = lower.line().pointAt(position + along).plus(across.times(up));
                sum += view.ink().at(place.x(), place.y());
                samples++;
            }
        }
        return samples == 0 ? 0 : sum / samples;
    }

    /** Whether a line runs in the boxes' own direction rather than plumb, as the sides of the beam filling do. */
    private static boolean standsTrue(DrawingView view, Edge lower, Crossing column, Vector across, double height) {
        if (Math.abs(across.x()) < 0.05) {
            return true;
        }
        double half = 0.4 * height;
        Line square = new Line(lower.line().pointAt(column.position()).plus(across.times(height / 2)), across);
        double best = 0;
        double plumb = 0;
        for (double shift = -0.3; shift <= 0.31; shift += 0.1) {
            Line shifted = square.offset(shift);
            best = Math.max(best, view.fit().coverage(shifted, -half, half, DrawingView.OUTLINE_PART));
            plumb = Math.max(plumb, view.fit().coverage(new Line(shifted.origin(), Level.UP), -half, half, DrawingView.OUTLINE_PART));
        }
        return best >= 0.8 || best >= plumb - 0.02;
    }
}
