package wallplate.accounts;

import java.util.EnumSet;
import org.springframework.boot.test.context.TestComponent;

/** Makes accounts that can sign in, all with one password. */
@TestComponent
class AccountsWithPassword {

    static final String PASSWORD = "purlin kettle sober ostrich";

    private final Accounts accounts;
    private final Passwords passwords;

    AccountsWithPassword(Accounts accounts, Passwords passwords) {
        this.accounts = accounts;
        this.passwords = passwords;
    }

    Account add(String name, Role role) {
        Account made = accounts.add(name, EnumSet.of(role)).orElseThrow();
        passwords.set(made, PASSWORD);
        return accounts.find(made.id()).orElseThrow();
    }
}
