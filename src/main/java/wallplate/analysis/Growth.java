package wallplate.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.stat.descriptive.rank.Median;
import wallplate.records.LearnerHistory;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;

/**
 * How one learner grows over tasks. Parts of the marks that could be had are compared, from 0 to 1, because tasks differ in their marks.
 *
 * @param steps one a class set, the oldest first
 * @param criteria those that were judged in at least two sets, what was earned least of last first
 */
public record Growth(List<Step> steps, List<Row> criteria) {

    public Growth {
        steps = List.copyOf(steps);
        criteria = List.copyOf(criteria);
    }

    /**
     * One class set.
     *
     * @param part the learner's part of the marks; empty where the sheet was not read or a criterion is not decided
     * @param classMedian the median of the same part over the class, this learner included; empty where nobody has one
     * @param classSheets the sheets that stand behind the median
     */
    public record Step(LearnerHistory.Entry entry, OptionalDouble part, OptionalDouble classMedian, int classSheets) {}

    /**
     * One criterion over the sets.
     *
     * @param parts in the order of the steps; empty where it was not judged
     */
    public record Row(String title, List<OptionalDouble> parts) {
        public Row {
            parts = List.copyOf(parts);
        }

        /** The last part of the marks that is known. */
        double last() {
            return parts.stream()
                    .flatMapToDouble(OptionalDouble::stream)
                    .reduce((before, next) -> next)
                    .orElseThrow();
        }
    }

    /** A learner's sheet with its marks and the sheets of its class. */
    public record Sitting(LearnerHistory.Entry entry, List<MarkEntry> marks, List<SheetEntry> ofClass) {}

    public static Growth of(List<Sitting> sittings) {
        return new Growth(sittings.stream().map(Growth::step).toList(), rows(sittings));
    }

    private static Step step(Sitting sitting) {
        double[] parts = sitting.ofClass().stream()
                .map(Growth::part)
                .flatMapToDouble(OptionalDouble::stream)
                .toArray();
        OptionalDouble median = parts.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(new Median().evaluate(parts));
        return new Step(sitting.entry(), part(sitting.entry().sheet()), median, parts.length);
    }

    private static OptionalDouble part(SheetEntry sheet) {
        boolean settled = sheet.state() == SheetState.READ && sheet.undecided() == 0 && sheet.available() > 0;
        return settled ? OptionalDouble.of(sheet.awarded() / sheet.available()) : OptionalDouble.empty();
    }

    private static List<Row> rows(List<Sitting> sittings) {
        Map<String, String> titles = new LinkedHashMap<>();
        sittings.forEach(sitting -> sitting.marks().forEach(mark -> titles.put(mark.criterion(), mark.title())));
        List<Row> rows = new ArrayList<>();
        titles.forEach((criterion, title) -> {
            List<OptionalDouble> parts =
                    sittings.stream().map(sitting -> part(sitting, criterion)).toList();
            if (parts.stream().filter(OptionalDouble::isPresent).count() > 1) {
                rows.add(new Row(title, parts));
            }
        });
        rows.sort(Comparator.comparingDouble(Row::last));
        return rows;
    }

    private static OptionalDouble part(Sitting sitting, String criterion) {
        Optional<MarkEntry> found = sitting.marks().stream()
                .filter(mark -> mark.criterion().equals(criterion) && !mark.isUndecided() && mark.available() > 0)
                .findFirst();
        return found.map(mark -> OptionalDouble.of(mark.awarded() / mark.available())).orElseGet(OptionalDouble::empty);
    }
}
