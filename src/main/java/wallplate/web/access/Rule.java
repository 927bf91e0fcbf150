package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import wallplate.accounts.Account;
import wallplate.accounts.Role;

/**
 * Who may open an address.
 *
 * @param roles one of them is enough; none at all where everybody may, signed in or not
 * @param aboutOwnAccount whether it is about the account of whoever opens it: not for visitors, who have none
 */
record Rule(HttpMethod method, String pattern, Set<Role> roles, boolean aboutOwnAccount, PathPatternRequestMatcher matcher) {

    Rule(HttpMethod method, String pattern, Set<Role> roles, boolean aboutOwnAccount) {
        this(method, pattern, Set.copyOf(roles), aboutOwnAccount, PathPatternRequestMatcher.withDefaults().matcher(pattern));
    }

    boolean isOpen() {
        return roles.isEmpty();
    }

    /** Whether somebody may come here by what he or she is. */
    boolean allows(Optional<Account> who) {
        return isOpen() || who.filter(this::allows).isPresent();
    }

    private boolean allows(Account account) {
        if (account.isDemonstration() && aboutOwnAccount) {
            return false;
        }
        return account.isLookingAround() ? isReading() : account.isAnyOf(roles);
    }

    /** A page that teachers read and the head of department reads with them; no page to change something with. */
    boolean isReading() {
        return onlyReads() && roles.contains(Role.TEACHER) && roles.contains(Role.HEAD);
    }

    boolean onlyReads() {
        return method.equals(HttpMethod.GET);
    }

    /** The variables of the address, where the rule is about it; a head of an answer is asked for as the answer is. */
    Optional<Map<String, String>> variables(HttpServletRequest request) {
        HttpMethod asked = HttpMethod.valueOf(request.getMethod());
        if (!method.equals(HttpMethod.HEAD.equals(asked) ? HttpMethod.GET : asked)) {
            return Optional.empty();
        }
        var match = matcher.matcher(request);
        return match.isMatch() ? Optional.of(match.getVariables()) : Optional.empty();
    }
}
