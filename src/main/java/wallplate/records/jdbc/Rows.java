package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.GeneratedKeyHolder;
import wallplate.records.Learner;

/** Values that JDBC has no types for, to and from columns. */
final class Rows {

    /** What a learner {@code l} of a class {@code c} goes by; never the name where the class goes by numbers. */
    static final String SHOWN_NAME =
            """
            case when not c.numbers_shown then l.name
                 when coalesce(l.candidate_number, '') <> '' then l.candidate_number
                 else concat('place ', l.position) end""";

    private Rows() {}

    /** The learner of a row that gives what the learner goes by. */
    static Learner learner(ResultSet row) throws SQLException {
        return new Learner(
                row.getLong("learner_id"),
                row.getInt("learner_position"),
                row.getString("learner_name"),
                optionalText(row, "candidate_number").orElse(""));
    }

    /** Inserts a row and returns the id that the database gave it. */
    static long insert(JdbcClient.StatementSpec insert) {
        var keys = new GeneratedKeyHolder();
        insert.update(keys, "id");
        Number id = keys.getKeyAs(Number.class);
        if (id == null) {
            throw new IllegalStateException("the database gave no id");
        }
        return id.longValue();
    }

    static OffsetDateTime timestamp(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    static Optional<Instant> optionalInstant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }

    static Optional<String> optionalText(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column));
    }

    static OptionalDouble optionalNumber(ResultSet row, String column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    static @Nullable Double orNull(OptionalDouble number) {
        return number.isPresent() ? number.getAsDouble() : null;
    }

    /** The text, cut where it is longer than its column. */
    static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest - 1) + "…";
    }
}
