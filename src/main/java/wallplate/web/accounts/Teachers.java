package wallplate.web.accounts;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Role;
import wallplate.ownership.Belonging;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.web.page.Words;

/** Who can have records, and who has one, for the pages. */
@Component("teachers")
public class Teachers {

    private final Accounts accounts;
    private final Belongings belongings;
    private final Words words;

    Teachers(Accounts accounts, Belongings belongings, Words words) {
        this.accounts = accounts;
        this.belongings = belongings;
        this.words = words;
    }

    /** Those to whom records can be handed over, by name. */
    public List<Account> all() {
        return accounts.with(Role.TEACHER);
    }

    Optional<Account> find(@Nullable Long id) {
        return Optional.ofNullable(id).flatMap(one -> all().stream().filter(account -> account.id() == one).findFirst());
    }

    /** The names of those to whom a record belongs, in words. */
    public String names(Kind kind, long id) {
        List<String> names = belongings.find(kind, Long.toString(id)).map(Belonging::owners).stream()
                .flatMap(owners -> owners.stream().sorted())
                .flatMap(owner -> accounts.find(owner).stream())
                .map(Account::name)
                .toList();
        return names.isEmpty() ? words.say("handover.nobody") : String.join(", ", names);
    }
}
