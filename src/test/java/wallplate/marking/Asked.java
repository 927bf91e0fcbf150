package wallplate.marking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.task.Tasks;

/** What a test's task asks for, value by value; all else is that of the boathouse: 1:20, 26 degrees, purlins. */
public final class Asked {

    private final List<Expected> values = new ArrayList<>();
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

    public Asked marking(Map<String, Object> content) {
        marking = content;
        return this;
    }

    /** What the values ask for; all else is that of the boathouse. */
    public ExpectedDrawing drawing() {
        return new ExpectedDrawing(withMarking(boathouse(), marking), List.of(), values, List.of());
    }

    /** The task of the interchange page's example. */
    public static DrawingTask boathouse() {
        return ((TaskReading.Accepted) TaskFile.read(Tasks.BOATHOUSE)).task();
    }

    public static DrawingTask withMarking(DrawingTask task, Map<String, Object> marking) {
        return new DrawingTask(
                task.id(),
                task.title(),
                task.detail(),
                task.scale(),
                task.eaves(),
                task.sizes(),
                task.sheet(),
                marking);
    }
}
