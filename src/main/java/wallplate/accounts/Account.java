package wallplate.accounts;

import java.time.Instant;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Somebody who may sign in.
 *
 * @param name what is typed to sign in, and what stands beside everything that the person does
 * @param hasPassword whether the person has set one; until then only a one-time link opens the account
 * @param sessionRound sessions of an earlier round count no longer
 */
public record Account(
        long id,
        String name,
        Set<Role> roles,
        boolean blocked,
        boolean hasPassword,
        int sessionRound,
        Instant createdAt,
        Optional<Instant> signedInAt) {

    /** The id of the account that visitors without one act as; it is laid into every database and nobody can sign in to it. */
    public static final long DEMONSTRATION = 0;

    private static final Set<String> RESERVED = Set.of("demonstration", "visitor", "unknown");

    /** The longest name, in letters. */
    public static final int LONGEST_NAME = 60;

    public Account {
        // In the order in which they are declared, so that pages list them alike.
        roles = Collections.unmodifiableSet(roles.isEmpty() ? EnumSet.noneOf(Role.class) : EnumSet.copyOf(roles));
    }

    /** Whoever looks around without an account: teacher, second marker and head in one. */
    public static Account demonstration() {
        return new Account(
                DEMONSTRATION,
                "demonstration",
                EnumSet.of(Role.TEACHER, Role.MODERATOR, Role.HEAD),
                false,
                false,
                1,
                Instant.EPOCH,
                Optional.empty());
    }

    /** Whoever has no account while others have: reads the invented set, and changes nothing. */
    public static Account lookingAround() {
        Account whole = demonstration();
        return new Account(
                whole.id, whole.name, EnumSet.noneOf(Role.class), false, false, 1, Instant.EPOCH, Optional.empty());
    }

    /** Whether an account may have that name. */
    public static boolean isName(String name) {
        return name.length() >= 2
                && name.length() <= LONGEST_NAME
                && name.matches("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N} .,'’@_-]*")
                && !isReserved(name);
    }

    /** Whether a name stands in the audit trail for nobody's account. */
    public static boolean isReserved(String name) {
        return RESERVED.contains(key(name));
    }

    /** A name as it is compared: without regard to the case of its letters. */
    public static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    public boolean isDemonstration() {
        return id == DEMONSTRATION;
    }

    public boolean isLookingAround() {
        return isDemonstration() && roles.isEmpty();
    }

    public boolean is(Role role) {
        return roles.contains(role);
    }

    public boolean isAnyOf(Set<Role> some) {
        return roles.stream().anyMatch(some::contains);
    }
}
