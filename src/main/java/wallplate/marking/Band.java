package wallplate.marking;

/**
 * Part marks: what is still given outside the tolerance.
 *
 * @param limit for one key, the deviation up to which the part marks are given, in the criterion's own unit; for
 *     several keys, how many of them must be right
 * @param marks fewer than the criterion's own
 */
public record Band(double limit, double marks) {}
