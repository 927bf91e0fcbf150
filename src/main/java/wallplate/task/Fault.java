package wallplate.task;

/**
 * One thing wrong in a task file.
 *
 * @param key the key it stands at, such as {@code rafter.overhang}
 * @param found what stands there, as text; empty where nothing does
 * @param accepted what would be right, in words
 */
public record Fault(String key, String found, String accepted) {

    /** One sentence for the teacher: the key, the value found, and what would be accepted. */
    public String message() {
        return found.isEmpty()
                ? "%s: is missing; accepted: %s".formatted(key, accepted)
                : "%s: found %s; accepted: %s".formatted(key, found, accepted);
    }
}
