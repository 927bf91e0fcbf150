package wallplate.classes;

import java.time.Instant;

/**
 * A class of a school year.
 *
 * @param numbersShown whether its learners go by their candidate numbers instead of their names
 * @param learners who is in it now
 * @param classSets how many sets its learners drew
 */
public record SchoolClass(
        long id,
        String name,
        SchoolYear year,
        boolean numbersShown,
        int learners,
        int classSets,
        Instant createdAt) {}
