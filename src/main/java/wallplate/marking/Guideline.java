package wallplate.marking;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/**
 * The marking guideline: what is marked, how strictly and for how many marks.
 *
 * @param name the department's own name for this version, such as {@code default} or {@code 2026-2}
 * @param borderlineDeviations a verdict is left to the teacher where the tolerance's edge lies within this many
 *     standard deviations of the measured value; 0 lets the value alone decide
 * @param criteria in the order in which they are shown
 */
public record Guideline(
        String name,
        Tolerances tolerances,
        double borderlineDeviations,
        List<MarkGroup> groups,
        List<Criterion> criteria) {

    public Guideline {
        groups = List.copyOf(groups);
        criteria = List.copyOf(criteria);
    }

    /**
     * One mark for every key of the drawing, in the order of the detail's own list.
     */
    public static Guideline defaultFor(ExpectedDrawing expected) {
        return defaultFor(expected, "default", Tolerances.USUAL, 0);
    }

    static Guideline defaultFor(
            ExpectedDrawing expected, String name, Tolerances tolerances, double borderlineDeviations) {
        List<Criterion> criteria = expected.values().stream()
                .map(Expected::key)
                .map(Criterion::forKey)
                .toList();
        return new Guideline(name, tolerances, borderlineDeviations, List.of(), criteria);
    }

    /**
     * The guideline of the drawing's own task: the default one, changed as the task file says.
     *
     * @return the guideline, or every fault of the file's {@code marking} part
     */
    public static GuidelineReading read(ExpectedDrawing expected) {
        return read(expected, expected.task().marking());
    }

    /**
     * The same for a {@code marking} part that the task does not have yet.
     *
     * @param marking as in a task file: groups, lists, texts, numbers and truth values
     */
    public static GuidelineReading read(ExpectedDrawing expected, Map<String, Object> marking) {
        return new GuidelineReader(expected, marking).read();
    }

    /** Everything that the guideline says, as a task file has it; {@link #read} makes an equal guideline of it. */
    public Map<String, Object> asMap() {
        return GuidelineWriter.write(this);
    }

    /**
     * The name with a fingerprint of everything the guideline says: two guidelines that differ anywhere have different
     * versions, whatever they are called.
     */
    public String version() {
        String content = tolerances + "|" + borderlineDeviations + "|" + groups + "|" + criteria;
        return name + "-" + HexFormat.of().formatHex(sha256(content), 0, 4);
    }

    private static byte[] sha256(String text) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException broken) {
            throw new IllegalStateException("every Java platform has SHA-256", broken);
        }
    }
}
