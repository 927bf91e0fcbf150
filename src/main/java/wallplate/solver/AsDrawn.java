package wallplate.solver;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.task.DetailSchema;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.SizeKey;
import wallplate.task.Sizes;

/** A task with the sizes that a learner really drew in the place of those that were asked. */
final class AsDrawn {

    private final DrawingTask task;
    private final DetailSchema schema;

    AsDrawn(DrawingTask task) {
        this.task = task;
        this.schema = Details.of(task);
    }

    /**
     * Puts drawn values in, in the order of the detail's keys. A value with which the detail could not be built, such
     * as a plate wider than the wall, is left as it was asked.
     */
    DrawingTask with(Map<String, Double> drawnPaperValues) {
        Sizes sizes = task.sizes();
        for (MeasuredKey key : Solver.keys(task)) {
            Double drawn = drawnPaperValues.get(key.key());
            if (drawn == null) {
                continue;
            }
            Sizes changed = changed(sizes, key, drawn);
            if (canBeBuilt(changed)) {
                sizes = changed;
            }
        }
        return new DrawingTask(
                task.id(),
                task.title(),
                task.detail(),
                task.scale(),
                task.eaves(),
                sizes,
                task.sheet(),
                task.marking());
    }

    private Sizes changed(Sizes sizes, MeasuredKey key, double drawn) {
        boolean angle = key.kind() == MeasuredKey.Kind.ANGLE;
        double real = angle ? drawn : drawn * task.scale().denominator();
        if (key.sizeKey().isPresent()) {
            return sizes.has(key.sizeKey().get())
                    ? replaced(sizes, key.sizeKey().get(), real)
                    : sizes;
        }
        if (key.key().equals("post.position") && sizes.has("posts")) {
            return replaced(sizes, "posts.span", real * sizes.number("posts.equal-spaces"));
        }
        return sizes;
    }

    private static Sizes replaced(Sizes sizes, String key, double value) {
        Map<String, Object> values = new LinkedHashMap<>(sizes.asMap());
        values.put(key, value);
        return Sizes.of(values);
    }

    private boolean canBeBuilt(Sizes sizes) {
        List<SizeKey> keys = schema.keys().toList();
        boolean inRange = keys.stream()
                .filter(key -> sizes.has(key.key()))
                .allMatch(key ->
                        !(key instanceof SizeKey.Quantity quantity) || quantity.allows(sizes.number(quantity.key())));
        return inRange && schema.brokenRules(sizes).isEmpty();
    }
}
