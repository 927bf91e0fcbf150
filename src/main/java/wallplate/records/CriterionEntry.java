package wallplate.records;

/** A criterion by which sheets of a set were marked. */
public record CriterionEntry(String id, String title) {}
