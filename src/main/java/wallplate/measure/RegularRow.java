package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import wallplate.stroke.CrossLines.Crossing;

/**
 * Tells which of the lines that cross a band are the sides of like boxes set out at equal distances.
 *
 * <p>Widths and spacings are tried, the task's and the slips' first and every one that the lines themselves suggest; the
 * row is taken that explains the most lines. Lines inside a box are its diagonals' and cost nothing; lettering that runs
 * across the band leaves lines over, which count against a row but little.
 */
final class RegularRow {

    private static final double BOX_GAIN = 0.8;
    private static final double HOLE_COST = 1.3;
    private static final double SPARE_PART = 0.4;
    /** How far a box may stand from its place in an equal row: learners measure each anew. */
    private static final double OUT_OF_PLACE_MM = 1.2;

    private final List<Crossing> columns;
    private final double outlineInk;
    private final Expectation expectation;
    private final String part;

    RegularRow(List<Crossing> columns, double outlineInk, Expectation expectation, String part) {
        this.columns = columns;
        this.outlineInk = outlineInk;
        this.expectation = expectation;
        this.part = part;
    }

    private record Candidate(int low, int high, double centre, double score) {}

    private record Row(List<Candidate> boxes, double score) {}

    /** The boxes' sides as pairs of indices of the columns, from the eaves inwards; empty where there is no box. */
    List<int[]> boxes() {
        Ranking<Row> ranking = new Ranking<>(-0.4);
        for (double width : widths()) {
            List<Candidate> candidates = candidates(width);
            if (candidates.isEmpty()) {
                continue;
            }
            Row row = bestRow(candidates, width);
            ranking.offer(row, row.boxes.size(), -row.score);
        }
        return ranking.best().orElse(new Row(List.of(), 0)).boxes.stream().map(box -> new int[] {box.low, box.high}).toList();
    }

    private List<Double> widths() {
        double usual = expectation.exactOr(part + ".width", 2.5);
        List<Double> widths = new ArrayList<>();
        expectation.hypotheses(part + ".width").forEach(width -> addDistinct(widths, width, 0.12));
        for (int i = 0; i < columns.size(); i++) {
            for (int j = i + 1; j < columns.size(); j++) {
                double width = columns.get(j).position() - columns.get(i).position();
                if (width > 3.2 * usual) {
                    break;
                }
                if (width > 0.35 * usual && sideScore(i) + sideScore(j) > 0.3) {
                    addDistinct(widths, width, 0.12);
                }
            }
        }
        return widths;
    }

    private static void addDistinct(List<Double> values, double value, double apart) {
        if (values.stream().noneMatch(other -> Math.abs(other - value) < apart)) {
            values.add(value);
        }
    }

    private List<Candidate> candidates(double width) {
        double tolerance = Math.max(0.45, 0.2 * width);
        List<Candidate> candidates = new ArrayList<>();
        for (int low = 0; low < columns.size(); low++) {
            for (int high = low + 1; high < columns.size(); high++) {
                double gap = columns.get(high).position() - columns.get(low).position();
                double off = (gap - width) / tolerance;
                if (off > 1) {
                    break;
                }
                double score = BOX_GAIN + sideScore(low) + sideScore(high) - 0.8 * off * off;
                if (off >= -1 && score > 0) {
                    candidates.add(new Candidate(
                            low, high, (columns.get(low).position() + columns.get(high).position()) / 2, score));
                }
            }
        }
        return candidates;
    }

    private Row bestRow(List<Candidate> candidates, double width) {
        double widthCost = 0.6 * Math.min(4, expectation.cost(part + ".width", width));
        Row best = new Row(List.of(), -Double.MAX_VALUE);
        for (Candidate candidate : candidates) {
            double score = candidate.score - widthCost - spare(List.of(candidate));
            if (score > best.score) {
                best = new Row(List.of(candidate), score);
            }
        }
        for (Candidate first : candidates) {
            for (Candidate second : candidates) {
                double spacing = second.centre - first.centre;
                if (spacing < 2.5 * width) {
                    continue;
                }
                Row row = walk(candidates, first, spacing, widthCost);
                if (row.score > best.score) {
                    best = row;
                }
            }
        }
        return best;
    }

    /** The row with a box at a given place and spacing: at each place to both sides the candidate that fits best. */
    private Row walk(List<Candidate> candidates, Candidate anchor, double spacing, double widthCost) {
        List<Candidate> boxes = new ArrayList<>();
        boxes.add(anchor);
        double score = anchor.score - widthCost - 0.4 * Math.min(4, expectation.cost(part + ".spacing", spacing));
        double end = columns.get(columns.size() - 1).position();
        double start = columns.get(0).position();
        for (int direction = -1; direction <= 1; direction += 2) {
            double last = anchor.centre;
            double pending = 0;
            double place = last + direction * spacing;
            while (place > start - 2 && place < end + 2) {
                Candidate box = nearest(candidates, place);
                if (box == null) {
                    pending += HOLE_COST;
                    place += direction * spacing;
                } else {
                    score += box.score - pending - Math.pow((box.centre - place) / OUT_OF_PLACE_MM, 2);
                    pending = 0;
                    boxes.add(box);
                    place = box.centre + direction * spacing;
                }
            }
        }
        boxes.sort((a, b) -> Double.compare(a.centre, b.centre));
        return new Row(boxes, score - spare(boxes));
    }

    private static Candidate nearest(List<Candidate> candidates, double place) {
        Candidate best = null;
        double bestScore = 0;
        for (Candidate candidate : candidates) {
            double off = Math.abs(candidate.centre - place) / OUT_OF_PLACE_MM;
            double score = candidate.score - off * off;
            if (off <= 1 && score > bestScore) {
                bestScore = score;
                best = candidate;
            }
        }
        return best;
    }

    /** What the columns outside every box cost. */
    private double spare(List<Candidate> boxes) {
        double cost = 0;
        for (int column = 0; column < columns.size(); column++) {
            int index = column;
            if (boxes.stream().noneMatch(box -> box.low <= index && index <= box.high)) {
                Crossing crossing = columns.get(column);
                cost += SPARE_PART * crossing.coverage() * Math.min(1, crossing.ink() / outlineInk);
            }
        }
        return cost;
    }

    /** How much like a box's side a column is: about half for a whole dark one, below nothing for a weak one. */
    private double sideScore(int column) {
        Crossing crossing = columns.get(column);
        return 1.6 * (crossing.coverage() - 0.75) + 1.2 * (Math.min(1, crossing.ink() / outlineInk) - 0.7);
    }
}
