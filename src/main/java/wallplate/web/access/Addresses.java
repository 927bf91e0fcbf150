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
 * <p>Teachers make and change records. A head of department reads them, decides on moderations and hands records over. A
 * moderator gets to samples and never to a set, so to no first mark. The table speaks of roles; whose a record has to be is
 * asked by {@link Subjects}.
 */
final class Addresses {

    private static final Set<Role> EVERYBODY = Set.of();
    private static final Set<Role> WITH_ACCOUNT = EnumSet.allOf(Role.class);
    private static final Set<Role> READING = EnumSet.of(TEACHER, HEAD);
    private static final Set<Role> TEACHING = EnumSet.of(TEACHER);
    private static final Set<Role> SEEING_SAMPLES = EnumSet.of(TEACHER, HEAD, MODERATOR);
    private static final Set<Role> SECOND_MARKING = EnumSet.of(MODERATOR);
    private static final Set<Role> DECIDING = EnumSet.of(HEAD);
    private static final Set<Role> STANDING_FOR_RECORDS = EnumSet.of(ADMINISTRATOR, HEAD);
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
            open(GET, "/check/{code}/results/{token}"),
            open(POST, "/check/{code}/keep"),
            open(POST, "/check/{code}/end"),
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
            own(GET, "/account"),
            own(POST, "/account/password"),
            own(POST, "/account/provider"),
            own(POST, "/account/sign-out-elsewhere"),
            rule(GET, "/", WITH_ACCOUNT),
            rule(GET, "/today/standing", WITH_ACCOUNT),
            // Looking after the installation.
            rule(GET, "/accounts", LOOKING_AFTER),
            rule(GET, "/accounts/new", LOOKING_AFTER),
            rule(POST, "/accounts", LOOKING_AFTER),
            rule(GET, "/accounts/{id}", LOOKING_AFTER),
            rule(POST, "/accounts/{id}/roles", LOOKING_AFTER),
            rule(POST, "/accounts/{id}/blocked", LOOKING_AFTER),
            rule(POST, "/accounts/{id}/link", LOOKING_AFTER),
            rule(GET, "/audit", STANDING_FOR_RECORDS),
            rule(GET, "/privacy", STANDING_FOR_RECORDS),
            rule(POST, "/privacy/run", STANDING_FOR_RECORDS),
            // Handing records over.
            rule(GET, "/handover", DECIDING),
            rule(POST, "/handover", DECIDING),
            rule(POST, "/tasks/{id}/owner", DECIDING),
            rule(POST, "/classes/{id}/owner", DECIDING),
            rule(POST, "/class-sets/{id}/owner", DECIDING),
            rule(POST, "/mark-sheets/{id}/owner", DECIDING),
            rule(POST, "/moderations/{id}/moderator", READING),
            // Tasks.
            rule(GET, "/tasks", READING),
            rule(GET, "/tasks/new", TEACHING),
            rule(POST, "/tasks", TEACHING),
            rule(POST, "/tasks/draw", TEACHING),
            rule(POST, "/tasks/preview", TEACHING),
            rule(GET, "/tasks/import", TEACHING),
            rule(POST, "/tasks/import", TEACHING),
            rule(GET, "/tasks/{id}", READING),
            rule(POST, "/tasks/{id}", TEACHING),
            rule(GET, "/tasks/{id}/edit", TEACHING),
            rule(GET, "/tasks/{id}/copy", TEACHING),
            rule(GET, "/tasks/{id}/guide", READING),
            rule(POST, "/tasks/{id}/variants", TEACHING),
            rule(POST, "/tasks/{id}/marks-shown", TEACHING),
            rule(GET, "/tasks/{id}/task.yml", READING),
            rule(GET, "/tasks/{id}/model-answer.svg", READING),
            rule(GET, "/tasks/{id}/model-answer.pdf", READING),
            rule(GET, "/tasks/{id}/model-answer.dxf", READING),
            rule(GET, "/tasks/{id}/guide.pdf", READING),
            rule(GET, "/tasks/{id}/sheets.pdf", READING),
            rule(GET, "/tasks/{id}/guideline", READING),
            rule(POST, "/tasks/{id}/guideline", TEACHING),
            rule(GET, "/tasks/{id}/guideline/usual", TEACHING),
            rule(POST, "/tasks/{id}/guideline/criterion", TEACHING),
            // Classes and learners.
            rule(GET, "/classes", READING),
            rule(GET, "/classes/new", TEACHING),
            rule(POST, "/classes", TEACHING),
            rule(GET, "/classes/{id}", READING),
            rule(POST, "/classes/{id}/move", TEACHING),
            rule(POST, "/classes/{id}/shown", TEACHING),
            rule(POST, "/classes/{id}/sets", TEACHING),
            rule(POST, "/classes/{id}/list", TEACHING),
            rule(POST, "/classes/{id}/check-code", TEACHING),
            rule(GET, "/classes/{id}/list.csv", READING),
            rule(GET, "/classes/{id}/list.xlsx", READING),
            rule(GET, "/learners/{id}", READING),
            rule(POST, "/learners/{id}", TEACHING),
            rule(GET, "/learners/{id}/growth", READING),
            rule(GET, "/learners/{id}/everything", READING),
            rule(POST, "/learners/{id}/everything", READING),
            rule(GET, "/learners/{id}/everything.zip", READING),
            rule(GET, "/learners/{id}/erase", READING),
            rule(POST, "/learners/{id}/erase", READING),
            // Class sets.
            rule(GET, "/class-sets", READING),
            rule(GET, "/class-sets/new", TEACHING),
            rule(POST, "/class-sets", TEACHING),
            rule(GET, "/class-sets/{id}", READING),
            rule(GET, "/class-sets/{id}/standing", READING),
            rule(GET, "/class-sets/{id}/progress", READING),
            rule(POST, "/class-sets/{id}/stop", TEACHING),
            rule(POST, "/class-sets/{id}/go-on", TEACHING),
            rule(POST, "/class-sets/{id}/release", TEACHING),
            rule(POST, "/class-sets/{id}/withdraw", TEACHING),
            rule(POST, "/class-sets/{id}/try-again", TEACHING),
            rule(POST, "/class-sets/{id}/scans", TEACHING),
            rule(GET, "/class-sets/{id}/scans/parts", TEACHING),
            rule(POST, "/class-sets/{id}/scans/parts", TEACHING),
            rule(GET, "/class-sets/{id}/learners", READING),
            rule(POST, "/class-sets/{id}/learners", TEACHING),
            rule(POST, "/class-sets/{id}/sheets/{sheetId}/learner", TEACHING),
            rule(POST, "/class-sets/{id}/class-list", TEACHING),
            rule(GET, "/class-sets/{id}/across", READING),
            rule(POST, "/class-sets/{id}/across/places", TEACHING),
            rule(GET, "/class-sets/{id}/teach-again", READING),
            rule(POST, "/class-sets/{id}/teach-again/{part}", TEACHING),
            rule(GET, "/class-sets/{id}/teach-again/{part}/sheets.pdf", READING),
            rule(GET, "/class-sets/{id}/items", READING),
            rule(GET, "/class-sets/{id}/check", READING),
            rule(GET, "/class-sets/{id}/guideline", READING),
            rule(POST, "/class-sets/{id}/guideline", TEACHING),
            rule(GET, "/class-sets/{id}/feedback-codes", TEACHING),
            rule(POST, "/class-sets/{id}/feedback-codes", TEACHING),
            rule(GET, "/class-sets/{id}/feedback-files", READING),
            rule(POST, "/class-sets/{id}/feedback-files", READING),
            rule(GET, "/class-sets/{id}/feedback.zip", READING),
            rule(GET, "/class-sets/{id}/feedback.pdf", READING),
            rule(GET, "/class-sets/{id}/mark-sheet.csv", READING),
            // Sheets and their pictures.
            rule(GET, "/sheets/{id}", READING),
            rule(GET, "/sheets/{id}/result.json", READING),
            rule(GET, "/sheets/{id}/feedback.pdf", READING),
            rule(POST, "/sheets/{id}/marks/{criterion}", TEACHING),
            rule(POST, "/sheets/{id}/marks/{criterion}/restore", TEACHING),
            rule(POST, "/sheets/{id}/checked", TEACHING),
            rule(POST, "/sheets/{id}/unchecked", TEACHING),
            rule(POST, "/sheets/{id}/try-again", TEACHING),
            rule(GET, "/sheets/{id}/scale", TEACHING),
            rule(POST, "/sheets/{id}/scale", TEACHING),
            rule(POST, "/sheets/{id}/scale/restore", TEACHING),
            rule(GET, "/sheets/{id}/lines/{criterion}", TEACHING),
            rule(POST, "/sheets/{id}/lines/{criterion}", TEACHING),
            rule(GET, "/sheets/{id}/lines/{criterion}/choices", TEACHING),
            rule(POST, "/sheets/{id}/lines/{criterion}/restore", TEACHING),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}.png", SEEING_SAMPLES),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}/tiles/{column:\\d}-{row:\\d}.png", SEEING_SAMPLES),
            rule(GET, "/pictures/{name:[0-9a-f]{64}}/part.png", SEEING_SAMPLES),
            // Moderation.
            rule(GET, "/class-sets/{id}/moderation", READING),
            rule(POST, "/class-sets/{id}/moderation", READING),
            rule(GET, "/moderations/{id}", SEEING_SAMPLES),
            rule(GET, "/moderations/{id}/sheets/{place}", SECOND_MARKING),
            rule(POST, "/moderations/{id}/sheets/{place}", SECOND_MARKING),
            rule(POST, "/moderations/{id}/hand-in", SECOND_MARKING),
            rule(POST, "/moderations/{id}/decision", DECIDING),
            // Mark sheets.
            rule(GET, "/mark-sheets", READING),
            rule(GET, "/mark-sheets/new", TEACHING),
            rule(POST, "/mark-sheets", TEACHING),
            rule(GET, "/mark-sheets/term.xlsx", READING),
            rule(GET, "/mark-sheets/term.csv", READING),
            rule(GET, "/mark-sheets/{id}", READING),
            rule(POST, "/mark-sheets/{id}/standings", TEACHING),
            rule(POST, "/mark-sheets/{id}/submit", TEACHING),
            rule(POST, "/mark-sheets/{id}/throw-away", TEACHING),
            rule(POST, "/mark-sheets/{id}/corrections", READING),
            rule(GET, "/mark-sheets/{id}/mark-sheet.csv", READING),
            rule(GET, "/mark-sheets/{id}/mark-sheet.xlsx", READING),
            rule(GET, "/mark-sheets/{id}/mark-sheet.pdf", READING));

    private Addresses() {}

    /** The rule for a request: the first that fits. */
    static Optional<Rule> ruleFor(HttpServletRequest request) {
        return RULES.stream().filter(rule -> rule.variables(request).isPresent()).findFirst();
    }

    /** The rule with a pattern as it stands in the table. */
    static Optional<Rule> ruleOf(HttpMethod method, String pattern) {
        return RULES.stream()
                .filter(rule -> rule.method().equals(method) && rule.pattern().equals(pattern))
                .findFirst();
    }

    private static Rule open(HttpMethod method, String pattern) {
        return rule(method, pattern, EVERYBODY);
    }

    private static Rule rule(HttpMethod method, String pattern, Set<Role> roles) {
        return new Rule(method, pattern, roles, false);
    }

    private static Rule own(HttpMethod method, String pattern) {
        return new Rule(method, pattern, WITH_ACCOUNT, true);
    }
}
