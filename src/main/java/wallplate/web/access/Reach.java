package wallplate.web.access;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import wallplate.accounts.Account;
import wallplate.accounts.Role;
import wallplate.ownership.Belonging;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.ownership.Share;

/**
 * Which records are within somebody's reach: a teacher's own, the department's for its head, the samples given to a
 * moderator, and the demonstration for whoever looks around.
 */
@Component
public class Reach {

    private final Belongings belongings;
    private final Visitor visitor;
    private final boolean demonstrationOpen;

    Reach(Belongings belongings, Visitor visitor, @Value("${wallplate.demonstration.open}") boolean demonstrationOpen) {
        this.belongings = belongings;
        this.visitor = visitor;
        this.demonstrationOpen = demonstrationOpen;
    }

    /** What whoever looks at the page at hand sees in lists. */
    public Share share() {
        Account account = visitor.account().orElseThrow();
        if (account.isLookingAround()) {
            return new Share.Demonstration();
        }
        return account.is(Role.HEAD) ? Share.everything() : new Share.OwnedBy(account.id());
    }

    /** The same of tasks, which teachers share. */
    public Share shareOfTasks() {
        return share() instanceof Share.Demonstration looking ? looking : Share.everything();
    }

    /**
     * Makes whoever looks the owner of what was made just now. What is made while nobody has an account is nobody's, so
     * that the head of department can hand it over later.
     */
    public void own(Kind kind, long id) {
        visitor.account()
                .filter(account -> !account.isDemonstration())
                .ifPresent(account -> belongings.give(kind, id, account.id()));
    }

    /** Whether a record is in the share that whoever looks sees in lists. */
    public boolean sees(Kind kind, long id) {
        return !(share() instanceof Share.OwnedBy owned)
                || belongings.find(kind, Long.toString(id))
                        .filter(found -> found.owners().contains(owned.account()))
                        .isPresent();
    }

    /** While nobody has an account whoever comes may do everything. */
    private static boolean seesAll(Account account) {
        return account.isDemonstration() && !account.isLookingAround();
    }

    /** Whether every record that a request names is open to somebody to whom its rule as such is open. */
    boolean opens(Rule rule, Account account, HttpServletRequest request) {
        if (seesAll(account)) {
            return true;
        }
        Map<String, String> variables = rule.variables(request).orElse(Map.of());
        String name = Subjects.of(rule).map(subject -> variables.getOrDefault(subject.name(), "")).orElse("");
        return opens(rule, account, name)
                && Subjects.sentAlong(rule).stream().allMatch(one -> Optional.ofNullable(request.getParameterValues(one.name()))
                        .map(Arrays::stream)
                        .orElseGet(Stream::empty)
                        // What is no number names no record, and the page says so.
                        .filter(value -> value.matches("\\s*[+-]?\\d+\\s*"))
                        .allMatch(value -> opens(rule, account, one, value.strip())));
    }

    /**
     * Whether the record that a rule's address names is open to somebody to whom the rule as such is open.
     *
     * @param name the record's number or name; of no account where the rule names no record
     */
    boolean opens(Rule rule, Account account, String name) {
        if (seesAll(account)) {
            return true;
        }
        Optional<Subject> subject = Subjects.of(rule);
        return subject.map(one -> opens(rule, account, one, name)).orElse(!Subjects.namesRecord(rule));
    }

    private boolean opens(Rule rule, Account account, Subject subject, String name) {
        Optional<Belonging> found = belongings.find(subject.kind(), name);
        if (found.isEmpty()) {
            return false;
        }
        if (rule.isReading() && found.get().demonstration() && demonstrationOpen && rule.allows(Optional.of(account))) {
            return true;
        }
        return asTeacher(rule, account, found.get(), subject)
                || asHead(rule, account, subject, name)
                || asModerator(rule, account, found.get());
    }

    private static boolean asTeacher(Rule rule, Account account, Belonging found, Subject subject) {
        boolean isOpen = found.owners().contains(account.id()) || (subject.isShared() && rule.onlyReads());
        return both(rule, account, Role.TEACHER) && isOpen;
    }

    private boolean asHead(Rule rule, Account account, Subject subject, String name) {
        return both(rule, account, Role.HEAD)
                && !belongings.waitsForSecondMarks(subject.kind(), name, account.id());
    }

    private static boolean asModerator(Rule rule, Account account, Belonging found) {
        return both(rule, account, Role.MODERATOR) && found.secondMarkers().contains(account.id());
    }

    private static boolean both(Rule rule, Account account, Role role) {
        return rule.roles().contains(role) && account.is(role);
    }

    /** Whether a request names a record that is there. */
    boolean isThere(Rule rule, HttpServletRequest request) {
        Map<String, String> variables = rule.variables(request).orElse(Map.of());
        return Subjects.of(rule)
                .flatMap(subject -> belongings.find(subject.kind(), variables.getOrDefault(subject.name(), "")))
                .isPresent();
    }
}
