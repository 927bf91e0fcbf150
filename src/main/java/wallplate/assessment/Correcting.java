package wallplate.assessment;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Segment;
import wallplate.measure.LinesByHand;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurer;
import wallplate.sheet.BarByHand;
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
        if (corrections.bar().isEmpty()) {
            return withLines(asRead.levelPage(), asRead.measured(), corrections, Optional.empty());
        }
        Corrections.Ticks ticks = corrections.bar().get();
        double bar = asRead.expected().task().sheet().referenceBarMm();
        BarByHand.Outcome outcome = BarByHand.calibrate(asRead.levelPage(), ticks.left(), ticks.right(), bar);
        if (outcome instanceof BarByHand.Calibrated calibrated) {
            MeasuredSheet measured = measurer.measure(calibrated.page(), asRead.expected());
            return withLines(calibrated.page(), measured, corrections, Optional.of(calibrated.fromBefore()));
        }
        return new Outcome.Not(((BarByHand.Refused) outcome).reason());
    }

    private static Outcome withLines(
            LevelPage page, MeasuredSheet measured, Corrections corrections, Optional<PlaneMap> fromRead) {
        if (corrections.lines().isEmpty()) {
            return new Outcome.Again(page, measured);
        }
        Optional<LinesByHand> lines = LinesByHand.on(page);
        if (lines.isEmpty()) {
            return new Outcome.Not(NO_DRAWING);
        }
        MeasuredSheet sheet = measured;
        for (Map.Entry<String, List<Segment>> chosen : corrections.lines().entrySet()) {
            List<Segment> here = chosen.getValue().stream()
                    .map(piece -> fromRead.map(map -> map.apply(piece)).orElse(piece))
                    .toList();
            LinesByHand.Outcome outcome = lines.get().measure(chosen.getKey(), here);
            if (outcome instanceof LinesByHand.Refused refused) {
                return new Outcome.Not(refused.reason());
            }
            sheet = sheet.with(((LinesByHand.Measured) outcome).measurement());
        }
        return new Outcome.Again(page, sheet);
    }
}
