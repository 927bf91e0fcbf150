package wallplate.drafting.layout;

import java.util.Map;
import java.util.Optional;
import wallplate.task.Sizes;

/**
 * The trade's names for parts as lettered on the drawing, with their sizes where wanted.
 *
 * <p>A part that is not in the list is called by its own id, with spaces for hyphens.
 */
final class PartNames {

    private static final Map<String, String> NAMES = Map.of(
            "fascia", "fascia board",
            "brander", "branders",
            "ceiling", "ceiling board",
            "wall-plate", "wall plate",
            "barge-board", "barge board");

    /** Where in a task file a part's sizes stand, if not under its own name. */
    private static final Map<String, String> PLACES = Map.of("brander", "ceiling.brander", "post", "posts");

    private final Sizes sizes;
    private final SizeFigures figures;
    private final boolean withSizes;

    PartNames(Sizes sizes, SizeFigures figures, boolean withSizes) {
        this.sizes = sizes;
        this.figures = figures;
        this.withSizes = withSizes;
    }

    Optional<String> label(String part) {
        String name = name(part);
        return Optional.of(withSizes ? withSizes(part, name) : name);
    }

    private String name(String part) {
        Optional<String> given = sizes.word(part + ".name");
        if (given.isPresent()) {
            return part.equals("support") ? given.get() + "s" : given.get();
        }
        return NAMES.getOrDefault(part, part.replace('-', ' '));
    }

    private String withSizes(String part, String name) {
        String place = PLACES.getOrDefault(part, part);
        Optional<String> across = figures.ofSize(place + ".width").or(() -> figures.ofSize(place + ".thickness"));
        Optional<String> deep = figures.ofSize(place + ".depth").or(() -> figures.ofSize(place + ".board"));
        if (across.isPresent() && deep.isPresent()) {
            return across.get() + " × " + deep.get() + " " + name;
        }
        return across.or(() -> deep).map(size -> size + " " + name).orElse(name);
    }
}
