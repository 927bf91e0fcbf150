package wallplate.web.marksheets;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.marksheets.NewMarkSheet;
import wallplate.records.ClassSet;

/**
 * What a person fills in to begin a mark sheet.
 *
 * @param weights what was typed, by class set; empty where the set is not to count
 * @param faults what is wrong, by field
 */
record MarkSheetForm(
        String title, String term, String late, Map<Long, String> weights, Map<String, String> faults) {

    private static final int LONGEST_TITLE = 300;
    private static final int LONGEST_TERM = 60;
    private static final BigDecimal MOST_WEIGHT = new BigDecimal("1000");

    /** Every set of the class counts alike. */
    static MarkSheetForm fresh(List<ClassSet> sets, Optional<Long> only) {
        Map<Long, String> weights = new LinkedHashMap<>();
        sets.forEach(set -> weights.put(set.id(), only.isEmpty() || only.get() == set.id() ? "1" : ""));
        return new MarkSheetForm("", "", "0", weights, Map.of());
    }

    static MarkSheetForm of(Map<String, String> fields, List<ClassSet> sets) {
        Map<Long, String> weights = new LinkedHashMap<>();
        sets.forEach(set ->
                weights.put(set.id(), fields.getOrDefault("weight-" + set.id(), "").strip()));
        MarkSheetForm typed = new MarkSheetForm(
                fields.getOrDefault("title", "").strip(),
                fields.getOrDefault("term", "").strip(),
                fields.getOrDefault("late", "0").strip(),
                weights,
                Map.of());
        return new MarkSheetForm(typed.title, typed.term, typed.late, typed.weights, typed.look());
    }

    private Map<String, String> look() {
        Map<String, String> faults = new LinkedHashMap<>();
        if (title.length() > LONGEST_TITLE) {
            faults.put("title", "A title of at most 300 letters, please.");
        }
        if (term.isEmpty() || term.length() > LONGEST_TERM) {
            faults.put("term", "Name the term, such as Term 1, in at most 60 letters.");
        }
        if (!late.matches("\\d{1,2}|100")) {
            faults.put("late", "A whole number from 0 to 100, please; found: \"" + late + "\".");
        }
        weights.forEach((set, weight) -> {
            if (!weight.isEmpty() && weight(weight).isEmpty()) {
                faults.put(
                        "weight-" + set,
                        "A weight is a number above 0 and up to 1000 with at most two decimals; found: \"" + weight + "\".");
            }
        });
        if (weights.values().stream().allMatch(String::isEmpty)) {
            faults.put("weights", "Give at least one class set a weight.");
        }
        return faults;
    }

    private static Optional<BigDecimal> weight(String typed) {
        return Optional.of(typed.replace(',', '.'))
                .filter(text -> text.matches("\\d{1,4}(\\.\\d{1,2})?"))
                .map(BigDecimal::new)
                .filter(weight -> weight.signum() > 0 && weight.compareTo(MOST_WEIGHT) <= 0);
    }

    int latePercent() {
        return Integer.parseInt(late);
    }

    /** The sets that count; the form must be without faults. */
    List<NewMarkSheet.Task> tasks(List<ClassSet> sets) {
        List<NewMarkSheet.Task> tasks = new ArrayList<>();
        for (ClassSet set : sets) {
            weight(weights.getOrDefault(set.id(), ""))
                    .ifPresent(weight -> tasks.add(new NewMarkSheet.Task(set.id(), set.title(), weight)));
        }
        return tasks;
    }
}
