package wallplate.records;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Photographs that learners have checked at home, with what came of them; each is there for its learner's visit and no longer. */
public interface SelfChecks {

    /** A photograph that was handed in: its number for the queue and the word in the address of its result. */
    record Added(long id, String token) {}

    /**
     * @param language of the advice, as a BCP 47 tag
     * @param before the verdicts of the check before this one, by criterion; empty where this is the first
     * @param content the photograph's name in the scan store
     */
    Added add(long taskId, String language, Map<String, String> before, String content);

    Optional<SelfCheckEntry> byToken(String token);

    Optional<SelfCheckEntry> find(long id);

    /** How many wait or are being read and came before this one. */
    int waitingBefore(long id);

    /** How many wait or are being read. */
    int waiting();

    /** Says that it is being read now; returns the number of this attempt, from 1, or 0 where there is nothing to read. */
    int begin(long id);

    /** Takes the beginning back, because the process that read it stops. */
    void handBack(long id);

    /** Says that the learner's page asked for it just now; a page that was left is open again. */
    void seen(long id);

    /** Says that the learner's page was left; it may be opened again within a moment. */
    void leaving(String token);

    /** Ends a visit at once; returns the names of contents that may be left over. */
    List<String> remove(String token);

    /**
     * Keeps what was found; the photograph itself is let go of.
     *
     * @return false where the visit is over
     */
    boolean keep(long id, KeptAssessment found, String screenPicture);

    /** Keeps why nothing could be found; the photograph is let go of. */
    void refuse(long id, String reason);

    /** Takes away what no page asked for since a moment, or was left before another; returns the names of contents that may be left over. */
    List<String> removeOver(Instant seenBefore, Instant leftBefore);
}
