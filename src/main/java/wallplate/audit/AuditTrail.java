package wallplate.audit;

import java.util.List;

/** What was done, in the order in which it was done. */
public interface AuditTrail {

    /** Adds an entry at the end; several servers may do so at once. */
    AuditEntry append(String person, String act, String subject);

    /**
     * Entries, the newest first.
     *
     * @param before only entries with a lower number
     * @param containing only entries whose person, act or subject contains this, in any case; empty for all
     */
    List<AuditEntry> page(long before, String containing, int size);
}
