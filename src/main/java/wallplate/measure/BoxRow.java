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
                0.66);
        columns = columns.stream().filter(column -> column.ink() > 0.5 * view.outlineInk()).toList();
        List<int[]> pairs = pair(columns, expectation, part + ".width");
        List<Box> boxes = new ArrayList<>();
        for (int[] pair : pairs) {
            boxes.add(box(view, lower, across, height, columns.get(pair[0]), columns.get(pair[1])));
        }
        boxes.sort(Comparator.comparingDouble(Box::centre));
        return new BoxRow(boxes, columns.size() - 2 * boxes.size());
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
        double trim = Math.min(0.4, height / 6);
        return view.fit().fit(line, trim, height - trim, 0.2, 0.25);
    }

    /** Where along a side it lies half-way up the band. */
    private static double middlePosition(Edge side, Edge lower, double middle) {
        double origin = lower.line().distanceTo(side.line().origin());
        double rise = lower.line().direction().cross(side.line().direction());
        return (middle - origin) / rise;
    }

    /**
     * Pairs columns to boxes of one width: the width is tried that leaves the fewest columns over and is the likeliest.
     */
    private static List<int[]> pair(List<Crossing> columns, Expectation expectation, String widthKey) {
        double usual = expectation.exactOr(widthKey, 2.5);
        List<Double> widths = new ArrayList<>(expectation.hypotheses(widthKey));
        for (int i = 0; i < columns.size(); i++) {
            for (int j = i + 1; j < Math.min(columns.size(), i + 4); j++) {
                double width = columns.get(j).position() - columns.get(i).position();
                if (width > 0.35 * usual && width < 3.2 * usual) {
                    widths.add(width);
                }
            }
        }
        List<int[]> best = List.of();
        double bestScore = 0;
        for (double width : widths) {
            List<int[]> pairs = pairs(columns, width);
            if (pairs.isEmpty()) {
                continue;
            }
            double mean = pairs.stream()
                    .mapToDouble(p -> columns.get(p[1]).position() - columns.get(p[0]).position())
                    .average()
                    .orElse(width);
            double score = 2.0 * pairs.size()
                    - 0.8 * (columns.size() - 2 * pairs.size())
                    - 0.5 * Math.min(4, expectation.cost(widthKey, mean))
                    + 0.01 * pairs.stream().mapToDouble(p -> columns.get(p[0]).coverage() + columns.get(p[1]).coverage()).sum();
            if (score > bestScore || best.isEmpty() && score > -3) {
                bestScore = score;
                best = pairs;
            }
        }
        return best;
    }

    private static List<int[]> pairs(List<Crossing> columns, double width) {
        record Candidate(int low, int high, double off) {}
        double tolerance = Math.max(0.5, 0.22 * width);
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            for (int j = i + 1; j < columns.size(); j++) {
                double off = Math.abs(columns.get(j).position() - columns.get(i).position() - width);
                if (off <= tolerance) {
                    candidates.add(new Candidate(i, j, off + 0.2 * (2 - columns.get(i).coverage() - columns.get(j).coverage())));
                }
            }
        }
        candidates.sort(Comparator.comparingDouble(Candidate::off).thenComparingInt(Candidate::low));
        boolean[] taken = new boolean[columns.size()];
        List<int[]> pairs = new ArrayList<>();
        for (Candidate candidate : candidates) {
            if (!taken[candidate.low] && !taken[candidate.high]) {
                taken[candidate.low] = true;
                taken[candidate.high] = true;
                pairs.add(new int[] {candidate.low, candidate.high});
            }
        }
        return pairs;
    }
}
