package wallplate.accounts.jdbc;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.accounts.OneTimeLinks;

@Repository
class JdbcOneTimeLinks implements OneTimeLinks {

    /** 256 bits: too many to be guessed, so that a plain hash hides them well enough. */
    private static final int RANDOM_BYTES = 32;

    private final JdbcClient database;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    JdbcOneTimeLinks(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    @Transactional
    public String make(long accountId) {
        database.sql("delete from one_time_links where account_id = ? or expires_at < ?")
                .params(accountId, now())
                .update();
        return insert(accountId);
    }

    @Override
    @Transactional
    public String makeForFirstAdministrator() {
        database.sql("delete from one_time_links where account_id is null").update();
        return insert(null);
    }

    private String insert(@Nullable Long accountId) {
        byte[] bytes = new byte[RANDOM_BYTES];
        random.nextBytes(bytes);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        database.sql("insert into one_time_links (token_hash, account_id, made_at, expires_at) values (?, ?, ?, ?)")
                .params(Hash.of(token), accountId, now(), now().plus(LASTS))
                .update();
        return token;
    }

    @Override
    public Optional<Opened> open(String token) {
        return database.sql("select account_id from one_time_links where token_hash = ? and expires_at >= ?")
                .params(Hash.of(token), now())
                .query((row, number) -> new Opened(Optional.ofNullable(row.getObject("account_id", Long.class))))
                .optional();
    }

    @Override
    public boolean use(String token) {
        return database.sql("delete from one_time_links where token_hash = ? and expires_at >= ?")
                        .params(Hash.of(token), now())
                        .update()
                > 0;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
