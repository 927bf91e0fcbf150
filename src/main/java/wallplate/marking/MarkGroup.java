package wallplate.marking;

/**
 * Criteria that together earn no more than a maximum.
 *
 * @param id the word that the criteria name it by
 * @param maximum the most marks that its criteria bring together
 */
public record MarkGroup(String id, String title, double maximum) {}
