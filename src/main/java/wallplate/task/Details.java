package wallplate.task;

import java.util.List;
import java.util.Optional;
import wallplate.task.detail.EavesSectionSchema;
import wallplate.task.detail.MonoPitchSectionSchema;

/** The details that can be drawn. A new one is registered here, and its solver with the solver module. */
public final class Details {

    private static final List<DetailSchema> ALL = List.of(EavesSectionSchema.schema(), MonoPitchSectionSchema.schema());

    private Details() {}

    public static List<DetailSchema> all() {
        return ALL;
    }

    public static Optional<DetailSchema> find(String id) {
        return ALL.stream().filter(detail -> detail.id().equals(id)).findFirst();
    }

    /**
     * The schema of a task that was read and checked.
     *
     * @throws IllegalArgumentException for a detail that is not registered
     */
    public static DetailSchema of(DrawingTask task) {
        return find(task.detail())
                .orElseThrow(() -> new IllegalArgumentException("no detail is called " + task.detail()));
    }
}
