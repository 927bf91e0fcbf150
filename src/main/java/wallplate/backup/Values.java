package wallplate.backup;

import java.math.BigDecimal;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.util.Base64;
import org.jspecify.annotations.Nullable;

/** Values of columns as texts that do not depend on the database. */
final class Values {

    private Values() {}

    /** The text of a value, or null where the column has none. */
    static @Nullable String text(ResultSet row, int place, Schema.Kind kind) throws SQLException {
        return switch (kind) {
            case BYTES -> {
                byte[] bytes = row.getBytes(place);
                yield bytes == null ? null : Base64.getEncoder().encodeToString(bytes);
            }
            case MOMENT -> {
                OffsetDateTime moment = row.getObject(place, OffsetDateTime.class);
                yield moment == null ? null : moment.toInstant().toString();
            }
            case BOOLEAN -> {
                boolean value = row.getBoolean(place);
                yield row.wasNull() ? null : Boolean.toString(value);
            }
            case NUMBER, TEXT -> row.getString(place);
        };
    }

    static void set(PreparedStatement insert, int place, Schema.Kind kind, @Nullable String text) throws SQLException {
        switch (kind) {
            case BYTES -> insert.setBytes(place, text == null ? null : Base64.getDecoder().decode(text));
            case MOMENT -> insert.setObject(
                    place, text == null ? null : OffsetDateTime.parse(text), Types.TIMESTAMP_WITH_TIMEZONE);
            case BOOLEAN -> insert.setObject(place, text == null ? null : Boolean.valueOf(text), Types.BOOLEAN);
            case NUMBER -> insert.setObject(place, text == null ? null : new BigDecimal(text), Types.NUMERIC);
            case TEXT -> insert.setString(place, text);
        }
    }
}
