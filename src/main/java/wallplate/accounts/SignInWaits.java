package wallplate.accounts;

import java.time.Duration;
import java.util.Optional;

/**
 * Waits between sign-ins that fail, kept in the database so that several servers share them. A try is counted before
 * the password is looked at, so that many tries at once are no way around.
 */
public interface SignInWaits {

    /** After that long without a try nothing is kept of anybody. */
    Duration FORGOTTEN_AFTER = Duration.ofHours(24);

    /**
     * Who waits: an account's name or a network.
     *
     * @param freeTries how many tries are free before waits begin
     * @param forgottenAfter how long after the last try all of them are forgotten
     */
    record Key(String text, int freeTries, Duration forgottenAfter) {

        /** Whether or not there is such an account, so that a wait does not tell. */
        public static Key account(String nameKey) {
            return new Key("account " + nameKey, 4, FORGOTTEN_AFTER);
        }

        /**
         * A whole school may come from one network: its teachers sign in within the same minute of the morning, and some of them mistype.
         * So tries in vain of half a day fit in, and the night forgets them; what keeps a single password from being guessed are the waits of its account.
         */
        public static Key network(String network) {
            return new Key("address " + network, 300, Duration.ofHours(1));
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
