package wallplate.handouts;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The records of prepared files; a set or learner has at most one of a kind and language. */
public interface PreparedFiles {

    /** Has one made in place of an earlier one, whose content nobody is given any more; returns its number. */
    Asked ask(long subject, PreparedFile.Kind kind, Locale language);

    /**
     * @param id for the queue
     * @param letGo the name of the earlier content in the scan store; empty where there was none
     */
    record Asked(long id, Optional<String> letGo) {}

    Optional<PreparedFile> find(long id);

    Optional<PreparedFile> find(long subject, PreparedFile.Kind kind, Locale language);

    /** Says how far it is. */
    void progress(long id, int done, int sheets);

    /** Keeps a file that is in the store; false where nobody waits for it any more. */
    boolean ready(long id, String state, String content, long sizeBytes);

    void failed(long id);

    /** What marks and learners of a set were last changed by, so that two states of a set can be told apart. */
    String lastChanges(long classSetId);

    /** Takes away what was asked for before a moment; returns the names of contents that may be left over. */
    List<String> removeBefore(Instant moment);
}
