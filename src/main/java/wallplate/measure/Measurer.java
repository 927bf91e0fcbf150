package wallplate.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.sheet.LevelPage;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;

/**
 * Measures a sheet: from a level page to the value of every key that the task asks for.
 *
 * <p>The way is that of a careful teacher: the sloping lines first, then the level ones that end at the same break
 * line, the wall below them, what hangs at the eaves, and last the short things between lines already found.
 */
public final class Measurer {

    /** Every key that the task asks for, each measured, absent or uncertain with its reason. */
    public MeasuredSheet measure(LevelPage page, ExpectedDrawing expected) {
        return measure(page, expected, ChoiceLog.NONE);
    }

    /** The same, with every choice between readings shown to a log. */
    MeasuredSheet measure(LevelPage page, ExpectedDrawing expected, ChoiceLog log) {
        Optional<DrawingView> view = DrawingView.of(page);
        if (view.isEmpty()) {
            return nothingFound(expected, "no family of long sloping lines was found on the sheet");
        }
        return SheetMeasuring.measured(view.get(), page, expected, log);
    }

    private static MeasuredSheet nothingFound(ExpectedDrawing expected, String reason) {
        List<Measurement> measurements = expected.values().stream()
                .map(Expected::key)
                .map(key -> Measurement.uncertain(key, reason))
                .toList();
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }
}
