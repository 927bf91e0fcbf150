package wallplate.web.access;

import static wallplate.web.access.Subject.about;
import static wallplate.web.access.Subject.sent;
import static wallplate.web.access.Subject.shared;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import wallplate.ownership.Kind;

/**
 * Which record each address is about, so that its owner can be asked for. An address with a variable that stands neither
 * here nor among those that name a part of the record is open to nobody, and a test fails for it.
 *
 * <p>Tasks are the department's common stock: every teacher reads and uses them, and changes those of his or her own.
 */
final class Subjects {

    /** The first that fits counts. */
    static final List<Subject> IN_ADDRESSES = List.of(
            about("/class-sets/{id}", "id", Kind.CLASS_SET),
            about("/sheets/{id}", "id", Kind.SHEET),
            about("/pictures/{name", "name", Kind.PICTURE),
            about("/classes/{id}", "id", Kind.CLASS),
            about("/learners/{id}/everything", "id", Kind.WHOLE_LEARNER),
            about("/learners/{id}/erase", "id", Kind.WHOLE_LEARNER),
            about("/learners/{id}", "id", Kind.LEARNER),
            about("/moderations/{id}", "id", Kind.MODERATION),
            about("/mark-sheets/{id}", "id", Kind.MARK_SHEET),
            about("/tasks/{id}/edit", "id", Kind.TASK),
            shared("/tasks/{id}", "id", Kind.TASK));

    /** Records that are named by a field that is sent along. */
    static final List<Subject> SENT_ALONG = List.of(
            sent("/mark-sheets/new", "class", Kind.CLASS),
            sent("/mark-sheets/new", "classSet", Kind.CLASS_SET),
            sent("/mark-sheets", "class", Kind.CLASS),
            sent("/classes/{id}/move", "to", Kind.CLASS),
            sent("/tasks/{id}/sheets.pdf", "classSet", Kind.CLASS_SET),
            sent("/tasks/draw", "kept", Kind.TASK));

    /** Variables that name a part of the record that stands before them. */
    static final Set<String> PARTS = Set.of("sheetId", "criterion", "part", "place", "column", "row");

    /** Addresses about accounts: nobody's records, open to who looks after them all. */
    static final String ACCOUNTS = "/accounts/{id}";

    private Subjects() {}

    /** What the addresses of a rule are about; empty where they name no record. */
    static Optional<Subject> of(Rule rule) {
        return IN_ADDRESSES.stream().filter(subject -> subject.concerns(rule)).findFirst();
    }

    static List<Subject> sentAlong(Rule rule) {
        return SENT_ALONG.stream().filter(subject -> subject.concerns(rule)).toList();
    }

    /** Whether a rule's addresses name a record, or should. */
    static boolean namesRecord(Rule rule) {
        return rule.pattern().contains("{") && !rule.pattern().startsWith(ACCOUNTS);
    }
}
