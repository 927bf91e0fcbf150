package wallplate.records;

/** One line of a class list as it was handed in. */
public record ClassListEntry(String name, String candidateNumber) {}
