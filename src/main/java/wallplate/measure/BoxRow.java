package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Vector;
import wallplate.stroke.CrossLines;
import wallplate.stroke.CrossLines.Crossing;
import wallplate.stroke.Edge;

/**
 * A row of like boxes between two nearly parallel lines: purlins between rafter and covering, branders between tie
 * beam and ceiling.
 *
 * @param boxes from the eaves inwards
 * @param spare lines that cross the band as darkly as a box's side and belong to no box
 */
record BoxRow(List<Box> boxes, int spare) {

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
            Vector across) {
        Vector along = lower.line().direction();
        double height = lower.distanceTo(upper, along);
        CrossLines crossLines = new CrossLines(view.ink(), view.outlineInk());
        List<Crossing> columns = crossLines.find(
                lower.line(), from, to, across,
                position -> 0.14 * height,
                position -> 0.86 * height,
                0.4);
        columns = columns.stream()
                .filter(column -> column.ink() > 0.34 * view.outlineInk() && standsTrue(view, lower, column, across, height))
                .toList();
        List<int[]> pairs = pair(columns, expectation, part + ".width", view.outlineInk());
        List<Box> boxes = new ArrayList<>();
        for (int[] pair : pairs) {
            boxes.add(box(view, lower, across, height, columns.get(pair[0]), columns.get(pair[1])));
        }
        boxes.sort(Comparator.comparingDouble(Box::centre));
        return new BoxRow(boxes, columns.size() - 2 * boxes.size());
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
        return best >= plumb - 0.02;
    }

    private static Box box(
            DrawingView view, Edge lower, Vector across, double height, Crossing first, Crossing second) {
        Edge low = side(view, lower, across, height, first);
        Edge high = side(view, lower, across, height, second);
        double middle = height / 2;
        return new Box(
                low,
                high,
                lower.line().positionOf(low.line().pointAt(middlePosition(low, lower, middle))),
                lower.line().positionOf(high.line().pointAt(middlePosition(high, lower, middle))));
    }

    private static Edge side(DrawingView view, Edge lower, Vector across, double height, Crossing crossing) {
        Line line = new Line(lower.line().pointAt(crossing.position()), across);
        // Near the corners the diagonals run into the sides.
        double trim = Math.min(1.2, 0.25 * height);
        return view.fit().fit(line, trim, height - trim, 0.15, 0.2).within(-height / 2, height / 2);
    }

    /** Where along a side it lies half-way up the band. */
    private static double middlePosition(Edge side, Edge lower, double middle) {
        double origin = lower.line().distanceTo(side.line().origin());
        double rise = lower.line().direction().cross(side.line().direction());
        return (middle - origin) / rise;
    }

    /**
     * Pairs columns to boxes of about one width: the width is tried that explains the columns best. Columns inside a box
     * are its diagonals' and cost nothing; columns outside every box do.
     */
    private static List<int[]> pair(List<Crossing> columns, Expectation expectation, String widthKey, double outlineInk) {
        double usual = expectation.exactOr(widthKey, 2.5);
        List<Double> widths = new ArrayList<>(expectation.hypotheses(widthKey));
        for (int i = 0; i < columns.size(); i++) {
            for (int j = i + 1; j < Math.min(columns.size(), i + 5); j++) {
                double width = columns.get(j).position() - columns.get(i).position();
                if (width > 0.35 * usual && width < 3.2 * usual) {
                    widths.add(width);
                }
            }
        }
        List<int[]> best = List.of();
        double bestScore = 0.5;
        for (double width : widths) {
            Pairing pairing = pairing(columns, width, outlineInk);
            if (pairing.pairs.isEmpty()) {
                continue;
            }
            double mean = pairing.pairs.stream()
                    .mapToDouble(p -> columns.get(p[1]).position() - columns.get(p[0]).position())
                    .average()
                    .orElse(width);
            double score = pairing.score + leftOver(columns, outlineInk) - 0.6 * Math.min(4, expectation.cost(widthKey, mean));
            if (score > bestScore) {
                bestScore = score;
                best = pairing.pairs;
            }
        }
        return best;
    }

    private static double leftOver(List<Crossing> columns, double outlineInk) {
        return columns.stream().mapToDouble(column -> spareCost(column, outlineInk)).sum();
    }

    private static double spareCost(Crossing column, double outlineInk) {
        return 0.9 * column.coverage() * Math.min(1, column.ink() / outlineInk);
    }

    private record Pairing(List<int[]> pairs, double score) {}

    /** The best set of boxes that do not overlap, for one width, from the innermost column outwards. */
    private static Pairing pairing(List<Crossing> columns, double width, double outlineInk) {
        int count = columns.size();
        double[] best = new double[count + 1];
        int[] partner = new int[count];
        int[] follower = new int[count];
        double tolerance = Math.max(0.45, 0.2 * width);
        for (int first = count - 1; first >= 0; first--) {
            int i = first;
            best[i] = best[i + 1] - spareCost(columns.get(i), outlineInk);
            partner[i] = -1;
            for (int j = i + 1; j < count; j++) {
                double off = Math.abs(columns.get(j).position() - columns.get(i).position() - width) / tolerance;
                if (off > 1) {
                    continue;
                }
                int next = j + 1;
                double passed = 0;
                // Two boxes of a row never stand closer than a box and a half: what lies between is no box.
                while (next < count && columns.get(next).position() < columns.get(j).position() + 1.5 * width) {
                    passed += spareCost(columns.get(next), outlineInk);
                    next++;
                }
                double score = best[next]
                        - passed
                        + 0.7
                        + side(columns.get(i), outlineInk)
                        + side(columns.get(j), outlineInk)
                        - 0.8 * off * off;
                if (score > best[i]) {
                    best[i] = score;
                    partner[i] = j;
                    follower[i] = next;
                }
            }
        }
        List<int[]> pairs = new ArrayList<>();
        int i = 0;
        while (i < count) {
            if (partner[i] >= 0) {
                pairs.add(new int[] {i, partner[i]});
                i = follower[i];
            } else {
                i++;
            }
        }
        return new Pairing(pairs, best[0]);
    }

    /** How much like a box's side a column is: about half for a whole dark one, below nothing for a weak one. */
    private static double side(Crossing column, double outlineInk) {
        return 1.6 * (column.coverage() - 0.75) + 1.2 * (Math.min(1, column.ink() / outlineInk) - 0.7);
    }
}
