package wallplate.measure;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the measured sizes say about one another. Learners draw single sizes wrong; where a size that nothing explains
 * stands beside one that was not found, or beside another that nothing explains, it is likelier that the program took
 * one line for another.
 */
final class Coherence {

    /** Sizes between long lines that lie next to one another, so that one line taken for another spoils several of them. */
    private static final List<List<String>> BETWEEN_LONG_LINES = List.of(
            List.of("rafter.depth", "covering.gap", "covering.thickness"), List.of("tie-beam.depth", "ceiling.drop"));

    /**
     * The same of walls. Whether their lines may be others the odds of their own readings say, but where they do not fit
     * together the whole may have been drawn at another scale.
     */
    private static final List<List<String>> OF_WALLS = List.of(
            List.of("wall.thickness", "wall-plate.width", "wall-plate.depth"),
            List.of("high-wall.thickness", "high-plate.width", "high-plate.depth"));

    /** Sizes between sloping lines alone, which say that those were understood whatever became of the rest. */
    private static final List<String> OF_SLOPES =
            List.of("rafter.depth", "covering.gap", "covering.thickness", "support.width", "support.spacing");

    /** So many sizes do not agree by chance. */
    private static final int FEWEST_AGREEING = 3;

    /** Below this share of sizes that are as asked, or as a known slip would make them, a drawing is not understood. */
    private static final double LEAST_UNDERSTOOD = 0.4;

    /** From this share on a drawing is understood even at a scale that nobody asked for. */
    private static final double WELL_UNDERSTOOD = 2 / 3.0;

    private final Expectation expectation;
    private final Findings findings;

    Coherence(Expectation expectation, Findings findings) {
        this.expectation = expectation;
        this.findings = findings;
    }

    /** The keys that must be left open, with the reason. */
    Map<String, String> doubts() {
        return doubts(BETWEEN_LONG_LINES);
    }

    private Map<String, String> doubts(List<List<String>> groups) {
        Map<String, String> doubts = new LinkedHashMap<>();
        for (List<String> neighbours : groups) {
            List<String> asked = neighbours.stream().filter(expectation::asks).toList();
            List<String> unexplained = asked.stream()
                    .filter(key -> isUnexplained(key) && !findings.isInPlace(key))
                    .toList();
            boolean oneMissing = asked.stream().anyMatch(key -> !isMeasured(key));
            if (unexplained.isEmpty() || (!oneMissing && unexplained.size() < 2)) {
                continue;
            }
            Set<String> open = new LinkedHashSet<>(unexplained);
            asked.stream().filter(this::isAbsent).forEach(open::add);
            open.forEach(key -> doubts.put(
                    key, "the sizes of neighbouring parts do not fit together, so one line may have been taken for another"));
        }
        return doubts;
    }

    /** Whether anything speaks against how the drawing was understood. */
    boolean isInDoubt() {
        return isNotUnderstood() || !doubts(BETWEEN_LONG_LINES).isEmpty() || !doubts(OF_WALLS).isEmpty();
    }

    /** Whether so many sizes agree, or are what a known slip makes of them, that little else can be meant. */
    boolean isWellUnderstood() {
        return shareExplained(askedOfTheWhole()) >= WELL_UNDERSTOOD;
    }

    /**
     * Whether so few sizes agree with the task or a known slip that the drawing as a whole was not understood. What is absent
     * says nothing: a learner who leaves out beam and ceiling is understood as well.
     */
    boolean isNotUnderstood() {
        return shareExplained(askedOfTheWhole().stream().filter(key -> !isAbsent(key)).toList()) < LEAST_UNDERSTOOD;
    }

    /** The share of those sizes of a list that are as asked, or as a known slip would make them. */
    private double shareExplained(List<String> keys) {
        long explained = keys.stream().filter(key -> isMeasured(key) && !isUnexplained(key)).count();
        return keys.isEmpty() ? 1 : explained / (double) keys.size();
    }

    private List<String> askedOfTheWhole() {
        return Stream.of(BETWEEN_LONG_LINES, OF_WALLS)
                .flatMap(List::stream)
                .flatMap(List::stream)
                .filter(expectation::asks)
                .toList();
    }

    /** Whether the sloping lines were understood by themselves: several sizes between them agree, and none does not. */
    boolean areSlopesUnderstood() {
        List<String> measured = OF_SLOPES.stream().filter(this::isMeasured).toList();
        return measured.size() >= FEWEST_AGREEING && measured.stream().noneMatch(this::isUnexplained);
    }

    /** Whether a key's value rests on sloping lines alone. */
    static boolean isOfSlopes(String key) {
        return OF_SLOPES.contains(key) || key.startsWith("support.") || key.equals("drawing.eaves");
    }

    private boolean isMeasured(String key) {
        return finding(key).map(Finding::isMeasured).orElse(false);
    }

    private boolean isAbsent(String key) {
        return finding(key).map(Finding.Absent.class::isInstance).orElse(false);
    }

    private boolean isUnexplained(String key) {
        return finding(key)
                .map(each -> each instanceof Finding.Quantity quantity && !expectation.explains(key, quantity.value()))
                .orElse(false);
    }

    private Optional<Finding> finding(String key) {
        return findings.at(key).map(Measurement::finding);
    }
}
