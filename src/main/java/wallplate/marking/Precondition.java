package wallplate.marking;

/**
 * What must be drawn before a criterion earns anything, such as two supports before their spacing.
 *
 * @param key a count
 * @param atLeast the fewest that must be drawn
 */
public record Precondition(String key, int atLeast) {}
