package wallplate.web.access;

import static org.springframework.http.HttpMethod.GET;
import static org.springframework.http.HttpMethod.POST;
import static wallplate.accounts.Role.ADMINISTRATOR;
import static wallplate.accounts.Role.HEAD;
import static wallplate.accounts.Role.MODERATOR;
import static wallplate.accounts.Role.TEACHER;

import jakarta.servlet.http.HttpServletRequest;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.http.HttpMethod;
import wallplate.accounts.Account;
import wallplate.accounts.Role;

/**
 * Every address of the application and who may open it. An address that is not here is open to nobody; a test fails for a
 * page without a rule and for a rule without a page.
 *
 * <p>Teachers change what is their own. A head of department reads what is anybody's in the department, and decides on
 * moderations. Where an address names a record, {@link Reach} says which kind, and whose it must be.
 */
final class Addresses {

    private static final Set<Role> EVERYBODY = Set.of();
    private static final Set<Role> WITH_ACCOUNT = EnumSet.allOf(Role.class);
    private static final Set<Role> READING = EnumSet.of(TEACHER, HEAD);
    private static final Set<Role> TEACHING = EnumSet.of(TEACHER);
    private static final Set<Role> SEEING_SAMPLES = EnumSet.of(TEACHER, HEAD, MODERATOR);
    private static final Set<Role> SECOND_MARKING = EnumSet.of(MODERATOR);
    private static final Set<Role> DECIDING = EnumSet.of(HEAD);
    private static final Set<Role> LOOKING_AFTER = EnumSet.of(ADMINISTRATOR);

    static final List<Rule> RULES = List.of(
            // What the browser needs for any page, and what learners open with a code.
            open(GET, "/css/**"),
            open(GET, "/js/**"),
            open(GET, "/fonts/**"),
            open(GET, "/webjars/**"),
            open(GET, "/wallplate.svg"),
            open(GET, "/error"),
            open(POST, "/error"),
            open(GET, "/help"),
            open(GET, "/help/*"),
            open(POST, "/language"),
            open(GET, "/check"),
            open(POST, "/check"),
            open(GET, "/check/{code}"),
            open(POST, "/check/{code}"),
            open(GET, "/check/{code}/guide"),
            open(GET, "/feedback"),
            open(POST, "/feedback"),
            open(GET, "/feedback/{code}"),
            open(GET, "/feedback/{code}/page.png"),
            open(GET, "/feedback/{code}/screen.png"),
            open(GET, "/feedback/{code}/feedback.pdf"),
            // Signing in, and one's own account.
            open(GET, "/sign-in"),
            open(POST, "/sign-in"),
            open(POST, "/sign-out"),
            open(GET, "/set-password/{token}"),
            open(POST, "/set-password"),
            rule(GET, "/account", WITH_ACCOUNT, Reach.OWN_ACCOUNT),
            rule(POST, "/account/password", WITH_ACCOUNT, Reach.OWN_ACCOUNT),
            rule(POST, "/account/sign-out-elsewhere", WITH_ACCOUNT, Reach.OWN_ACCOUNT),
            rule(GET, "/", WITH_ACCOUNT, Reach.NOTHING),
            rule(GET, "/today/standing", WITH_ACCOUNT, Reach.NOTHING),
            // Looking after the installation.
            rule(GET, "/accounts", LOOKING_AFTER, Reach.NOTHING),
            rule(GET, "/accounts/new", LOOKING_AFTER, Reach.NOTHING),
            rule(POST, "/accounts", LOOKING_AFTER, Reach.NOTHING),
            rule(GET, "/accounts/{id}", LOOKING_AFTER, Reach.NOTHING),
            rule(POST, "/accounts/{id}/roles", LOOKING_AFTER, Reach.NOTHING),
            rule(POST, "/accounts/{id}/blocked", LOOKING_AFTER, Reach.NOTHING),
            rule(POST, "/accounts/{id}/link", LOOKING_AFTER, Reach.NOTHING),
            rule(GET, "/audit", EnumSet.of(ADMINISTRATOR, HEAD), Reach.NOTHING),
            // Tasks.
            rule(GET, "/tasks", READING, Reach.NOTHING),
            rule(GET, "/tasks/new", TEACHING, Reach.NOTHING),
            rule(POST, "/tasks", TEACHING, Reach.NOTHING),
            rule(POST, "/tasks/draw", TEACHING, Reach.NOTHING),
            rule(POST, "/tasks/preview", TEACHING, Reach.NOTHING),
            rule(GET, "/tasks/import", TEACHING, Reach.NOTHING),
            rule(POST, "/tasks/import", TEACHING, Reach.NOTHING),
            rule(GET, "/tasks/{id}", READING, Reach.TASK),
            rule(POST, "/tasks/{id}", TEACHING, Reach.TASK),
            rule(GET, "/tasks/{id}/edit", TEACHING, Reach.TASK),
            rule(GET, "/tasks/{id}/copy", TEACHING, Reach.TASK),
            rule(GET, "/tasks/{id}/guide", READING, Reach.TASK),
            rule(POST, "/tasks/{id}/variants", TEACHING, Reach.TASK),
            rule(POST, "/tasks/{id}/marks-shown", TEACHING, Reach.TASK),
            rule(GET, "/tasks/{id}/task.yml", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/model-answer.svg", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/model-answer.pdf", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/model-answer.dxf", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/guide.pdf", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/sheets.pdf", READING, Reach.TASK),
            rule(GET, "/tasks/{id}/guideline", READING, Reach.TASK),
            rule(POST, "/tasks/{id}/guideline", TEACHING, Reach.TASK),
            rule(GET, "/tasks/{id}/guideline/usual", TEACHING, Reach.TASK),
            rule(POST, "/tasks/{id}/guideline/criterion", TEACHING, Reach.TASK),
            // Classes and learners.
            rule(GET, "/classes", READING, Reach.NOTHING),
            rule(GET, "/classes/new", TEACHING, Reach.NOTHING),
            rule(POST, "/classes", TEACHING, Reach.NOTHING),
            rule(GET, "/classes/{id}", READING, Reach.CLASS),
            rule(POST, "/classes/{id}/move", TEACHING, Reach.CLASS),
            rule(POST, "/classes/{id}/shown", TEACHING, Reach.CLASS),
            rule(POST, "/classes/{id}/sets", TEACHING, Reach.CLASS),
            rule(POST, "/classes/{id}/list", TEACHING, Reach.CLASS),
            rule(GET, "/classes/{id}/list.csv", READING, Reach.CLASS),
            rule(GET, "/classes/{id}/list.xlsx", READING, Reach.CLASS),
            rule(GET, "/learners/{id}", READING, Reach.LEARNER),
            rule(POST, "/learners/{id}", TEACHING, Reach.LEARNER),
            rule(GET, "/learners/{id}/growth", READING, Reach.LEARNER),
            // Class sets.
            rule(GET, "/class-sets", READING, Reach.NOTHING),
            rule(GET, "/class-sets/new", TEACHING, Reach.NOTHING),
            rule(POST, "/class-sets", TEACHING, Reach.NOTHING),
            rule(GET, "/class-sets/{id}", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/standing", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/progress", READING, Reach.SET),
            rule(POST, "/class-sets/{id}/stop", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/go-on", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/release", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/withdraw", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/try-again", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/scans", TEACHING, Reach.SET),
            rule(GET, "/class-sets/{id}/scans/parts", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/scans/parts", TEACHING, Reach.SET),
            rule(GET, "/class-sets/{id}/learners", READING, Reach.SET),
            rule(POST, "/class-sets/{id}/learners", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/sheets/{sheetId}/learner", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/class-list", TEACHING, Reach.SET),
            rule(GET, "/class-sets/{id}/across", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/teach-again", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/items", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/check", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/guideline", READING, Reach.SET),
            rule(POST, "/class-sets/{id}/guideline", TEACHING, Reach.SET),
            rule(GET, "/class-sets/{id}/feedback-codes", TEACHING, Reach.SET),
            rule(POST, "/class-sets/{id}/feedback-codes", TEACHING, Reach.SET),
            rule(GET, "/class-sets/{id}/feedback.zip", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/feedback.pdf", READING, Reach.SET),
            rule(GET, "/class-sets/{id}/mark-sheet.csv", READING, Reach.SET),
            // Sheets and their pictures.
            rule(GET, "/sheets/{id}", READING, Reach.SHEET),
            rule(GET, "/sheets/{id}/result.json", READING, Reach.SHEET),
            rule(GET, "/sheets/{id}/feedback.pdf", READING, Reach.SHEET),
            rule(POST, "/sheets/{id}/marks/{criterion}", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/marks/{criterion}/restore", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/checked", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/unchecked", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/try-again", TEACHING, Reach.SHEET),
            rule(GET, "/sheets/{id}/scale", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/scale", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/scale/restore", TEACHING, Reach.SHEET),
            rule(GET, "/sheets/{id}/lines/{criterion}", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/lines/{criterion}", TEACHING, Reach.SHEET),
            rule(POST, "/sheets/{id}/lines/{criterion}/restore", TEACHING, Reach.SHEET),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}.png", SEEING_SAMPLES, Reach.PICTURE),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}/tiles/{column:\\d}-{row:\\d}.png", SEEING_SAMPLES, Reach.PICTURE),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}/part.png", SEEING_SAMPLES, Reach.PICTURE),
            // Moderation.
            rule(GET, "/class-sets/{id}/moderation", READING, Reach.SET),
            rule(POST, "/class-sets/{id}/moderation", READING, Reach.SET),
            rule(GET, "/moderations/{id}", SEEING_SAMPLES, Reach.SAMPLE),
            rule(GET, "/moderations/{id}/sheets/{place}", SECOND_MARKING, Reach.SAMPLE_TO_MARK),
            rule(POST, "/moderations/{id}/sheets/{place}", SECOND_MARKING, Reach.SAMPLE_TO_MARK),
            rule(POST, "/moderations/{id}/hand-in", SECOND_MARKING, Reach.SAMPLE_TO_MARK),
            rule(POST, "/moderations/{id}/decision", DECIDING, Reach.MODERATION),
            // Mark sheets.
            rule(GET, "/mark-sheets", READING, Reach.NOTHING),
            rule(GET, "/mark-sheets/new", TEACHING, Reach.NOTHING),
            rule(POST, "/mark-sheets", TEACHING, Reach.NOTHING),
            rule(GET, "/mark-sheets/term.xlsx", READING, Reach.NOTHING),
            rule(GET, "/mark-sheets/term.csv", READING, Reach.NOTHING),
            rule(GET, "/mark-sheets/{id}", READING, Reach.MARK_SHEET),
            rule(POST, "/mark-sheets/{id}/standings", TEACHING, Reach.MARK_SHEET),
            rule(POST, "/mark-sheets/{id}/submit", TEACHING, Reach.MARK_SHEET),
            rule(POST, "/mark-sheets/{id}/throw-away", TEACHING, Reach.MARK_SHEET),
            rule(POST, "/mark-sheets/{id}/corrections", READING, Reach.MARK_SHEET),
            rule(GET, "/mark-sheets/{id}/mark-sheet.csv", READING, Reach.MARK_SHEET),
            rule(GET, "/mark-sheets/{id}/mark-sheet.xlsx", READING, Reach.MARK_SHEET),
            rule(GET, "/mark-sheets/{id}/mark-sheet.pdf", READING, Reach.MARK_SHEET));

    private Addresses() {}

    /** The rule for a request: the first that fits. */
    static Optional<Rule> ruleFor(HttpServletRequest request) {
        return RULES.stream().filter(rule -> rule.variables(request).isPresent()).findFirst();
    }

    /** Whether a page that lists things, and names none, is open to somebody. */
    static boolean areOpen(String pattern, Optional<Account> who) {
        return RULES.stream()
                .filter(rule -> rule.method().equals(GET) && rule.pattern().equals(pattern))
                .anyMatch(rule -> rule.allows(who));
    }

    private static Rule open(HttpMethod method, String pattern) {
        return rule(method, pattern, EVERYBODY, Reach.NOTHING);
    }

    private static Rule rule(HttpMethod method, String pattern, Set<Role> roles, Reach reach) {
        return new Rule(method, pattern, roles, reach);
    }
}
