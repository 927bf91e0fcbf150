package wallplate.web.access;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import wallplate.accounts.Account;

/** Somebody who acts on a page: signed in, or looking around as the demonstration. */
public final class Acting extends AbstractAuthenticationToken {

    private static final long serialVersionUID = 1L;

    private final transient Account account;

    Acting(Account account) {
        super(account.roles().stream()
                .map(role -> new SimpleGrantedAuthority("ROLE_" + role.name()))
                .toList());
        this.account = account;
        setAuthenticated(true);
    }

    /** The account behind a request; none where nobody is signed in and the demonstration is not open. */
    public static Optional<Account> account(@Nullable Authentication who) {
        return who instanceof Acting acting ? Optional.of(acting.account) : Optional.empty();
    }

    @Override
    public Account getPrincipal() {
        return account;
    }

    @Override
    public Object getCredentials() {
        return List.of();
    }

    @Override
    public String getName() {
        return account.name();
    }
}
