package wallplate.classes;

import java.time.Instant;
import java.util.Optional;

/**
 * One learner's time in one class.
 *
 * @param person the same for all enrolments of one learner
 * @param position the place in the class list, from 1
 * @param candidateNumber empty where there is none
 * @param leftAt empty while the learner is in the class
 */
public record Enrolment(
        long id,
        long person,
        long classId,
        int position,
        String name,
        String candidateNumber,
        Instant joinedAt,
        Optional<Instant> leftAt) {}
