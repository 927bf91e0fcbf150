package wallplate.records;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.measure.MeasuredSheet;

/**
 * What was found on a sheet, without its picture.
 *
 * @param page the level page's facts
 * @param marked the marks as the guideline gave them; what a person changed is kept apart
 */
public record KeptAssessment(PageFacts page, MeasuredSheet measured, MarkedSheet marked) {

    public static KeptAssessment of(AssessedSheet.Read sheet) {
        return new KeptAssessment(PageFacts.of(sheet.levelPage()), sheet.measured(), sheet.marked());
    }

    /** The marks with what a person decided about them. */
    public MarkedSheet markedAs(List<MarkEntry> standing) {
        Map<String, MarkEntry> byCriterion =
                standing.stream().collect(Collectors.toMap(MarkEntry::criterion, Function.identity()));
        List<Mark> marks = marked.marks().stream()
                .map(mark -> as(mark, byCriterion.get(mark.criterion())))
                .toList();
        return new MarkedSheet(marked.guideline(), marks, marked.groups());
    }

    private static Mark as(Mark mark, @Nullable MarkEntry standing) {
        if (standing == null || !standing.isChanged()) {
            return mark;
        }
        return new Mark(
                mark.criterion(),
                mark.title(),
                mark.key(),
                standing.verdict(),
                standing.awarded(),
                mark.available(),
                mark.expected(),
                mark.measured(),
                mark.tolerance(),
                mark.slips(),
                standing.change()
                        .map(MarkChange::reason)
                        .filter(reason -> !reason.isBlank())
                        .orElse(mark.feedback()));
    }
}
