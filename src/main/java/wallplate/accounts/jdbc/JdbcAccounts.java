package wallplate.accounts.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Role;

@Repository
class JdbcAccounts implements Accounts {

    /** With the roles in the same row: asking for them row by row would take a second connection while the first is held. */
    private static final String ACCOUNTS =
            """
            select a.*, (select string_agg(r.role, ' ') from account_roles r where r.account_id = a.id) as roles
            from accounts a where a.id <> """
                    + Account.DEMONSTRATION;

    private final JdbcClient database;
    private final TransactionTemplate transaction;
    private final Clock clock;

    JdbcAccounts(JdbcClient database, TransactionTemplate transaction, Clock clock) {
        this.database = database;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    public List<Account> all() {
        return database.sql(ACCOUNTS + " order by a.name_key")
                .query((row, number) -> account(row))
                .list();
    }

    @Override
    public boolean isEmpty() {
        return database.sql("select count(*) from accounts where id <> " + Account.DEMONSTRATION)
                        .query(Integer.class)
                        .single()
                == 0;
    }

    @Override
    public Optional<Account> find(long id) {
        return database.sql(ACCOUNTS + " and a.id = ?")
                .param(id)
                .query((row, number) -> account(row))
                .optional();
    }

    @Override
    public Optional<Account> named(String name) {
        return database.sql(ACCOUNTS + " and a.name_key = ?")
                .param(Account.key(name))
                .query((row, number) -> account(row))
                .optional();
    }

    @Override
    public List<Account> with(Role role) {
        return all().stream()
                .filter(account -> account.is(role) && !account.blocked())
                .toList();
    }

    /** A transaction of its own, because PostgreSQL takes nothing more in one that broke. */
    @Override
    public Optional<Account> add(String name, Set<Role> roles) {
        try {
            return transaction.execute(state -> Optional.of(insert(name.strip(), roles)));
        } catch (DuplicateKeyException taken) {
            return Optional.empty();
        }
    }

    private Account insert(String name, Set<Role> roles) {
        var keys = new GeneratedKeyHolder();
        database.sql("insert into accounts (name, name_key, created_at) values (?, ?, ?)")
                .params(name, Account.key(name), now())
                .update(keys, "id");
        Number id = keys.getKeyAs(Number.class);
        if (id == null) {
            throw new IllegalStateException("the database gave no id");
        }
        insertRoles(id.longValue(), roles);
        return find(id.longValue()).orElseThrow();
    }

    private void insertRoles(long id, Set<Role> roles) {
        roles.stream()
                .sorted()
                .forEach(role -> database.sql("insert into account_roles (account_id, role) values (?, ?)")
                        .params(id, role.word())
                        .update());
    }

    @Override
    @Transactional
    public boolean setRoles(long id, Set<Role> roles) {
        if (!roles.contains(Role.ADMINISTRATOR) && !anotherAdministrator(id)) {
            return false;
        }
        database.sql("delete from account_roles where account_id = ?").param(id).update();
        insertRoles(id, roles);
        return true;
    }

    @Override
    @Transactional
    public boolean setBlocked(long id, boolean blocked) {
        if (blocked && !anotherAdministrator(id)) {
            return false;
        }
        database.sql("update accounts set blocked = ?, session_round = session_round + 1 where id = ?")
                .params(blocked, id)
                .update();
        return true;
    }

    /** Held until the change is written: two administrators do not put each other out at once. */
    private boolean anotherAdministrator(long id) {
        return database.sql(
                                """
                                select a.id from accounts a join account_roles r on r.account_id = a.id
                                where r.role = ? and not a.blocked order by a.id for update""")
                        .param(Role.ADMINISTRATOR.word())
                        .query(Long.class)
                        .list()
                        .stream()
                        .anyMatch(other -> other != id);
    }

    @Override
    public void setPasswordHash(long id, String hash) {
        database.sql("update accounts set password_hash = ?, session_round = session_round + 1 where id = ?")
                .params(hash, id)
                .update();
    }

    @Override
    public void rehash(long id, String hash) {
        database.sql("update accounts set password_hash = ? where id = ?")
                .params(hash, id)
                .update();
    }

    @Override
    public Optional<String> passwordHash(long id) {
        return database.sql("select password_hash from accounts where id = ? and password_hash is not null")
                .param(id)
                .query(String.class)
                .optional();
    }

    @Override
    public void endSessions(long id) {
        database.sql("update accounts set session_round = session_round + 1 where id = ?")
                .param(id)
                .update();
    }

    @Override
    public void signedIn(long id) {
        database.sql("update accounts set signed_in_at = ? where id = ?")
                .params(now(), id)
                .update();
    }

    private static Account account(ResultSet row) throws SQLException {
        return new Account(
                row.getLong("id"),
                row.getString("name"),
                roles(row.getString("roles")),
                row.getBoolean("blocked"),
                row.getString("password_hash") != null,
                row.getInt("session_round"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("signed_in_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant));
    }

    /** @param words with a space between them; null where the account has none */
    private static Set<Role> roles(@Nullable String words) {
        return words == null
                ? Set.of()
                : Arrays.stream(words.split(" ")).flatMap(word -> Role.of(word).stream()).collect(Collectors.toSet());
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
