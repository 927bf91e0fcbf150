package wallplate.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import tools.jackson.databind.json.JsonMapper;
import wallplate.records.ScanStore;

/** Writes a backup. */
public final class Backup {

    static final String CONTENTS = "contents.json";
    static final String TABLES = "tables/";
    static final String SCANS = "scans/";
    private static final int ROWS_AT_ONCE = 500;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final DataSource database;
    private final ScanStore store;
    private final Clock clock;

    public Backup(DataSource database, ScanStore store, Clock clock) {
        this.database = database;
        this.store = store;
        this.clock = clock;
    }

    /**
     * Writes all tables as they were at one moment, and then every content of the scan store.
     *
     * <p>A content is laid down before a row names it, and the tables are read first: no row of the backup names a content
     * that is not in it, also while the application goes on.
     */
    public Contents write(OutputStream out) throws IOException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            try {
                return write(connection, out);
            } finally {
                connection.rollback();
            }
        } catch (SQLException broken) {
            throw new BackupRefused(
                    "The database cannot be read. Where it is a file, the application must be stopped first. "
                            + broken.getMessage(),
                    broken);
        }
    }

    private Contents write(Connection connection, OutputStream out) throws SQLException, IOException {
        Schema schema = new Schema(connection);
        List<Contents.TableRows> tables = new ArrayList<>();
        for (String table : schema.tables()) {
            tables.add(new Contents.TableRows(table, schema.rows(table)));
        }
        if (tables.isEmpty()) {
            throw new BackupRefused("The database has no tables: there is nothing to back up.");
        }
        List<String> names = new ArrayList<>();
        store.forEachPutBefore(clock.instant().plusSeconds(1), names::add);
        Contents contents = new Contents(
                Contents.FORMAT, schema.version(), clock.instant().truncatedTo(ChronoUnit.SECONDS).toString(), tables, names.size());
        ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        zip.putNextEntry(new ZipEntry(CONTENTS));
        zip.write(JSON.writeValueAsBytes(contents));
        zip.closeEntry();
        for (Contents.TableRows table : tables) {
            zip.putNextEntry(new ZipEntry(TABLES + table.name()));
            rows(connection, schema, table.name(), zip);
            zip.closeEntry();
        }
        for (String name : names) {
            zip.putNextEntry(new ZipEntry(SCANS + name));
            try (InputStream content = store.open(name)) {
                content.transferTo(zip);
            }
            zip.closeEntry();
        }
        zip.finish();
        return contents;
    }

    /** A line with the names of the columns, then a line a row. */
    private static void rows(Connection connection, Schema schema, String table, OutputStream out)
            throws SQLException, IOException {
        List<Schema.ColumnOf> columns = schema.columns(table);
        line(out, columns.stream().map(Schema.ColumnOf::name).toArray(String[]::new));
        String list = String.join(
                ", ", columns.stream().map(column -> Schema.quoted(column.name())).toList());
        try (var statement = connection.createStatement()) {
            statement.setFetchSize(ROWS_AT_ONCE);
            try (ResultSet row = statement.executeQuery("select " + list + " from " + Schema.quoted(table))) {
                while (row.next()) {
                    String[] values = new String[columns.size()];
                    for (int place = 0; place < values.length; place++) {
                        values[place] = Values.text(row, place + 1, columns.get(place).kind());
                    }
                    line(out, values);
                }
            }
        }
    }

    private static void line(OutputStream out, String[] values) throws IOException {
        out.write(JSON.writeValueAsBytes(values));
        out.write('\n');
    }
}
