package wallplate.accounts;

import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Hashes passwords one after the other, in the order in which they came.
 *
 * <p>A hash keeps a core busy for a tenth of a second and holds 19 MiB. When a whole school signs in within the same minute, all hashes at
 * once would take every core from everybody's pages, and none of them would be ready sooner.
 */
final class OneAtATime implements PasswordEncoder {

    private final PasswordEncoder encoder;
    private final ReentrantLock turn = new ReentrantLock(true);

    OneAtATime(PasswordEncoder encoder) {
        this.encoder = encoder;
    }

    @Override
    public @Nullable String encode(@Nullable CharSequence password) {
        return inTurn(() -> encoder.encode(password));
    }

    @Override
    public boolean matches(@Nullable CharSequence password, @Nullable String hash) {
        return inTurn(() -> encoder.matches(password, hash));
    }

    /** Only looks at the hash's parameters. */
    @Override
    public boolean upgradeEncoding(@Nullable String hash) {
        return encoder.upgradeEncoding(hash);
    }

    private <T extends @Nullable Object> T inTurn(Supplier<T> work) {
        turn.lock();
        try {
            return work.get();
        } finally {
            turn.unlock();
        }
    }
}
