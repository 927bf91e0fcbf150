package wallplate.solver;

/**
 * Something in a brief that is possible but unusual.
 *
 * @param key the size of the task that it is about, such as {@code support.spacing}
 * @param message what is unusual, with the value found and what is usual
 * @param source where the usual value stands; "common practice, no source" where it stands nowhere
 */
public record Advice(String key, String message, String source) {}
