package wallplate.marking;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.DrawnScale;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipFit;
import wallplate.solver.Slips;
import wallplate.task.Scale;

/**
 * Names the known slips that the wrong values of a sheet fit.
 *
 * <p>Where several fit, all are named, the nearest first: which it was is not guessed.
 */
final class SlipNaming {

    private static final String WRONG_SCALE = "wrong-scale";

    private final ExpectedDrawing expected;
    private final MeasuredSheet measured;
    private final Tolerances tolerances;
    private final Wording wording;
    private final Slips slips;
    private final Optional<Scale> otherScale;

    SlipNaming(ExpectedDrawing expected, MeasuredSheet measured, Tolerances tolerances, Wording wording) {
        this.expected = expected;
        this.measured = measured;
        this.tolerances = tolerances;
        this.wording = wording;
        Map<String, Double> drawn = quantities(measured);
        this.slips = Slips.of(expected, drawn);
        this.otherScale = DrawnScale.of(expected, drawn);
    }

    private static Map<String, Double> quantities(MeasuredSheet measured) {
        Map<String, Double> quantities = new TreeMap<>();
        measured.measurements().forEach(measurement -> {
            if (measurement.finding() instanceof Finding.Quantity quantity) {
                quantities.put(measurement.key(), quantity.value());
            }
        });
        return quantities;
    }

    /** The slips that a wrong value of this key fits, the nearest first. */
    List<SlipFit> slipsFor(String key, double tolerance) {
        Optional<SlipFit> scale = scaleOfTheSheet(key);
        if (scale.isPresent()) {
            return List.of(scale.get());
        }
        if (otherScale.isPresent() && expected.value(key).orElseThrow() instanceof Expected.Length) {
            // On a sheet at another scale a length that this does not explain has two causes at least: none is named.
            return List.of();
        }
        return fitting(key, tolerance);
    }

    /** The scale at which the whole sheet is drawn, where it explains this length, too. */
    private Optional<SlipFit> scaleOfTheSheet(String key) {
        if (otherScale.isEmpty()
                || !(expected.value(key).orElseThrow() instanceof Expected.Length asked)
                || !(finding(key) instanceof Finding.Quantity drawn)) {
            return Optional.empty();
        }
        Scale other = otherScale.get();
        double value = other.onPaper(asked.realMm());
        double deviation = Math.abs(drawn.value() - value);
        if (deviation > tolerances.forValue(asked).value()) {
            return Optional.empty();
        }
        return Optional.of(
                new SlipFit(key, WRONG_SCALE, "", value, deviation, 1, true, wording.wholeSheetAtScale(asked, drawn, other)));
    }

    private List<SlipFit> fitting(String key, double tolerance) {
        Finding found = finding(key);
        if (found instanceof Finding.Quantity quantity) {
            return slips.fitting(key, quantity.value(), quantity.uncertainty(), tolerance);
        }
        Optional<SlipFit> fit = found instanceof Finding.Word word
                ? slips.fitting(key, word.word())
                : found instanceof Finding.YesNo yesNo ? slips.fitting(key, yesNo.yes()) : Optional.empty();
        return fit.stream().toList();
    }

    private Finding finding(String key) {
        return measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElseGet(Finding.Absent::new);
    }
}
