package wallplate.remarking;

import java.time.Instant;
import java.util.Map;
import wallplate.task.TaskFile;

/**
 * One version of a task's marking guideline.
 *
 * @param version the guideline's name with the fingerprint of what it says
 * @param text the {@code marking} part of a task file
 * @param keptBy who kept it first
 */
public record KeptGuideline(String version, String text, String keptBy, Instant keptAt) {

    /** What it says, as a task has it. */
    public Map<String, Object> marking() {
        return TaskFile.readMarking(text);
    }
}
