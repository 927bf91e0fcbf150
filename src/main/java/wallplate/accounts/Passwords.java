package wallplate.accounts;

import com.nulabinc.zxcvbn.Zxcvbn;
import java.util.List;
import java.util.Optional;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;

/** Which passwords are taken, and setting one. No letters or figures are prescribed (NIST SP 800-63B, 5.1.1.2). */
@Service
public class Passwords {

    /** The shortest and the longest, in letters. */
    public static final int SHORTEST = 12;

    public static final int LONGEST = 128;

    /** Of 0 to 4: 3 stands for more than 10^8 guesses, beyond every list of common passwords. */
    private static final int STRONG_ENOUGH = 3;

    /** The estimate takes long for long texts; the beginning says enough. */
    private static final int ESTIMATED = 64;

    private final Accounts accounts;
    private final PasswordEncoder encoder;
    private final Zxcvbn strength = new Zxcvbn();

    Passwords(Accounts accounts, PasswordEncoder encoder) {
        this.accounts = accounts;
        this.encoder = encoder;
    }

    /** Why a password is not taken. */
    public enum Fault {
        TOO_SHORT,
        TOO_LONG,
        EASILY_GUESSED
    }

    /** What is wrong with a password for somebody of that name; empty where it can be taken. */
    public Optional<Fault> fault(String password, String name) {
        int letters = password.codePointCount(0, password.length());
        if (letters < SHORTEST) {
            return Optional.of(Fault.TOO_SHORT);
        }
        if (letters > LONGEST || password.length() > LONGEST) {
            return Optional.of(Fault.TOO_LONG);
        }
        String beginning = password.substring(0, Math.min(password.length(), ESTIMATED));
        return strength.measure(beginning, List.of(name, "wallplate")).getScore() < STRONG_ENOUGH
                ? Optional.of(Fault.EASILY_GUESSED)
                : Optional.empty();
    }

    /** Sets the password of an account, and ends its sessions. */
    public void set(Account account, String password) {
        if (fault(password, account.name()).isPresent()) {
            throw new IllegalArgumentException("the password of account " + account.id() + " cannot be taken");
        }
        accounts.setPasswordHash(account.id(), encoder.encode(password));
    }

    public boolean matches(Account account, String password) {
        return password.length() <= LONGEST
                && accounts.passwordHash(account.id())
                        .filter(hash -> encoder.matches(password, hash))
                        .isPresent();
    }
}
