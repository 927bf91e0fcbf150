package wallplate.marking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipValue;

/**
 * Names the known slips that a wrong value fits.
 *
 * <p>A value fits a slip where it lies within a share of the criterion's own tolerance of what the slip would give, drawn
 * exactly or to the nearest millimetre. Where several fit, all are named, the nearest first: which it was is not guessed.
 */
final class SlipNaming {

    /** A slip is named within this share of the tolerance: closer than a right value need be, so that chance seldom names one. */
    private static final double SHARE_OF_TOLERANCE = 0.6;

    private static final String SWAPPED = "width-depth-swapped";
    private static final String MIRRORED = "mirrored";

    private final ExpectedDrawing expected;
    private final MeasuredSheet measured;
    private final Tolerances tolerances;

    SlipNaming(ExpectedDrawing expected, MeasuredSheet measured, Tolerances tolerances) {
        this.expected = expected;
        this.measured = measured;
        this.tolerances = tolerances;
    }

    /** The slips that a wrong value of this key fits, the nearest first. */
    List<SlipValue> slipsFor(String key, double tolerance) {
        if (finding(key) instanceof Finding.Word) {
            return List.of(new SlipValue(key, MIRRORED, 0, ""));
        }
        return fitting(key, tolerance).stream()
                .filter(slip -> !slip.slip().equals(SWAPPED) || partnerMayBeSwapped(key))
                .toList();
    }

    private List<SlipValue> fitting(String key, double tolerance) {
        if (!(finding(key) instanceof Finding.Quantity quantity)) {
            return List.of();
        }
        List<SlipValue> slips = new ArrayList<>();
        for (SlipValue slip : expected.slipsFor(key)) {
            if (misfit(key, slip, quantity.value()) <= SHARE_OF_TOLERANCE * tolerance) {
                slips.add(slip);
            }
        }
        slips.sort(Comparator.<SlipValue>comparingDouble(slip -> misfit(key, slip, quantity.value()))
                .thenComparing(SlipValue::slip));
        return slips;
    }

    private double misfit(String key, SlipValue slip, double value) {
        if (expected.value(key).orElseThrow() instanceof Expected.Length) {
            double rounded = Math.floor(slip.value() + 0.5);
            return new Expected.Length(key, 0, slip.value(), rounded, "").deviation(value);
        }
        return Math.abs(slip.value() - value);
    }

    /** Width and depth are only swapped together: a partner that is known and not swapped speaks against it. */
    private boolean partnerMayBeSwapped(String key) {
        String partner = key.endsWith(".width") ? key.replace(".width", ".depth") : key.replace(".depth", ".width");
        if (!finding(partner).isMeasured()) {
            return true;
        }
        double tolerance = expected.value(partner)
                .map(value -> tolerances.forValue(value).value())
                .orElse(0.0);
        return fitting(partner, tolerance).stream().anyMatch(slip -> slip.slip().equals(SWAPPED));
    }

    private Finding finding(String key) {
        return measured.measurement(key)
                .map(measurement -> measurement.finding())
                .orElse(new Finding.Absent());
    }
}
