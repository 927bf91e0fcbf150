package wallplate.web.accounts;

import java.util.Optional;
import java.util.Set;
import wallplate.accounts.Account;

/** The name of an account as somebody types it. */
final class AccountName {

    /** Names that stand in the audit trail for nobody's account. */
    private static final Set<String> RESERVED = Set.of("demonstration", "visitor", "unknown");

    private AccountName() {}

    /** The key of the sentence that says what is wrong. */
    static Optional<String> fault(String name) {
        boolean fits = name.length() <= Account.LONGEST_NAME && name.matches("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N} .,'’@_-]*");
        if (RESERVED.contains(Account.key(name))) {
            return Optional.of("accounts.name.taken");
        }
        return name.length() >= 2 && fits ? Optional.empty() : Optional.of("accounts.name.wrong");
    }
}
