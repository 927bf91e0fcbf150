package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import wallplate.accounts.Account;

/**
 * Has whoever is not signed in act as the demonstration, for as long as nobody has an account: records have no owners yet,
 * so that a visitor would see everybody's.
 */
final class VisitorFilter extends AnonymousAuthenticationFilter {

    private final Visitor visitor;

    VisitorFilter(Visitor visitor) {
        super("demonstration");
        this.visitor = visitor;
    }

    @Override
    protected Authentication createAuthentication(HttpServletRequest request) {
        return visitor.demonstrationOpen()
                ? new Acting(Account.demonstration())
                : super.createAuthentication(request);
    }
}
