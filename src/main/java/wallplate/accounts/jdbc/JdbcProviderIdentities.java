package wallplate.accounts.jdbc;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.ProviderIdentities;
import wallplate.accounts.Role;

@Repository
class JdbcProviderIdentities implements ProviderIdentities {

    private final JdbcClient database;
    private final Accounts accounts;
    private final Clock clock;

    JdbcProviderIdentities(JdbcClient database, Accounts accounts, Clock clock) {
        this.database = database;
        this.accounts = accounts;
        this.clock = clock;
    }

    @Override
    public Optional<Bound> find(Identity identity) {
        return database.sql("select account_id, made_there from provider_identities where issuer = ? and subject = ?")
                .params(identity.issuer(), identity.subject())
                .query((row, number) -> new Bound(row.getLong("account_id"), row.getBoolean("made_there")))
                .optional();
    }

    @Override
    public boolean isBound(long account) {
        return database.sql("select count(*) from provider_identities where account_id = ?")
                        .param(account)
                        .query(Integer.class)
                        .single()
                > 0;
    }

    @Override
    public boolean bind(Identity identity, long account) {
        return insert(identity, account, false);
    }

    private boolean insert(Identity identity, long account, boolean madeThere) {
        return database.sql(
                                """
                                insert into provider_identities (issuer, subject, account_id, made_there, bound_at)
                                values (?, ?, ?, ?, ?) on conflict do nothing""")
                        .params(
                                identity.issuer(),
                                identity.subject(),
                                account,
                                madeThere,
                                clock.instant().atOffset(ZoneOffset.UTC))
                        .update()
                > 0;
    }

    @Override
    @Transactional
    public Optional<Account> make(Identity identity, String name, Set<Role> roles) {
        // A refused insertion would undo this transaction, so that it is not tried where the name is taken.
        if (accounts.named(name).isPresent()) {
            return Optional.empty();
        }
        Optional<Account> made = accounts.add(name, roles);
        made.ifPresent(account -> {
            if (!insert(identity, account.id(), true)) {
                throw new IllegalStateException("this person got an account at the same moment");
            }
        });
        return made;
    }
}
