package wallplate.accounts;

import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The accounts of this installation. The demonstration's is never among them. */
public interface Accounts {

    /** By name. */
    List<Account> all();

    boolean isEmpty();

    Optional<Account> find(long id);

    /** Whatever the case of the letters. */
    Optional<Account> named(String name);

    /** Those that are not blocked, by name. */
    List<Account> with(Role role);

    /** An account without a password; empty where the name is taken. */
    Optional<Account> add(String name, Set<Role> roles);

    /**
     * Puts other roles in place of the present ones.
     *
     * @return false where nobody would be left to look after the accounts; then nothing is changed
     */
    boolean setRoles(long id, Set<Role> roles);

    /**
     * Blocks an account and ends its sessions, or opens it again.
     *
     * @return false where nobody would be left to look after the accounts; then nothing is changed
     */
    boolean setBlocked(long id, boolean blocked);

    /** Puts a password's hash in place of the present one and ends every session of the account. */
    void setPasswordHash(long id, String hash);

    /** The same password hashed by another method; sessions go on. */
    void rehash(long id, String hash);

    Optional<String> passwordHash(long id);

    /** Ends every session of the account. */
    void endSessions(long id);

    /** Says that somebody signed in just now. */
    void signedIn(long id);
}
