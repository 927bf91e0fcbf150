package wallplate.moderation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.task.PlainNumber;

/**
 * Marks that a second marker typed for one sheet.
 *
 * @param marks those that can stand, by criterion
 * @param faults what is wrong, by criterion, each a sentence; nothing is kept while there is one
 */
public record SecondMarks(Map<String, Double> marks, Map<String, String> faults) {

    public SecondMarks {
        marks = Map.copyOf(marks);
        faults = Map.copyOf(faults);
    }

    /** @param typed what was typed, by criterion */
    public static SecondMarks read(List<BlindSheet.Criterion> criteria, Map<String, String> typed) {
        Map<String, Double> marks = new LinkedHashMap<>();
        Map<String, String> faults = new LinkedHashMap<>();
        for (BlindSheet.Criterion criterion : criteria) {
            String text = typed.getOrDefault(criterion.id(), "").strip();
            double mark = PlainNumber.read(text).orElse(Double.NaN);
            if (text.isEmpty()) {
                faults.put(criterion.id(), "No mark yet: 0 to %s.".formatted(PlainNumber.text(criterion.available())));
            } else if (!(mark >= 0 && mark <= criterion.available()) || !Marks.isKept(mark)) {
                faults.put(criterion.id(), "Found: \"%s\"; right would be 0 to %s, to a hundredth."
                        .formatted(text, PlainNumber.text(criterion.available())));
            } else {
                marks.put(criterion.id(), mark);
            }
        }
        return new SecondMarks(marks, faults);
    }

    public boolean isComplete() {
        return faults.isEmpty();
    }
}
