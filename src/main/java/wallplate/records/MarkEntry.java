package wallplate.records;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Verdict;

/**
 * One criterion of one sheet: what the guideline gave, and what a person made of it.
 *
 * @param position its place in the guideline, from 1
 * @param change what a person decided last; empty where the guideline's mark stands
 */
public record MarkEntry(
        long sheetId,
        String criterion,
        int position,
        String title,
        Optional<String> key,
        Verdict guidelineVerdict,
        double guidelineAwarded,
        double available,
        OptionalDouble tolerance,
        Reading reading,
        List<String> slips,
        String feedback,
        Optional<MarkChange> change) {

    public MarkEntry {
        slips = List.copyOf(slips);
    }

    /** A mark as the guideline gave it; no person has decided about it. */
    public static MarkEntry of(long sheetId, int position, Mark mark) {
        return new MarkEntry(
                sheetId,
                mark.criterion(),
                position,
                mark.title(),
                mark.key(),
                mark.verdict(),
                mark.awarded(),
                mark.available(),
                mark.tolerance().map(OptionalDouble::of).orElseGet(OptionalDouble::empty),
                MarkReading.of(mark.expected(), mark.measured()),
                mark.slips(),
                mark.feedback(),
                Optional.empty());
    }

    /** The marks of a sheet that is not kept, in the guideline's order. */
    public static List<MarkEntry> ofUnkept(MarkedSheet sheet) {
        List<MarkEntry> entries = new ArrayList<>();
        for (Mark mark : sheet.marks()) {
            entries.add(of(0, entries.size() + 1, mark));
        }
        return List.copyOf(entries);
    }

    /** The same mark with what a person decided about it. */
    public MarkEntry withChange(MarkChange decided) {
        return new MarkEntry(
                sheetId,
                criterion,
                position,
                title,
                key,
                guidelineVerdict,
                guidelineAwarded,
                available,
                tolerance,
                reading,
                slips,
                feedback,
                Optional.of(decided));
    }

    /**
     * What was asked and what was found, flat enough for a table row.
     *
     * @param unit {@code mm}, {@code deg}, {@code count}, {@code yes-no} or {@code word}; empty where nothing was asked
     * @param expected the exact value
     * @param expectedRounded the other end of the interval in which nothing deviates
     * @param finding {@code measured}, {@code absent}, {@code uncertain} or {@code none}
     */
    public record Reading(
            String unit,
            OptionalDouble expected,
            OptionalDouble expectedRounded,
            Optional<String> expectedWord,
            String finding,
            OptionalDouble measured,
            OptionalDouble uncertainty,
            Optional<String> measuredWord,
            Optional<String> uncertainReason) {}

    public Verdict verdict() {
        return change.flatMap(MarkChange::verdict).orElse(guidelineVerdict);
    }

    public double awarded() {
        return change.map(MarkChange::awarded).orElse(guidelineAwarded);
    }

    public boolean isUndecided() {
        return verdict() == Verdict.UNDECIDED;
    }

    public boolean isChanged() {
        return change.isPresent();
    }
}
