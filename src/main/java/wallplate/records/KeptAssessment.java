package wallplate.records;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;

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

    /** The same with its marks in the words of a language: they are worded anew from the same measurements. */
    public KeptAssessment inWords(Locale language, DrawingTask task) {
        ExpectedDrawing expected = Solver.solve(task);
        return Guideline.read(expected) instanceof GuidelineReading.Accepted accepted
                ? new KeptAssessment(
                        page, measured, marked.inWordsOf(new Marker(language).mark(accepted.guideline(), expected, measured)))
                : this;
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
