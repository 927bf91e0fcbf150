package wallplate.marksheets;

import java.util.List;
import java.util.Optional;

/**
 * A learner of a mark sheet.
 *
 * @param number the place in the mark sheet, from 1
 * @param learnerId empty where the learner was erased
 * @param name what the learner goes by
 * @param candidateNumber beside the name; empty where there is none
 * @param entries one for each column, in their order
 */
public record Line(int number, Optional<Long> learnerId, String name, String candidateNumber, List<Entry> entries) {

    public Line {
        entries = List.copyOf(entries);
    }

    Line with(int column, Entry entry) {
        List<Entry> changed = new java.util.ArrayList<>(entries);
        changed.set(column, entry);
        return new Line(number, learnerId, name, candidateNumber, changed);
    }
}
