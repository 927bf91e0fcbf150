package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;

/**
 * Has whoever is not signed in act as the demonstration, where that is open: with everything while nobody has an account,
 * and from then on reading what belongs to the demonstration.
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
                ? new Acting(visitor.withoutAccount())
                : super.createAuthentication(request);
    }
}
