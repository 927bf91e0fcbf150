package wallplate.drafting.layout;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
    private final Set<String> dimensioned;

    /** @param dimensioned keys that a dimension gives already: a drawing gives each size once */
    PartNames(Sizes sizes, SizeFigures figures, boolean withSizes, Set<String> dimensioned) {
        this.sizes = sizes;
        this.figures = figures;
        this.withSizes = withSizes;
        this.dimensioned = Set.copyOf(dimensioned);
    }

    String label(String part) {
        String name = name(part);
        return withSizes ? withSizes(part, name) + withoutDimension(part) : name;
    }

    /** What no dimension found room for and no size of the part tells. */
    private String withoutDimension(String part) {
        String slope = part.equals("rafter") ? missing(" at ", "roof.pitch") : "";
        return slope
                + missing(", overhanging ", part + ".overhang")
                + missing(" at ", part + ".spacing", " centres")
                + missing(", the first at ", part + ".position");
    }

    private String missing(String before, String key) {
        return missing(before, key, "");
    }

    private String missing(String before, String key, String after) {
        return dimensioned.contains(key)
                ? ""
                : figures.ofKey(key).map(figure -> before + figure + after).orElse("");
    }

    boolean hasSizes(String part) {
        return sizes.has(PLACES.getOrDefault(part, part));
    }

    private String name(String part) {
        Optional<String> given = sizes.word(part + ".name");
        if (given.isPresent()) {
            return part.equals("support") ? given.get() + "s" : given.get();
        }
        return NAMES.getOrDefault(part, part.replace('-', ' '));
    }

    /** Two sizes stand before the name, as timber is ordered; one stands after it with its word. */
    private String withSizes(String part, String name) {
        String place = PLACES.getOrDefault(part, part);
        Optional<Size> across = size(place, "width", "wide").or(() -> size(place, "thickness", "thick"));
        Optional<Size> deep = size(place, "depth", "deep").or(() -> size(place, "board", "thick"));
        if (across.isPresent() && deep.isPresent()) {
            return across.get().figure() + " × " + deep.get().figure() + " " + name;
        }
        return across.or(() -> deep)
                .map(size -> name + " " + size.figure() + " " + size.word())
                .orElse(name);
    }

    private record Size(String figure, String word) {}

    private Optional<Size> size(String place, String key, String word) {
        String whole = place + "." + key;
        return dimensioned.contains(whole)
                ? Optional.empty()
                : figures.ofSize(whole).map(figure -> new Size(figure, word));
    }
}
