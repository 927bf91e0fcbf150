package wallplate.accounts.jdbc;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import wallplate.accounts.SignInWaits;

/** Counts stay where the page that asked takes everything else back, so each step is a transaction of its own. */
@Repository
class JdbcSignInWaits implements SignInWaits {

    private final JdbcClient database;
    private final TransactionTemplate transaction;
    private final Clock clock;

    JdbcSignInWaits(JdbcClient database, TransactionTemplate transaction, Clock clock) {
        this.database = database;
        this.transaction = transaction;
        this.clock = clock;
    }

    private record Tries(int number, Instant triedAt, Instant openAt) {}

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public Optional<Duration> begin(Key key) {
        String hash = Hash.of(key.text());
        Instant now = now();
        database.sql("delete from sign_in_waits where tried_at < ?")
                .param(timestamp(now.minus(FORGOTTEN_AFTER)))
                .update();
        database.sql(
                        """
                        insert into sign_in_waits (key_hash, tries, tried_at, open_at) values (?, 0, ?, ?)
                        on conflict do nothing""")
                .params(hash, timestamp(now), timestamp(now))
                .update();
        return transaction.execute(state -> count(key, hash));
    }

    /** As databases keep it: a moment that was rounded up would lie ahead. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    /** The row is held while it is looked at: of many tries at once each counts. */
    private Optional<Duration> count(Key key, String hash) {
        Optional<Tries> found = database.sql("select tries, tried_at, open_at from sign_in_waits where key_hash = ? for update")
                .param(hash)
                .query((row, number) -> new Tries(
                        row.getInt("tries"),
                        row.getObject("tried_at", OffsetDateTime.class).toInstant(),
                        row.getObject("open_at", OffsetDateTime.class).toInstant()))
                .optional();
        // Only now, because others that held the row meanwhile have written a later moment than this try began at.
        Instant now = now();
        Tries tries = found.filter(last -> last.triedAt().isAfter(now.minus(key.forgottenAfter())))
                .orElse(new Tries(0, now, now));
        if (tries.openAt().isAfter(now)) {
            return Optional.of(Duration.between(now, tries.openAt()));
        }
        int next = tries.number() + 1;
        database.sql("update sign_in_waits set tries = ?, tried_at = ?, open_at = ? where key_hash = ?")
                .params(next, timestamp(now), timestamp(now.plus(key.waitAfter(next))), hash)
                .update();
        return Optional.empty();
    }

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void clear(Key key) {
        database.sql("delete from sign_in_waits where key_hash = ?")
                .param(Hash.of(key.text()))
                .update();
    }

    @Override
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void takeBack(Key key) {
        database.sql("update sign_in_waits set tries = tries - 1, open_at = tried_at where key_hash = ? and tries > 0")
                .param(Hash.of(key.text()))
                .update();
    }

    private static OffsetDateTime timestamp(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
