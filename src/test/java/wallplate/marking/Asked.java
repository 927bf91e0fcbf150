package wallplate.marking;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipValue;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;
import wallplate.task.Scale;
import wallplate.task.SheetFormat;
import wallplate.task.Sizes;

/** What a test's task asks for, value by value; the scale is 1:20 and the supports are purlins. */
public final class Asked {

    private final List<Expected> values = new ArrayList<>();
    private final List<SlipValue> slips = new ArrayList<>();
    private Map<String, Object> marking = Map.of();

    public static Asked asked() {
        return new Asked();
    }

    public Asked length(String key, double realMm) {
        double exact = realMm / 20;
        values.add(new Expected.Length(key, realMm, exact, Math.floor(exact + 0.5), realMm + " / 20"));
        return this;
    }

    public Asked angle(String key, double degrees) {
        values.add(new Expected.Angle(key, degrees, "given"));
        return this;
    }

    public Asked count(String key, int number) {
        values.add(new Expected.Count(key, number, "counted"));
        return this;
    }

    public Asked yes(String key) {
        values.add(new Expected.YesNo(key, true));
        return this;
    }

    public Asked word(String key, String word) {
        values.add(new Expected.Word(key, word));
        return this;
    }

    public Asked slip(String key, String slip, double value) {
        slips.add(new SlipValue(key, slip, value, "It seems to be " + slip + "."));
        return this;
    }

    public Asked marking(Map<String, Object> content) {
        marking = content;
        return this;
    }

    public ExpectedDrawing drawing() {
        Map<String, Object> sizes = new LinkedHashMap<>();
        sizes.put("support.name", "purlin");
        DrawingTask task = new DrawingTask(
                "test-eaves",
                "Eaves of a test",
                "eaves-section",
                new Scale(20),
                EavesSide.LEFT,
                Sizes.of(sizes),
                new SheetFormat("A4", 297, 210, 100),
                marking);
        return new ExpectedDrawing(task, List.of(), values, slips);
    }
}
