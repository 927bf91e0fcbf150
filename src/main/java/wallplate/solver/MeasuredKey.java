package wallplate.solver;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import wallplate.task.DrawingTask;

/**
 * One thing that is measured on a drawing of a detail, as its part describes it.
 *
 * @param key such as {@code rafter.depth}
 * @param label in the trade's words, such as "depth of the rafter"; {@code {support}} and {@code {supports}} stand for
 *     the task's own name of its purlins or battens
 * @param howMeasured from where to where, as a person would measure it
 * @param sizeKey the size of the task that it shows directly; empty where it follows from others
 * @param followsFrom the measured keys that it changes with, beside its own size in the task
 */
public record MeasuredKey(
        String key, String label, Kind kind, String howMeasured, Optional<String> sizeKey, List<String> followsFrom) {

    /** What a key's value is; the usual tolerance goes by it. */
    public enum Kind {
        /** Degrees. */
        ANGLE,
        /** A distance between parts, in millimetres on paper. */
        LENGTH,
        /** A width, depth or thickness of one part, in millimetres on paper. */
        SECTION_SIZE,
        /** A number of things. */
        COUNT,
        /** Whether something is drawn. */
        YES_NO,
        /** One of a few words. */
        WORD
    }

    public MeasuredKey {
        followsFrom = List.copyOf(followsFrom);
    }

    /** A key that shows a size of the task. */
    public static MeasuredKey of(String key, Kind kind, String sizeKey, String label, String howMeasured) {
        return new MeasuredKey(key, label, kind, howMeasured, Optional.of(sizeKey), List.of());
    }

    /** A key that the task does not state as such. */
    public static MeasuredKey derived(String key, Kind kind, String label, String howMeasured, String... followsFrom) {
        return new MeasuredKey(key, label, kind, howMeasured, Optional.empty(), Arrays.asList(followsFrom));
    }

    /** The label with the task's own words for its purlins or battens, such as "spacing of the purlins". */
    public String labelFor(DrawingTask task) {
        String support = task.sizes().word("support.name").orElse("support");
        String supports = support.endsWith("s") ? support : support + "s";
        return label.replace("{supports}", supports).replace("{support}", support);
    }
}
