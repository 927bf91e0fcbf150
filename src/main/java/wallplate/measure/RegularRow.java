package wallplate.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import wallplate.stroke.CrossLines.Crossing;

/**
 * Tells which of the lines that cross a band are the sides of like boxes set out at equal distances.
 *
 * <p>Widths and spacings are tried, the task's and the slips' first and every one that the lines themselves suggest; fitted odds
 * choose among the rows. Lines inside a box are its diagonals' and cost nothing; lettering that runs across the band leaves
 * lines over, which count against a row.
 */
final class RegularRow {

    /**
     * The chosen row.
     *
     * @param boxes the boxes' sides as pairs of indices of the columns, from the eaves inwards; empty where there is no box
     * @param odds how likely what it says is right
     * @param otherCount how many boxes the likeliest row with another number of them has
     * @param spacing from one place for a box to the next; 0 where there are fewer than two boxes
     */
    record Chosen(List<int[]> boxes, Odds odds, Optional<Integer> otherCount, double spacing) {}

    /**
     * How likely what a row says is right: rows that differ in one size often say the same of another.
     *
     * @param count the probability of its number of boxes
     * @param width of their width
     * @param spacing of the mean distance of their centres, or of there being none
     */
    record Odds(double count, double width, double spacing) {}

    private static final Weights WEIGHTS = Weights.of("row", List.of(
            "boxes", "sides", "off-width", "width", "spacing", "spacing-by-width", "holes", "out-of-place", "spare", "one",
            "none-asked", "none-not-asked"));

    /** How far a box may stand from its place in an equal row: learners measure each anew. */
    private static final double OUT_OF_PLACE_MM = 1.2;

    /** What a width that is off by all that is allowed costs a candidate, in units of a whole dark side. */
    private static final double OFF_WIDTH = 2;

    private static final double SAME_MM = 0.35;
    private static final double MOST_COST = 4;
    /** A row with more places without a box than this is not offered. */
    private static final int MOST_HOLES = 4;

    private final List<Crossing> columns;
    private final double outlineInk;
    private final Expectation expectation;
    private final String part;
    private final ChoiceLog log;

    RegularRow(List<Crossing> columns, double outlineInk, Expectation expectation, String part, ChoiceLog log) {
        this.columns = columns;
        this.outlineInk = outlineInk;
        this.expectation = expectation;
        this.part = part;
        this.log = log;
    }

    /** Two columns that may be the sides of one box. */
    private record Candidate(int low, int high, double centre, double gap, double off, double sides) {}

    private record Row(String part, List<Candidate> boxes, double spacing, int holes, double outOfPlace) implements Reading {

        double width() {
            return boxes.stream().mapToDouble(Candidate::gap).average().orElse(0);
        }

        @Override
        public Map<String, Optional<Double>> sizes() {
            return Map.of(
                    part + ".count", Optional.of((double) boxes.size()),
                    part + ".width", boxes.isEmpty() ? Optional.empty() : Optional.of(width()),
                    part + ".spacing", meanSpacing());
        }

        boolean hasAsManyAs(Row other) {
            return other.boxes.size() == boxes.size();
        }

        boolean isAsWideAs(Row other) {
            return other.boxes.isEmpty() == boxes.isEmpty() && Math.abs(other.width() - width()) < SAME_MM;
        }

        boolean isSpacedLike(Row other) {
            Optional<Double> mean = meanSpacing();
            Optional<Double> others = other.meanSpacing();
            return mean.isPresent() && others.isPresent()
                    ? Math.abs(mean.get() - others.get()) < SAME_MM
                    : mean.isEmpty() && others.isEmpty();
        }

        private Optional<Double> meanSpacing() {
            return boxes.size() < 2
                    ? Optional.empty()
                    : Optional.of((boxes.get(boxes.size() - 1).centre - boxes.get(0).centre) / (boxes.size() - 1));
        }
    }

    Chosen choose() {
        Choice<Row> choice = new Choice<>(WEIGHTS);
        boolean isAsked = expectation.asksPart(part);
        double none = spare(List.of());
        choice.offer(new Row(part, List.of(), 0, 0, 0), 0, 0, 0, 0, 0, 0, 0, 0, none, 0, isAsked ? 1 : 0, isAsked ? 0 : 1);
        Set<List<Candidate>> offered = new HashSet<>();
        for (double width : widths()) {
            List<Candidate> candidates = candidates(width);
            for (Candidate first : candidates) {
                offer(choice, offered, new Row(part, List.of(first), 0, 0, 0), width);
                for (Candidate second : candidates) {
                    if (second.centre - first.centre >= 2.5 * width) {
                        offer(choice, offered, walk(candidates, first, second.centre - first.centre), width);
                    }
                }
            }
        }
        log.made(choice);
        Row best = choice.best().orElseThrow();
        return new Chosen(
                best.boxes.stream().map(box -> new int[] {box.low, box.high}).toList(),
                new Odds(
                        choice.probability(best::hasAsManyAs),
                        choice.probability(best::isAsWideAs),
                        choice.probability(best::isSpacedLike)),
                choice.bestWithout(best::hasAsManyAs).map(row -> row.boxes.size()),
                best.spacing);
    }

    private void offer(Choice<Row> choice, Set<List<Candidate>> offered, Row row, double width) {
        if (row.holes > MOST_HOLES || !offered.add(row.boxes)) {
            return;
        }
        boolean isOne = row.boxes.size() == 1;
        choice.offer(
                row,
                row.boxes.size(),
                row.boxes.stream().mapToDouble(Candidate::sides).sum(),
                row.boxes.stream().mapToDouble(box -> box.off * box.off).sum(),
                Math.min(MOST_COST, expectation.cost(part + ".width", width)),
                isOne ? 0 : Math.min(MOST_COST, expectation.cost(part + ".spacing", row.spacing)),
                isOne ? 0 : Math.min(1, 4 * width / row.spacing),
                row.holes,
                row.outOfPlace,
                spare(row.boxes),
                isOne ? 1 : 0,
                0,
                0);
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
        double tolerance = Math.max(0.65, 0.25 * width);
        List<Candidate> candidates = new ArrayList<>();
        for (int low = 0; low < columns.size(); low++) {
            for (int high = low + 1; high < columns.size(); high++) {
                double gap = columns.get(high).position() - columns.get(low).position();
                double off = (gap - width) / tolerance;
                if (off > 1) {
                    break;
                }
                double sides = sideScore(low) + sideScore(high);
                if (off >= -1 && sides > -0.6) {
                    double centre = (columns.get(low).position() + columns.get(high).position()) / 2;
                    candidates.add(new Candidate(low, high, centre, gap, off, sides));
                }
            }
        }
        return candidates;
    }

    /** The row with a box at a given place and spacing: at each place to both sides the candidate that fits best. */
    private Row walk(List<Candidate> candidates, Candidate anchor, double spacing) {
        List<Candidate> boxes = new ArrayList<>();
        boxes.add(anchor);
        int holes = 0;
        double outOfPlace = 0;
        double end = columns.get(columns.size() - 1).position();
        double start = columns.get(0).position();
        for (int direction = -1; direction <= 1; direction += 2) {
            int pending = 0;
            double last = anchor.centre;
            double place = last + direction * spacing;
            while (place > start - 2 && place < end + 2) {
                Candidate box = nearest(candidates, place, direction, last + direction * spacing / 2);
                if (box == null) {
                    pending++;
                    place += direction * spacing;
                } else {
                    holes += pending;
                    pending = 0;
                    outOfPlace += Math.pow((box.centre - place) / OUT_OF_PLACE_MM, 2);
                    boxes.add(box);
                    last = box.centre;
                    place = last + direction * spacing;
                }
            }
        }
        boxes.sort(Comparator.comparingDouble(Candidate::centre));
        return new Row(part, List.copyOf(boxes), spacing, holes, outOfPlace);
    }

    /** The best candidate about a place; only beyond a bound, for where places are close a box would be met again. */
    private static Candidate nearest(List<Candidate> candidates, double place, int direction, double beyond) {
        Candidate best = null;
        double bestScore = -Double.MAX_VALUE;
        for (Candidate candidate : candidates) {
            double off = Math.abs(candidate.centre - place) / OUT_OF_PLACE_MM;
            double score = candidate.sides - OFF_WIDTH * candidate.off * candidate.off - off * off;
            if (off <= 1 && direction * (candidate.centre - beyond) > 0 && score > bestScore) {
                bestScore = score;
                best = candidate;
            }
        }
        return best;
    }

    /** How many whole dark columns lie outside every box. */
    private double spare(List<Candidate> boxes) {
        double spare = 0;
        for (int column = 0; column < columns.size(); column++) {
            int index = column;
            if (boxes.stream().noneMatch(box -> box.low <= index && index <= box.high)) {
                Crossing crossing = columns.get(column);
                spare += crossing.coverage() * Math.min(1, crossing.ink() / outlineInk);
            }
        }
        return spare;
    }

    /** How much like a box's side a column is: about half for a whole dark one, below nothing for a weak one. */
    private double sideScore(int column) {
        Crossing crossing = columns.get(column);
        return 1.6 * (crossing.coverage() - 0.75) + 1.2 * (Math.min(1, crossing.ink() / outlineInk) - 0.7);
    }
}
