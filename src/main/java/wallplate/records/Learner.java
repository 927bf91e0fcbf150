package wallplate.records;

/**
 * One learner of a class.
 *
 * @param position the place in the class list, from 1
 * @param candidateNumber the number used instead of the name where wanted; empty where there is none
 */
public record Learner(long id, int position, String name, String candidateNumber) {}
