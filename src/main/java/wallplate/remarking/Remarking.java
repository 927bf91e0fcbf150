package wallplate.remarking;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Mark;
import wallplate.marking.MarkPreview;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.PlainNumber;

/** Marks the sheets of a set again from what was measured on them. */
@Service
public class Remarking {

    private final Sheets sheets;
    private final ClassSets classSets;
    private final GuidelineVersions versions;
    private final Clock clock;

    Remarking(Sheets sheets, ClassSets classSets, GuidelineVersions versions, Clock clock) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.versions = versions;
        this.clock = clock;
    }

    /** What a guideline would make of a set; nothing is changed. */
    public RemarkOutcome preview(ClassSet classSet, Map<String, Object> marking) {
        ExpectedDrawing expected = Solver.solve(classSet.task().withMarking(marking));
        if (Guideline.read(expected) instanceof GuidelineReading.Refused refused) {
            return new RemarkOutcome.Refused(refused.faults());
        }
        Guideline guideline = ((GuidelineReading.Accepted) Guideline.read(expected)).guideline();
        Map<Long, List<MarkEntry>> standing =
                sheets.marksOfSet(classSet.id()).stream().collect(Collectors.groupingBy(MarkEntry::sheetId));
        List<SheetPreview> previews = new ArrayList<>();
        for (SheetEntry sheet : sheets.of(classSet.id())) {
            sheets.assessment(sheet.id())
                    .map(kept -> preview(sheet, kept, standing.getOrDefault(sheet.id(), List.of()), guideline, expected))
                    .ifPresent(previews::add);
        }
        return new RemarkOutcome.Marked(new SetPreview(versionOf(classSet), guideline, previews));
    }

    private static SheetPreview preview(
            SheetEntry sheet,
            KeptAssessment kept,
            List<MarkEntry> standing,
            Guideline guideline,
            ExpectedDrawing expected) {
        MarkedSheet marked = new Marker().mark(guideline, expected, kept.measured());
        List<HandMark> byHand = standing.stream()
                .filter(MarkEntry::isChanged)
                .filter(entry -> entry.change().flatMap(MarkChange::verdict).isPresent())
                .map(entry -> new HandMark(entry, marked.mark(entry.criterion())))
                .toList();
        MarkedSheet after = new KeptAssessment(kept.page(), kept.measured(), marked).markedAs(entries(marked, byHand));
        return new SheetPreview(
                sheet,
                marked,
                MarkPreview.between(kept.markedAs(standing), after),
                after.available(),
                after.undecided(),
                byHand);
    }

    /** The new marks with what a person decided laid over them. */
    private static List<MarkEntry> entries(MarkedSheet marked, List<HandMark> byHand) {
        Map<String, HandMark> hands = byHand.stream()
                .collect(Collectors.toMap(hand -> hand.standing().criterion(), Function.identity()));
        List<MarkEntry> entries = MarkEntry.ofUnkept(marked);
        return entries.stream().map(entry -> withHand(entry, hands.get(entry.criterion()))).toList();
    }

    private static MarkEntry withHand(MarkEntry entry, @Nullable HandMark hand) {
        if (hand == null) {
            return entry;
        }
        MarkChange change = hand.standing().change().orElseThrow();
        return entry.withChange(new MarkChange(
                change.criterion(),
                change.verdict(),
                Math.min(change.awarded(), entry.available()),
                change.reason(),
                change.changedBy(),
                change.changedAt()));
    }

    /**
     * Lays a guideline over a set: its sheets, and those that are read later, are marked by it.
     *
     * <p>A sheet on which something is open that was not open before waits for a person again.
     *
     * @param by who has it done
     */
    @Transactional
    public RemarkOutcome apply(ClassSet classSet, Map<String, Object> marking, String by) {
        RemarkOutcome outcome = preview(classSet, marking);
        if (outcome instanceof RemarkOutcome.Marked marked) {
            apply(classSet, marking, marked.preview(), by);
        }
        return outcome;
    }

    private void apply(ClassSet classSet, Map<String, Object> marking, SetPreview preview, String by) {
        current(classSet).ifPresent(guideline -> versions.keep(classSet.taskId(), guideline, by));
        versions.keep(classSet.taskId(), preview.guideline(), by);
        classSets.replaceTask(classSet.id(), classSet.task().withMarking(marking));
        for (SheetPreview sheet : preview.sheets()) {
            sheet.byHand().stream().filter(HandMark::isTooHigh).forEach(hand -> lower(sheet, hand, preview, by));
            sheets.markAgain(sheet.sheet().id(), sheet.marked());
            if (sheet.undecidedAfter() > sheet.sheet().undecided()) {
                sheets.setChecked(sheet.sheet().id(), false);
            }
        }
        versions.add(
                classSet.id(),
                new GuidelineRun(
                        preview.fromVersion(),
                        preview.guideline().version(),
                        preview.sheets().size(),
                        preview.changed().size(),
                        by,
                        clock.instant()));
    }

    /** Marks given by hand stand, but no criterion gives more than it has. */
    private void lower(SheetPreview sheet, HandMark hand, SetPreview preview, String by) {
        Mark after = hand.after().orElseThrow();
        MarkChange change = hand.standing().change().orElseThrow();
        String reason = "%s (%s by hand before guideline %s, which has %s)"
                .formatted(
                        change.reason(),
                        PlainNumber.text(change.awarded()),
                        preview.guideline().version(),
                        PlainNumber.text(after.available()))
                .strip();
        sheets.change(
                sheet.sheet().id(),
                new MarkChange(change.criterion(), change.verdict(), after.available(), reason, by, clock.instant()));
    }

    /** The version that a set's task carries. */
    public String versionOf(ClassSet classSet) {
        return current(classSet).map(Guideline::version).orElse("");
    }

    private static Optional<Guideline> current(ClassSet classSet) {
        return Guideline.read(Solver.solve(classSet.task())) instanceof GuidelineReading.Accepted accepted
                ? Optional.of(accepted.guideline())
                : Optional.empty();
    }
}
