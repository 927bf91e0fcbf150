package wallplate.accounts;

import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.security.crypto.password.PasswordEncoder;

/**
 * Hashes passwords in the order in which they came, on no more than half of the cores.
 *
 * <p>A hash keeps a core busy for a tenth of a second and holds 7 MiB. When a whole school signs in within the same minute, all hashes at
 * once would take every core from everybody's pages, and none of them would be ready sooner.
 */
final class HashesInTurn implements PasswordEncoder {

    private final PasswordEncoder encoder;
    private final Semaphore turns = new Semaphore(Math.max(1, Runtime.getRuntime().availableProcessors() / 2), true);

    HashesInTurn(PasswordEncoder encoder) {
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
        turns.acquireUninterruptibly();
        try {
            return work.get();
        } finally {
            turns.release();
        }
    }
}
