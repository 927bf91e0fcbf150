package wallplate.accounts;

import java.time.Duration;
import java.util.Optional;

/**
 * Waits between sign-ins that fail, kept in the database so that several servers share them. A try is counted before
 * the password is looked at, so that many tries at once are no way around.
 */
public interface SignInWaits {

    /** Who waits: an account's name or an address, and how many tries are free before waits begin. */
    record Key(String text, int freeTries) {

        /** Whether or not there is such an account, so that a wait does not tell. */
        public static Key account(String nameKey) {
            return new Key("account " + nameKey, 4);
        }

        /** A whole school may come from one address. */
        public static Key address(String address) {
            return new Key("address " + address, 30);
        }

        /** 2, 4, 8 … seconds after each try beyond the free ones, up to five minutes. */
        public Duration waitAfter(int tries) {
            int beyond = tries - freeTries;
            return beyond <= 0 ? Duration.ZERO : Duration.ofSeconds(Math.min(300, 1L << Math.min(beyond, 9)));
        }
    }

    /** Counts a try, or says how long to wait first; then nothing is counted. */
    Optional<Duration> begin(Key key);

    /** Forgets the tries of a key. */
    void clear(Key key);

    /** Takes back the one try that was counted just now. */
    void takeBack(Key key);
}
