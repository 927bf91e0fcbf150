package wallplate.task;

import java.util.List;

/**
 * One part of a detail and the sizes that a task states for it.
 *
 * @param name the part's place in the task file, such as {@code barge-board} or {@code ceiling}
 * @param label the trade's own word for it
 * @param optional whether a task may leave the part out
 * @param keys in the order of the task file
 */
public record PartSchema(String name, String label, boolean optional, List<SizeKey> keys) {

    public PartSchema {
        keys = List.copyOf(keys);
    }

    public static PartSchema required(String name, String label, SizeKey... keys) {
        return new PartSchema(name, label, false, List.of(keys));
    }

    public static PartSchema optional(String name, String label, SizeKey... keys) {
        return new PartSchema(name, label, true, List.of(keys));
    }
}
