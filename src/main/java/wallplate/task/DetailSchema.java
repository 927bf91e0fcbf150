package wallplate.task;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a task of one detail states: its parts, their sizes and the relations that must hold between them.
 *
 * <p>The task file's reading and checking, and a form for it, follow from this alone.
 *
 * @param id as in the task file, such as {@code eaves-section}
 * @param title what the detail is called
 * @param description one sentence on what is drawn
 * @param parts in the order of the task file
 */
public record DetailSchema(
        String id, String title, String description, List<PartSchema> parts, List<GeometryRule> rules) {

    public DetailSchema {
        parts = List.copyOf(parts);
        rules = List.copyOf(rules);
    }

    /** Every size and choice of every part, in the order of the task file. */
    public Stream<SizeKey> keys() {
        return parts.stream().flatMap(part -> part.keys().stream());
    }

    public Optional<SizeKey> key(String key) {
        return keys().filter(candidate -> candidate.key().equals(key)).findFirst();
    }

    public Optional<PartSchema> part(String name) {
        return parts.stream().filter(part -> part.name().equals(name)).findFirst();
    }

    /** The relations that these sizes break; sizes that are not there break none. */
    public List<GeometryRule> brokenRules(Sizes sizes) {
        return rules.stream().filter(rule -> rule.isBrokenBy(sizes)).toList();
    }
}
