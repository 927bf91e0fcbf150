package wallplate.privacy.jdbc;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.privacy.BlankPages;
import wallplate.privacy.Kind;
import wallplate.privacy.Overdue;

@Repository
class JdbcOverdue implements Overdue {

    private final JdbcClient database;
    private final RemovedContents contents;
    private final BlankPages blank;

    JdbcOverdue(JdbcClient database, RemovedContents contents, BlankPages blank) {
        this.database = database;
        this.contents = contents;
        this.blank = blank;
    }

    /**
     * What is over its time, as the ids of a table.
     *
     * @param where with one place for the moment
     */
    private record Rows(String table, String id, String address, String where) {}

    private static Rows rows(Kind kind) {
        return switch (kind) {
            case SCANS -> new Rows(
                    "scan_files",
                    "id",
                    "concat('/class-sets/', t.class_set_id, '/files/', t.id)",
                    "t.received_at < ? and t.size_bytes > 0 and t.state not in ('waiting', 'reading')");
            case PICTURES -> new Rows(
                    "sheets",
                    "id",
                    "concat('/sheets/', t.id)",
                    "t.assessed_at < ? and t.page_picture is not null and t.pictures_removed_at is null");
            case FEEDBACK_CODES -> new Rows(
                    "feedback_codes", "sheet_id", "concat('/sheets/', t.sheet_id)", "t.made_at < ?");
            case CLASS_SETS -> new Rows(
                    "class_sets",
                    "id",
                    "concat('/class-sets/', t.id)",
                    """
                    t.created_at < ? and not exists (select 1 from sheets s where s.class_set_id = t.id
                        and (s.assessed_at >= ? or s.state in ('waiting', 'reading')))""");
            case MARK_SHEETS -> new Rows(
                    "mark_sheets", "id", "concat('/mark-sheets/', t.id)", "coalesce(t.submitted_at, t.created_at) < ?");
            case LEARNERS -> new Rows(
                    "learners",
                    "id",
                    "concat('/learners/', t.id)",
                    """
                    t.left_at < ? and not exists (select 1 from sheets s where s.learner_id = t.id)
                    and not exists (select 1 from learners o where o.person_id = t.person_id and o.left_at is null)""");
            case AUDIT -> new Rows(
                    "audit_entries",
                    "number",
                    "cast(t.number as varchar)",
                    """
                    t.done_at < ? and t.number < (select coalesce(min(k.number), (select h.number + 1 from audit_head h where h.id = 1))
                        from audit_entries k where k.done_at >= ?)""");
        };
    }

    @Override
    public Found of(Kind kind, Instant before, int mostAddresses) {
        Rows rows = rows(kind);
        Object[] moments = moments(rows, before);
        long number = database.sql("select count(*) from %s t where %s".formatted(rows.table(), rows.where()))
                .params(moments)
                .query(Long.class)
                .single();
        List<String> oldest = database.sql("select %s from %s t where %s order by t.%s limit %d"
                        .formatted(rows.address(), rows.table(), rows.where(), rows.id(), mostAddresses))
                .params(moments)
                .query(String.class)
                .list();
        return new Found(number, oldest);
    }

    private static Object[] moments(Rows rows, Instant before) {
        OffsetDateTime moment = before.atOffset(ZoneOffset.UTC);
        int places = (int) rows.where().chars().filter(letter -> letter == '?').count();
        return java.util.Collections.nCopies(places, moment).toArray();
    }

    @Override
    public Removed remove(Kind kind, Instant before) {
        Rows rows = rows(kind);
        List<Long> ids = database.sql("select t.%s from %s t where %s order by t.%s"
                        .formatted(rows.id(), rows.table(), rows.where(), rows.id()))
                .params(moments(rows, before))
                .query(Long.class)
                .list();
        return switch (kind) {
            case SCANS -> new Removed(ids.size(), contents.ofFiles(ids));
            case PICTURES -> new Removed(ids.size(), contents.ofPages(ids, blank));
            case CLASS_SETS -> classSets(ids);
            case AUDIT -> audit(ids);
            case FEEDBACK_CODES, MARK_SHEETS, LEARNERS -> {
                delete(rows, ids);
                yield new Removed(ids.size(), List.of());
            }
        };
    }

    private void delete(Rows rows, List<Long> ids) {
        ids.forEach(id -> database.sql("delete from %s where %s = ?".formatted(rows.table(), rows.id()))
                .param(id)
                .update());
    }

    /** With the list of a set that has one of its own. */
    private Removed classSets(List<Long> ids) {
        List<String> names = contents.namesOfSets(ids);
        for (long id : ids) {
            long classId = database.sql("select class_id from class_sets where id = ?")
                    .param(id)
                    .query(Long.class)
                    .single();
            database.sql("delete from class_sets where id = ?").param(id).update();
            database.sql(
                            """
                            delete from school_classes where id = ? and school_year is null
                                and not exists (select 1 from class_sets s where s.class_id = school_classes.id)""")
                    .param(classId)
                    .update();
        }
        return new Removed(ids.size(), names);
    }

    /** The trail begins after the last of them: its number and hash are noted, so that what is left can be verified. */
    private Removed audit(List<Long> numbers) {
        if (!numbers.isEmpty()) {
            long last = numbers.get(numbers.size() - 1);
            database.sql("delete from audit_head where id = 2").update();
            database.sql("insert into audit_head (id, number, hash) select 2, number, hash from audit_entries where number = ?")
                    .param(last)
                    .update();
            database.sql("delete from audit_entries where number <= ?").param(last).update();
        }
        return new Removed(numbers.size(), List.of());
    }
}
