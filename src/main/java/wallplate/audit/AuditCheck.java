package wallplate.audit;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Optional;

/** Goes through a whole trail and says where it is no longer what was written. */
public sealed interface AuditCheck {

    /**
     * Every entry follows from the one before.
     *
     * @param entries the number of the last
     * @param from the number of the first; later than 1 where older ones were over their time and taken away
     */
    record Sound(long entries, String lastHash, long from) implements AuditCheck {}

    /** The first place where the trail does not hold. */
    record Broken(long number, String because) implements AuditCheck {}

    /**
     * Checks the trail in a database.
     *
     * @param knownHash the hash of an entry that was noted elsewhere: it must be in the trail
     */
    static AuditCheck of(Connection database, Optional<String> knownHash) throws SQLException {
        Start start = start(database);
        long number = start.number();
        String hash = start.hash();
        boolean known = knownHash.isEmpty() || hash.equals(knownHash.get());
        try (var statement = database.createStatement();
                ResultSet rows = statement.executeQuery("select * from audit_entries order by number")) {
            while (rows.next()) {
                AuditEntry entry = entry(rows);
                if (entry.number() != number + 1) {
                    return new Broken(number + 1, "it is missing");
                }
                if (!entry.previousHash().equals(hash)) {
                    return new Broken(entry.number(), "it does not follow from the entry before");
                }
                if (!entry.computedHash().equals(entry.hash())) {
                    return new Broken(entry.number(), "it was changed");
                }
                number = entry.number();
                hash = entry.hash();
                known = known || hash.equals(knownHash.get());
            }
        }
        return end(database, number, hash, known, start.number() + 1);
    }

    /** The last entry that was over its time and taken away; nothing before the first where none was. */
    record Start(long number, String hash) {}

    private static Start start(Connection database) throws SQLException {
        try (var statement = database.createStatement();
                ResultSet row = statement.executeQuery("select number, hash from audit_head where id = 2")) {
            return row.next()
                    ? new Start(row.getLong("number"), row.getString("hash"))
                    : new Start(0, AuditEntry.BEFORE_THE_FIRST);
        }
    }

    private static AuditCheck end(Connection database, long number, String hash, boolean known, long from) throws SQLException {
        try (var statement = database.createStatement();
                ResultSet head = statement.executeQuery("select number, hash from audit_head where id = 1")) {
            if (!head.next() || head.getLong("number") != number || !head.getString("hash").equals(hash)) {
                return new Broken(number + 1, "the end of the trail was cut off or added to");
            }
        }
        return known ? new Sound(number, hash, from) : new Broken(number + 1, "the hash that was noted is not in the trail");
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
}
