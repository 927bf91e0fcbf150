package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.DeferredSecurityContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;

/**
 * Keeps in the session who signed in: the account's id, its round of sessions and the moment, as one text. The account is
 * looked up anew at each request, so that a change of roles counts at once and a blocked account is out at once; and no
 * session breaks over a new version of a class.
 */
@Component
public class AccountSessions implements SecurityContextRepository {

    /** However busy somebody is: after that long the password is asked for again. */
    private static final Duration LASTS = Duration.ofHours(12);

    private static final String SIGNED_IN = "account";

    private final Accounts accounts;
    private final Clock clock;

    AccountSessions(Accounts accounts, Clock clock) {
        this.accounts = accounts;
        this.clock = clock;
    }

    /** Signs somebody in. The session has another id from then on, so that nobody can have laid one out before. */
    public void begin(Account account, HttpServletRequest request) {
        request.getSession();
        request.changeSessionId();
        keep(account, request);
    }

    private void keep(Account account, HttpServletRequest request) {
        String text = "%d %d %d".formatted(account.id(), account.sessionRound(), clock.instant().getEpochSecond());
        request.getSession().setAttribute(SIGNED_IN, text);
    }

    @Override
    public DeferredSecurityContext loadDeferredContext(HttpServletRequest request) {
        return new DeferredSecurityContext() {

            private SecurityContext context;

            @Override
            public SecurityContext get() {
                if (context == null) {
                    context = SecurityContextHolder.createEmptyContext();
                    signedIn(request).map(Acting::new).ifPresent(context::setAuthentication);
                }
                return context;
            }

            @Override
            public boolean isGenerated() {
                return get().getAuthentication() == null;
            }
        };
    }

    @Override
    @Deprecated
    public SecurityContext loadContext(HttpRequestResponseHolder holder) {
        return loadDeferredContext(holder.getRequest()).get();
    }

    private Optional<Account> signedIn(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        if (session == null || !(session.getAttribute(SIGNED_IN) instanceof String text)) {
            return Optional.empty();
        }
        String[] parts = text.split(" ", -1);
        Instant until = Instant.ofEpochSecond(Long.parseLong(parts[2])).plus(LASTS);
        return accounts.find(Long.parseLong(parts[0]))
                .filter(account -> !account.blocked()
                        && account.sessionRound() == Integer.parseInt(parts[1])
                        && clock.instant().isBefore(until));
    }

    /** Called by the filters that sign somebody in through a provider. */
    @Override
    public void saveContext(SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
        Authentication who = context.getAuthentication();
        Optional<Account> account = Acting.account(who);
        if (account.isPresent()) {
            keep(account.get(), request);
        } else if (request.getSession(false) != null) {
            request.getSession().removeAttribute(SIGNED_IN);
        }
    }

    @Override
    public boolean containsContext(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return session != null && session.getAttribute(SIGNED_IN) != null;
    }
}
