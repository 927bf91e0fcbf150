package wallplate.solver;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.task.DrawingTask;

/** A version of a task with which one part is practised again. */
public final class FollowUpTask {

    /** As a task file may have it. */
    private static final int LONGEST_ID = 60;

    private static final int LONGEST_TITLE = 120;
    private static final String AGAIN = "-again-";
    private static final int TRIED = 12;

    private FollowUpTask() {}

    /**
     * An equally hard version in which as many sizes of the part as possible are others, so that the first answer does not
     * help. The same task and part give the same version; empty where the task's sizes leave no room for another one.
     *
     * @param part such as {@code gutter}; for one that has no sizes of its own any other version
     * @param partName as it stands in the title
     */
    public static Optional<DrawingTask> of(DrawingTask task, String part, String partName) {
        DrawingTask plain = named(task, "task", "Task");
        List<DrawingTask> versions = Variants.of(plain, Variants.usualRanges(plain), part.hashCode(), TRIED);
        return versions.stream()
                .max(Comparator.comparingLong(version -> changed(task, version, part)))
                .map(version -> named(version, id(task, part), title(task, partName)));
    }

    private static DrawingTask named(DrawingTask task, String id, String title) {
        return new DrawingTask(
                id, title, task.detail(), task.scale(), task.eaves(), task.sizes(), task.sheet(), task.marking());
    }

    private static String title(DrawingTask task, String partName) {
        String end = ", again: " + partName;
        int room = LONGEST_TITLE - end.length();
        return task.title().length() <= room ? task.title() + end : task.title().substring(0, room - 1) + "…" + end;
    }

    /** The id of the version for a part, which a printed code can hold. */
    public static String id(DrawingTask task, String part) {
        String end = AGAIN + part;
        int room = LONGEST_ID - end.length();
        return task.id().length() <= room ? task.id() + end : task.id().substring(0, room) + end;
    }

    private static long changed(DrawingTask task, DrawingTask version, String part) {
        String own = part.equals("roof") ? "pitch" : part;
        return task.sizes().asMap().entrySet().stream()
                .filter(size -> size.getKey().equals(own) || size.getKey().startsWith(own + "."))
                .filter(size -> !size.getValue().equals(version.sizes().asMap().get(size.getKey())))
                .count();
    }
}
