package wallplate.audit;

import java.util.List;

/** What was done, in the order in which it was done. */
public interface AuditTrail {

    /** Who acts where no person does. */
    String THE_PROGRAM = "the program";

    /**
     * Adds an entry at the end; several servers may do so at once.
     *
     * <p>Within a transaction it is kept with it, and holds the trail's end until the transaction is over: let it be the last
     * thing in one.
     */
    AuditEntry append(String person, String act, String subject);

    /**
     * Entries, the newest first.
     *
     * @param before only entries with a lower number
     * @param containing only entries whose person, act or subject contains this, in any case; empty for all
     */
    List<AuditEntry> page(long before, String containing, int size);
}
