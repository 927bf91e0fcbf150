package wallplate.classes;

/**
 * One line of a class list that was taken in.
 *
 * @param line of the file, from 1
 * @param candidateNumber empty where there is none
 */
public record ListedLearner(int line, String name, String candidateNumber) {}
