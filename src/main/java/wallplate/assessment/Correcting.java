package wallplate.assessment;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Segment;
import wallplate.measure.LinesByHand;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurer;
import wallplate.sheet.LevelPage;

/** Measures a sheet again from its level page, with what a person corrected. */
final class Correcting {

    private static final String NO_DRAWING =
            "No sloping lines are seen on this sheet, so that no line can be chosen. Decide about the marks by hand.";

    private final Measurer measurer;
    private final AssessedSheet.Read asRead;

    Correcting(Measurer measurer, AssessedSheet.Read asRead) {
        this.measurer = measurer;
        this.asRead = asRead;
    }

    /** A sheet that was measured again and is not marked yet, or why not. */
    sealed interface Outcome {

        record Again(LevelPage page, MeasuredSheet measured) implements Outcome {}

        record Not(String reason) implements Outcome {}
    }

    Outcome with(Corrections corrections) {
        CorrectedPage.Outcome outcome = CorrectedPage.of(asRead, corrections.bar());
        if (outcome instanceof CorrectedPage.Laid laid) {
            MeasuredSheet measured = laid.page().isCorrected()
                    ? measurer.measure(laid.page().page(), asRead.expected())
                    : asRead.measured();
            return withLines(laid.page(), measured, corrections.lines());
        }
        return new Outcome.Not(((CorrectedPage.Refused) outcome).reason());
    }

    private static Outcome withLines(
            CorrectedPage corrected, MeasuredSheet measured, Map<String, List<Segment>> chosenByKey) {
        if (chosenByKey.isEmpty()) {
            return new Outcome.Again(corrected.page(), measured);
        }
        Optional<LinesByHand> lines = LinesByHand.on(corrected.page());
        if (lines.isEmpty()) {
            return new Outcome.Not(NO_DRAWING);
        }
        MeasuredSheet sheet = measured;
        for (Map.Entry<String, List<Segment>> chosen : chosenByKey.entrySet()) {
            List<Segment> here = chosen.getValue().stream().map(corrected::fromRead).toList();
            LinesByHand.Outcome outcome = lines.get().measure(chosen.getKey(), here);
            if (outcome instanceof LinesByHand.Refused refused) {
                return new Outcome.Not(refused.reason());
            }
            sheet = sheet.with(((LinesByHand.Measured) outcome).measurement());
        }
        return new Outcome.Again(corrected.page(), sheet);
    }
}
