package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import wallplate.accounts.Account;

/** Has whoever is not signed in act as the demonstration. */
final class VisitorFilter extends AnonymousAuthenticationFilter {

    VisitorFilter() {
        super("demonstration");
    }

    @Override
    protected Authentication createAuthentication(HttpServletRequest request) {
        return new Acting(Account.demonstration());
    }
}
