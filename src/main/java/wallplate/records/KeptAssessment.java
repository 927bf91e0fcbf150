package wallplate.records;

import wallplate.assessment.AssessedSheet;
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
}
