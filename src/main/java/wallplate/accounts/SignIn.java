package wallplate.accounts;

import java.time.Duration;
import java.util.Optional;
import java.util.function.Predicate;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/** Signing in with a name and a password. */
@Service
public class SignIn {

    private final Accounts accounts;
    private final SignInWaits waits;
    private final PasswordEncoder encoder;

    /** What an unknown name's password is compared with, so that its answer takes as long as a known one's. */
    private final String nobodysHash;

    SignIn(Accounts accounts, SignInWaits waits, PasswordEncoder encoder) {
        this.accounts = accounts;
        this.waits = waits;
        this.encoder = encoder;
        this.nobodysHash = encoder.encode("nobody has this password");
    }

    /** What became of it. */
    public sealed interface Outcome {}

    public record SignedIn(Account account) implements Outcome {}

    /** @param account whose name was typed, where there is one; never to be told to whoever tries */
    public record Refused(Optional<Account> account) implements Outcome {}

    /** Too many tries in vain: nothing was looked at. */
    public record Wait(Duration left) implements Outcome {}

    /** @param address where the try comes from */
    public Outcome with(String name, String password, String address) {
        return with(name, password, address, account -> true);
    }

    /**
     * The same where passwords do not open every account.
     *
     * @param opens whether the right password opens an account; where not, the answer is that to a wrong one
     */
    public Outcome with(String name, String password, String address, Predicate<Account> opens) {
        SignInWaits.Key ofAccount = SignInWaits.Key.account(Account.key(name));
        SignInWaits.Key ofNetwork = SignInWaits.Key.network(Network.of(address));
        Optional<Duration> wait = waits.begin(ofNetwork);
        if (wait.isEmpty()) {
            wait = waits.begin(ofAccount);
            if (wait.isPresent()) {
                waits.takeBack(ofNetwork);
            }
        }
        if (wait.isPresent()) {
            return new Wait(wait.get());
        }
        Optional<Account> account = accounts.named(name);
        Optional<String> hash = account.map(Account::id).flatMap(accounts::passwordHash);
        boolean right = encoder.matches(cut(password), hash.orElse(nobodysHash)) && hash.isPresent();
        if (!right || account.get().blocked() || !opens.test(account.get())) {
            return new Refused(account);
        }
        waits.clear(ofAccount);
        waits.takeBack(ofNetwork);
        if (encoder.upgradeEncoding(hash.get())) {
            // The method of hashing changed since: the password is at hand now and at no other time.
            accounts.rehash(account.get().id(), encoder.encode(password));
        }
        accounts.signedIn(account.get().id());
        return new SignedIn(account.get());
    }

    private static String cut(String password) {
        return password.length() <= Passwords.LONGEST ? password : password.substring(0, Passwords.LONGEST + 1);
    }
}
