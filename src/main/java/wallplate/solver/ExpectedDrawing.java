package wallplate.solver;

import java.util.List;
import java.util.Optional;
import wallplate.task.DrawingTask;

/**
 * Everything that follows from a task: the drawing's lines and every key's value.
 *
 * @param lines in paper millimetres in the detail's own axes: origin at the heel point, x to the inside of the
 *     building, y up; to be mirrored where the task puts the eaves on the right
 * @param values one for each key that the task asks for, in the order of the detail's list
 * @param slips the values that known slips would give, by key and then by slip
 */
public record ExpectedDrawing(DrawingTask task, List<DrawnLine> lines, List<Expected> values, List<SlipValue> slips) {

    public ExpectedDrawing {
        lines = List.copyOf(lines);
        values = List.copyOf(values);
        slips = List.copyOf(slips);
    }

    /** The value expected for a key; empty where the task does not ask for it. */
    public Optional<Expected> value(String key) {
        return values.stream().filter(value -> value.key().equals(key)).findFirst();
    }

    public List<SlipValue> slipsFor(String key) {
        return slips.stream().filter(slip -> slip.key().equals(key)).toList();
    }
}
