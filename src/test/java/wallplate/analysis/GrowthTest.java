package wallplate.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import wallplate.marking.Verdict;
import wallplate.records.ClassSet;
import wallplate.records.LearnerHistory;
import wallplate.records.MarkEntry;
import wallplate.records.MatchedBy;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.statistics.ItemAnalysis;
import wallplate.web.DrawnSheets;

class GrowthTest {

    @Test
    void comparesPartsOfTheMarksWithTheMedianOfTheClass() {
        Growth growth = Growth.of(List.of(sitting(1, sheet(1, 6, 0), List.of(sheet(1, 6, 0), sheet(2, 8, 0), sheet(3, 9, 0)))));

        assertThat(growth.steps().get(0).part()).hasValue(0.6);
        assertThat(growth.steps().get(0).classMedian()).hasValue(0.8);
        assertThat(growth.steps().get(0).classSheets()).isEqualTo(3);
    }

    @Test
    void leavesOutSheetsThatAreNotDecided() {
        SheetEntry open = sheet(1, 6, 2);

        Growth.Step step = Growth.of(List.of(sitting(1, open, List.of(open)))).steps().get(0);

        assertThat(step.part()).isEmpty();
        assertThat(step.classMedian()).isEmpty();
    }

    @Test
    void followsACriterionOverTheTasksAndPutsTheWeakestFirst() {
        SheetEntry sheet = sheet(1, 6, 0);
        Growth growth = Growth.of(List.of(
                new Growth.Sitting(entry(1, sheet), List.of(mark(1, "pitch", 0), mark(1, "plate", 2)), List.of(sheet)),
                new Growth.Sitting(entry(2, sheet), List.of(mark(1, "pitch", 2), mark(1, "plate", 1)), List.of(sheet)),
                new Growth.Sitting(entry(3, sheet), List.of(mark(1, "fascia", 1)), List.of(sheet))));

        assertThat(growth.criteria()).extracting(Growth.Row::title).containsExactly("plate", "pitch");
        assertThat(growth.criteria().get(1).parts())
                .containsExactly(OptionalDouble.of(0), OptionalDouble.of(1), OptionalDouble.empty());
    }

    @Test
    void takesAnUndecidedMarkForMissingAndNotForNothing() {
        ItemAnalysis analysis = SetItems.of(List.of(
                mark(1, "pitch", 2), mark(1, "plate", 1), mark(2, "pitch", 1), mark(2, "plate", 2), undecided(3, "pitch"),
                mark(3, "plate", 2)));

        assertThat(analysis.learners()).isEqualTo(2);
        assertThat(analysis.leftOut()).isEqualTo(1);
        assertThat(analysis.items().get(0).facility().told()).contains(0.75);
    }

    private static Growth.Sitting sitting(long set, SheetEntry sheet, List<SheetEntry> ofClass) {
        return new Growth.Sitting(entry(set, sheet), List.of(), ofClass);
    }

    private static LearnerHistory.Entry entry(long set, SheetEntry sheet) {
        ClassSet classSet = new ClassSet(
                set, "Set", 1, "11B", 1, DrawnSheets.aTask(), false, Instant.EPOCH.plusSeconds(set), Optional.empty());
        return new LearnerHistory.Entry(classSet, sheet);
    }

    private static SheetEntry sheet(long id, double awarded, int undecided) {
        return new SheetEntry(
                id, 1, 1, "a.png", 1, Optional.empty(), SheetState.READ, Optional.empty(), awarded, 10, undecided, List.of(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), MatchedBy.ORDER);
    }

    private static MarkEntry mark(long sheet, String criterion, double awarded) {
        return mark(sheet, criterion, awarded, Verdict.MET);
    }

    private static MarkEntry undecided(long sheet, String criterion) {
        return mark(sheet, criterion, 0, Verdict.UNDECIDED);
    }

    private static MarkEntry mark(long sheet, String criterion, double awarded, Verdict verdict) {
        MarkEntry.Reading nothing = new MarkEntry.Reading(
                "", OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), "none", OptionalDouble.empty(),
                OptionalDouble.empty(), Optional.empty(), Optional.empty());
        return new MarkEntry(
                sheet, criterion, 1, criterion, Optional.empty(), verdict, awarded, 2, OptionalDouble.empty(), nothing,
                List.of(), "", Optional.empty());
    }
}
