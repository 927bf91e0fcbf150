package wallplate.web.moderation;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Role;
import wallplate.ownership.Belonging;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;

/** Who can be given a sample of a class set: whoever may mark samples and does not have the set. */
@Component
class SecondMarkers {

    private final Accounts accounts;
    private final Belongings belongings;

    SecondMarkers(Accounts accounts, Belongings belongings) {
        this.accounts = accounts;
        this.belongings = belongings;
    }

    /** Whether samples are given to accounts, and not to names that are typed because nobody has an account yet. */
    boolean haveAccounts() {
        return !accounts.isEmpty();
    }

    List<Account> of(long classSetId) {
        Set<Long> owners = belongings.find(Kind.CLASS_SET, Long.toString(classSetId))
                .map(Belonging::owners)
                .orElse(Set.of());
        return accounts.with(Role.MODERATOR).stream()
                .filter(account -> !owners.contains(account.id()))
                .toList();
    }

    Optional<Account> named(long classSetId, String name) {
        return of(classSetId).stream()
                .filter(account -> Account.key(account.name()).equals(Account.key(name)))
                .findFirst();
    }
}
