package wallplate.accounts;

import java.time.Duration;
import java.util.Optional;

/**
 * Links that open an account once, to set its password. What makes the link is told when it is made and kept as a hash only.
 */
public interface OneTimeLinks {

    /** How long a link can be used. */
    Duration LASTS = Duration.ofHours(24);

    /** A link for an account, in place of every earlier one of it. */
    String make(long accountId);

    /** A link that makes the first administrator, in place of every earlier one of this kind. */
    String makeForFirstAdministrator();

    /** What a link opens; empty where there is no such link, or no longer. */
    Optional<Opened> open(String token);

    /**
     * Uses a link up; of two who come at once only one does.
     *
     * @return false where it was used or has run out meanwhile
     */
    boolean use(String token);

    /** @param accountId empty where it is the link that makes the first administrator */
    record Opened(Optional<Long> accountId) {}
}
