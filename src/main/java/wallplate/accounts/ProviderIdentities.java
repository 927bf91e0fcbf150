package wallplate.accounts;

import java.util.Optional;
import java.util.Set;

/**
 * Who accounts are at the school's own provider. Bound is the pair that never goes to somebody else (OpenID Connect Core 1.0,
 * 5.7: {@code iss} and {@code sub}), never a name or an address, which may be given away or chosen.
 */
public interface ProviderIdentities {

    /** Somebody as the provider knows him or her. */
    record Identity(String issuer, String subject) {}

    /** @param madeThere whether the account was made by signing in there; then its roles follow what the provider says */
    record Bound(long account, boolean madeThere) {}

    Optional<Bound> find(Identity identity);

    boolean isBound(long account);

    /**
     * Binds an account that is there.
     *
     * @return false where either is bound already; then nothing is changed
     */
    boolean bind(Identity identity, long account);

    /** Makes an account for somebody; empty where another account has the name. */
    Optional<Account> make(Identity identity, String name, Set<Role> roles);
}
