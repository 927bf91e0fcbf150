package wallplate.web.sets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import wallplate.records.ClassSet;
import wallplate.records.Learner;
import wallplate.records.MatchedBy;
import wallplate.records.SheetEntry;
import wallplate.records.SheetMatching;

/**
 * What a person should look at before trusting whose sheet is whose.
 *
 * @param twice sheets that say a learner who has another sheet of the set
 * @param otherTask sheets printed for another task
 * @param guessed sheets given in the order of the pile although the others say their learners themselves
 * @param nobody sheets without a learner that are not among {@code twice}
 * @param without learners without a sheet
 */
record Whose(
        List<Twice> twice,
        List<SheetEntry> otherTask,
        List<SheetEntry> guessed,
        List<SheetEntry> nobody,
        List<Learner> without) {

    /** A sheet that says a learner, and the sheet that this learner has. */
    record Twice(SheetEntry sheet, Learner learner, SheetEntry other) {}

    static Whose of(ClassSet classSet, List<SheetEntry> sheets, List<Learner> learners) {
        Map<Long, SheetEntry> byLearner = new LinkedHashMap<>();
        sheets.forEach(sheet -> sheet.learner().ifPresent(learner -> byLearner.put(learner.id(), sheet)));
        List<Twice> twice = twice(classSet, sheets, learners, byLearner);
        Set<Long> said = twice.stream().map(one -> one.sheet().id()).collect(Collectors.toSet());
        boolean saidByOthers =
                sheets.stream().anyMatch(sheet -> sheet.learner().isPresent() && says(sheet.matchedBy()));
        return new Whose(
                twice,
                sheets.stream().filter(sheet -> isOfAnotherTask(sheet, classSet)).toList(),
                sheets.stream()
                        .filter(sheet -> saidByOthers && sheet.learner().isPresent() && sheet.matchedBy() == MatchedBy.ORDER)
                        .toList(),
                sheets.stream()
                        .filter(sheet -> sheet.learner().isEmpty() && !said.contains(sheet.id()))
                        .toList(),
                learners.stream().filter(learner -> !byLearner.containsKey(learner.id())).toList());
    }

    private static List<Twice> twice(
            ClassSet classSet, List<SheetEntry> sheets, List<Learner> learners, Map<Long, SheetEntry> byLearner) {
        SheetMatching matching = new SheetMatching(
                classSet.task().id(), learners, sheets.stream().map(Whose::inPile).toList());
        List<Twice> twice = new ArrayList<>();
        for (SheetEntry sheet : sheets) {
            Optional<Learner> said = sheet.learner().isEmpty() && says(sheet.matchedBy())
                    ? matching.said(sheet.id())
                    : Optional.empty();
            said.filter(learner -> byLearner.containsKey(learner.id()))
                    .ifPresent(learner -> twice.add(
                            new Twice(sheet, learner, Objects.requireNonNull(byLearner.get(learner.id())))));
        }
        return twice;
    }

    private static SheetMatching.Pile inPile(SheetEntry sheet) {
        return new SheetMatching.Pile(
                sheet.id(),
                sheet.fileName(),
                sheet.code(),
                sheet.matchedBy() == MatchedBy.HAND,
                sheet.learner().map(Learner::id));
    }

    private static boolean says(MatchedBy by) {
        return by == MatchedBy.CODE || by == MatchedBy.FILE_NAME;
    }

    private static boolean isOfAnotherTask(SheetEntry sheet, ClassSet classSet) {
        return sheet.code()
                .filter(code -> !code.taskId().equals(classSet.task().id()))
                .isPresent();
    }

    /** Whether there is anything to look at while the set has a class list. */
    public boolean isInDoubt() {
        return !twice.isEmpty() || !otherTask.isEmpty() || !guessed.isEmpty() || !nobody.isEmpty() || !without.isEmpty();
    }
}
