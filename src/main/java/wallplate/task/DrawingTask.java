package wallplate.task;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a learner is asked to draw, complete and consistent: a task is only made by reading and checking one.
 *
 * @param id the task's own short name, lower case words joined by hyphens
 * @param title what stands over the drawing
 * @param detail which detail is drawn, such as {@code eaves-section}
 * @param sizes every size and choice of the detail's parts
 * @param marking the marking guideline as it stands in the file, empty where the default applies; the marking module
 *     knows its meaning
 */
public record DrawingTask(
        String id,
        String title,
        String detail,
        Scale scale,
        EavesSide eaves,
        Sizes sizes,
        SheetFormat sheet,
        Map<String, Object> marking) {

    public DrawingTask {
        marking = Collections.unmodifiableMap(new LinkedHashMap<>(marking));
    }

    /** The same task under another marking guideline. */
    public DrawingTask withMarking(Map<String, Object> other) {
        return new DrawingTask(id, title, detail, scale, eaves, sizes, sheet, other);
    }
}
