package wallplate.solver;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.task.Scale;

/** Tells whether a whole drawing was made at another scale than the one asked. */
public final class DrawnScale {

    /** Scales that stand on rulers and in textbooks. */
    private static final List<Integer> SCALES = List.of(1, 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 200);

    /** Shorter lengths, in millimetres on paper, say too little: their tolerance is a large share of them. */
    private static final double SHORTEST = 3;

    /** How far a length may lie from what a scale gives: this many millimetres and this share of it. */
    private static final double SLACK_MM = 0.5;

    private static final double SLACK_SHARE = 0.03;

    /** How many lengths must be measured at least. */
    private static final int FEWEST = 5;

    /** The share of the lengths that must fit the other scale, and the share that may still fit the one asked. */
    private static final double MOST = 0.7;

    private static final double FEW = 0.4;

    private DrawnScale() {}

    /**
     * The other scale that most of the lengths fit; empty where they fit the one asked, none, or are too few to tell.
     *
     * @param measured millimetres on paper by key
     */
    public static Optional<Scale> of(ExpectedDrawing asked, Map<String, Double> measured) {
        List<Expected.Length> lengths = asked.values().stream()
                .filter(Expected.Length.class::isInstance)
                .map(Expected.Length.class::cast)
                .filter(length -> length.exactMm() >= SHORTEST && measured.containsKey(length.key()))
                .toList();
        Scale right = asked.task().scale();
        if (lengths.size() < FEWEST || share(lengths, measured, right) > FEW) {
            return Optional.empty();
        }
        Optional<Scale> best = SCALES.stream()
                .map(Scale::new)
                .filter(scale -> !scale.equals(right))
                .max(java.util.Comparator.comparingDouble(scale -> share(lengths, measured, scale)));
        return best.filter(scale -> share(lengths, measured, scale) >= MOST);
    }

    private static double share(List<Expected.Length> lengths, Map<String, Double> measured, Scale scale) {
        long fitting = lengths.stream()
                .filter(length -> {
                    double there = scale.onPaper(length.realMm());
                    return Math.abs(measured.get(length.key()) - there) <= SLACK_MM + SLACK_SHARE * there;
                })
                .count();
        return (double) fitting / lengths.size();
    }
}
