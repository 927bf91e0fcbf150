package wallplate.web.access;

import java.util.Optional;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;

/** Who looks at the page at hand, for the pages. */
@Component("visitor")
public class Visitor {

    private final Accounts accounts;
    private final boolean openBySetting;

    Visitor(Accounts accounts, @Value("${wallplate.demonstration.open}") boolean openBySetting) {
        this.accounts = accounts;
        this.openBySetting = openBySetting;
    }

    /** The account of whoever is signed in, or the demonstration's. */
    public Optional<Account> account() {
        return Acting.account(SecurityContextHolder.getContext().getAuthentication());
    }

    public boolean isSignedIn() {
        return account().filter(account -> !account.isDemonstration()).isPresent();
    }

    /** The name of whoever is signed in; empty where nobody is. */
    public String name() {
        return isSignedIn() ? account().orElseThrow().name() : "";
    }

    /** Whether one may look around without an account. */
    public boolean demonstrationOpen() {
        return openBySetting;
    }

    /** Whether whoever looks has no account, and others have: then the demonstration can be read, and nothing changed. */
    public boolean isLookingAround() {
        return account().filter(Account::isLookingAround).isPresent();
    }

    /** What somebody without an account acts as, where one may look around. */
    Account withoutAccount() {
        return accounts.isEmpty() ? Account.demonstration() : Account.lookingAround();
    }
}
