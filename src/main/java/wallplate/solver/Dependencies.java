package wallplate.solver;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wallplate.task.DrawingTask;

/**
 * Which measured key follows from which others, by the geometry of the task's detail.
 *
 * <p>A spacing along the slope follows from nothing but its own size; the number of supports follows from the pitch,
 * the overhang, the spacing and the width.
 */
public final class Dependencies {

    private final Map<String, List<String>> direct = new LinkedHashMap<>();

    private Dependencies(List<MeasuredKey> keys) {
        keys.forEach(key -> direct.put(key.key(), key.followsFrom()));
    }

    public static Dependencies of(DrawingTask task) {
        return new Dependencies(Solver.keys(task));
    }

    /** The keys that this one changes with directly; none for a key that is not known. */
    public Set<String> followsFrom(String key) {
        return new LinkedHashSet<>(direct.getOrDefault(key, List.of()));
    }

    /** The keys that this one changes with, directly or through others, the nearest first. */
    public Set<String> causes(String key) {
        Set<String> causes = new LinkedHashSet<>(followsFrom(key));
        int size;
        do {
            size = causes.size();
            for (String cause : List.copyOf(causes)) {
                causes.addAll(followsFrom(cause));
            }
        } while (causes.size() > size);
        causes.remove(key);
        return causes;
    }
}
