package wallplate.web.accounts;

import java.util.Optional;
import wallplate.accounts.Account;

/** The name of an account as somebody types it. */
final class AccountName {

    private AccountName() {}

    /** The key of the sentence that says what is wrong. */
    static Optional<String> fault(String name) {
        if (Account.isReserved(name)) {
            return Optional.of("accounts.name.taken");
        }
        return Account.isName(name) ? Optional.empty() : Optional.of("accounts.name.wrong");
    }
}
