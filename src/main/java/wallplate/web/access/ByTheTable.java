package wallplate.web.access;

import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;

/**
 * Lets a request through where the table of addresses says so and every record that it names is within reach; what is not
 * in the table, nobody gets to.
 */
@Component
@ConditionalOnWebApplication
class ByTheTable implements AuthorizationManager<RequestAuthorizationContext> {

    private final Reach reach;

    ByTheTable(Reach reach) {
        this.reach = reach;
    }

    @Override
    public AuthorizationDecision authorize(
            Supplier<? extends Authentication> who, RequestAuthorizationContext context) {
        Optional<Rule> rule = Addresses.ruleFor(context.getRequest());
        // Where everybody may come nobody is looked up.
        boolean allowed = rule.filter(
                        found -> found.isOpen() || allows(found, Acting.account(who.get()), context))
                .isPresent();
        return new AuthorizationDecision(allowed);
    }

    private boolean allows(Rule rule, Optional<Account> who, RequestAuthorizationContext context) {
        return rule.allows(who)
                && who.filter(account -> reach.opens(rule, account, context.getRequest())).isPresent();
    }
}
