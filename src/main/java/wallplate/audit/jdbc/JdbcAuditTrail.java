package wallplate.audit.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.audit.AuditEntry;
import wallplate.audit.AuditTrail;

@Repository
class JdbcAuditTrail implements AuditTrail {

    private static final int LONGEST_PERSON = 200;
    private static final int LONGEST_SUBJECT = 400;

    private final JdbcClient database;
    private final Clock clock;

    JdbcAuditTrail(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    private record Head(long number, String hash) {}

    /** The row of the head is held until the entry is written: no two entries follow the same one. */
    @Override
    @Transactional
    public AuditEntry append(String person, String act, String subject) {
        Head head = database.sql("select number, hash from audit_head where id = 1 for update")
                .query((row, index) -> new Head(row.getLong("number"), row.getString("hash")))
                .single();
        AuditEntry entry = AuditEntry.after(
                head.number(), head.hash(), clock.instant(), cut(person, LONGEST_PERSON), act, cut(subject, LONGEST_SUBJECT));
        database.sql(
                        """
                        insert into audit_entries (number, done_at, person, act, subject, previous_hash, hash)
                        values (?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        entry.number(),
                        entry.at().atOffset(ZoneOffset.UTC),
                        entry.person(),
                        entry.act(),
                        entry.subject(),
                        entry.previousHash(),
                        entry.hash())
                .update();
        database.sql("update audit_head set number = ?, hash = ? where id = 1")
                .params(entry.number(), entry.hash())
                .update();
        return entry;
    }

    @Override
    public List<AuditEntry> page(long before, String containing, int size) {
        String sought = containing.toLowerCase(Locale.ROOT);
        return database.sql(
                        """
                        select * from audit_entries
                        where number < ? and position(? in lower(person || ' ' || act || ' ' || subject)) > 0
                        order by number desc limit ?""")
                .params(before, sought, size)
                .query((row, index) -> entry(row))
                .list();
    }

    private static AuditEntry entry(ResultSet row) throws SQLException {
        return new AuditEntry(
                row.getLong("number"),
                row.getObject("done_at", OffsetDateTime.class).toInstant(),
                row.getString("person"),
                row.getString("act"),
                row.getString("subject"),
                row.getString("previous_hash"),
                row.getString("hash"));
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest);
    }
}
