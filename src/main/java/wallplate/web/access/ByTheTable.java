package wallplate.web.access;

import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.stereotype.Component;

/** Lets a request through where the table of addresses says so; what is not in the table, nobody gets to. */
@Component
@ConditionalOnWebApplication
class ByTheTable implements AuthorizationManager<RequestAuthorizationContext> {

    @Override
    public AuthorizationDecision authorize(
            Supplier<? extends Authentication> who, RequestAuthorizationContext context) {
        Optional<Rule> rule = Addresses.ruleFor(context.getRequest());
        // Where everybody may come nobody is looked up.
        boolean allowed = rule.filter(
                        found -> found.isOpen() || found.allows(Acting.account(who.get())))
                .isPresent();
        return new AuthorizationDecision(allowed);
    }
}
