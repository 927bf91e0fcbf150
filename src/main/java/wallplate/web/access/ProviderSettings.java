package wallplate.web.access;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import wallplate.accounts.Role;

/**
 * How people sign in through the school's own OpenID Connect provider; not at all without an issuer.
 *
 * @param issuer the provider's address, below which it describes itself
 * @param name what the button says
 * @param nameClaim which claim becomes the name of an account that is made
 * @param rolesClaim which claim says what somebody may do here; empty where signing in makes no account
 * @param passwordsFor whom a password of this program opens an account beside it; without a provider everybody
 * @param roles which values of that claim stand for which role, by the role's word; an administrator is never made so
 */
@ConfigurationProperties("wallplate.sign-in.provider")
public record ProviderSettings(
        @DefaultValue("") String issuer,
        @DefaultValue("") String clientId,
        @DefaultValue("") String clientSecret,
        @DefaultValue("") String name,
        @DefaultValue("name") String nameClaim,
        @DefaultValue("") String rolesClaim,
        @DefaultValue("everybody") PasswordsFor passwordsFor,
        @DefaultValue Map<String, List<String>> roles) {

    /** Who may sign in with a password of this program where the school's provider is set. */
    public enum PasswordsFor {
        EVERYBODY,

        /** A way in for when the provider is away; everybody else signs in there, with what it asks for. */
        ADMINISTRATORS
    }

    public ProviderSettings {
        roles = Map.copyOf(roles);
        List<String> words = Arrays.stream(Role.values())
                .filter(role -> role != Role.ADMINISTRATOR)
                .map(Role::word)
                .toList();
        if (!words.containsAll(roles.keySet())) {
            throw new IllegalArgumentException(
                    "wallplate.sign-in.provider.roles: found %s; right would be %s".formatted(roles.keySet(), words));
        }
        if (!issuer.isEmpty() && clientId.isEmpty()) {
            throw new IllegalArgumentException(
                    "wallplate.sign-in.provider.client-id is missing; it is what the provider calls this program");
        }
    }

    public boolean isSet() {
        return !issuer.isEmpty();
    }

    /** Whether passwords open the accounts of administrators only. */
    boolean limitsPasswords() {
        return isSet() && passwordsFor == PasswordsFor.ADMINISTRATORS;
    }

    boolean makesAccounts() {
        return !rolesClaim.isEmpty();
    }

    /** What somebody with such values may do here. */
    Set<Role> rolesOf(Set<String> values) {
        Set<Role> found = EnumSet.noneOf(Role.class);
        roles.forEach((word, standing) -> {
            if (standing.stream().anyMatch(values::contains)) {
                Role.of(word).ifPresent(found::add);
            }
        });
        return found;
    }
}
