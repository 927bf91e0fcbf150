package wallplate.web.access;

import org.springframework.http.HttpMethod;
import org.springframework.stereotype.Component;

/**
 * What whoever looks at a page may do next, for templates: they show no link and no form that would be refused. It asks the
 * same tables as the refusal itself, {@link Addresses} and {@link Reach}.
 *
 * <p>A pattern is written as it stands in the table, and the record that it names, if any, is given with it:
 * {@code @may.send('/class-sets/{id}/release', 7)}. A pattern that is not in the table is an error, not a refusal.
 */
@Component("may")
public class Permissions {

    private final Visitor visitor;
    private final Reach reach;

    Permissions(Visitor visitor, Reach reach) {
        this.visitor = visitor;
        this.reach = reach;
    }

    /** Whether a page that names no record is open to whoever looks. */
    public boolean open(String pattern) {
        return rule(HttpMethod.GET, pattern).allows(visitor.account());
    }

    /** Whether a page about a record is open to whoever looks. */
    public boolean open(String pattern, Object record) {
        return within(rule(HttpMethod.GET, pattern), record);
    }

    /** Whether whoever looks may send a form that names no record. */
    public boolean send(String pattern) {
        return rule(HttpMethod.POST, pattern).allows(visitor.account());
    }

    /** Whether whoever looks may send a form about a record. */
    public boolean send(String pattern, Object record) {
        return within(rule(HttpMethod.POST, pattern), record);
    }

    private boolean within(Rule rule, Object record) {
        return rule.allows(visitor.account())
                && visitor.account().filter(who -> reach.opens(rule, who, record.toString())).isPresent();
    }

    private static Rule rule(HttpMethod method, String pattern) {
        return Addresses.ruleOf(method, pattern)
                .orElseThrow(() -> new IllegalArgumentException(
                        "no rule for %s %s in the table of addresses".formatted(method, pattern)));
    }
}
