package wallplate.backup;

import java.io.BufferedReader;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;
import wallplate.records.ScanStore;

/** Takes a backup back into an empty installation. */
public final class Restore {

    /** Rows that the migrations themselves write into a new database: the audit trail's beginning, the demonstration's account. */
    private static final Map<String, Long> WRITTEN_BY_MIGRATIONS = Map.of("audit_head", 1L, "accounts", 1L);

    private static final int ROWS_AT_ONCE = 500;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final DataSource database;
    private final ScanStore store;
    private final Clock clock;

    public Restore(DataSource database, ScanStore store, Clock clock) {
        this.database = database;
        this.store = store;
        this.clock = clock;
    }

    /**
     * Fills tables and scan store, all of it or nothing, and brings the tables up to this program's version.
     *
     * @throws BackupRefused where the installation is not empty or the file is no whole backup
     */
    public Contents read(InputStream file) throws IOException {
        List<String> laidDown = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(file, StandardCharsets.UTF_8)) {
            Contents contents = contents(zip);
            refuseWhereSomethingIs(contents);
            migrate(contents.schemaVersion());
            fill(contents, zip, laidDown);
            migrate("latest");
            return contents;
        } catch (ZipException | JacksonException | java.io.EOFException broken) {
            takeAway(laidDown);
            throw new BackupRefused("The file is no whole backup of this program: " + broken.getMessage(), broken);
        } catch (SQLException broken) {
            takeAway(laidDown);
            throw new BackupRefused("The database did not take the backup: " + broken.getMessage(), broken);
        } catch (BackupRefused refused) {
            takeAway(laidDown);
            throw refused;
        }
    }

    private static Contents contents(ZipInputStream zip) throws IOException {
        ZipEntry first = zip.getNextEntry();
        if (first == null || !first.getName().equals(Backup.CONTENTS)) {
            throw new BackupRefused("The file is no backup of this program.");
        }
        Contents contents = JSON.readValue(zip.readAllBytes(), Contents.class);
        if (contents.format() != Contents.FORMAT) {
            throw new BackupRefused("The backup has format " + contents.format() + "; this program reads format "
                    + Contents.FORMAT + ". Take the program that wrote it.");
        }
        return contents;
    }

    private void refuseWhereSomethingIs(Contents contents) throws SQLException, IOException {
        try (Connection connection = database.getConnection()) {
            Schema schema = new Schema(connection);
            for (String table : schema.tables()) {
                if (schema.rows(table) > WRITTEN_BY_MIGRATIONS.getOrDefault(table, 0L)) {
                    throw new BackupRefused("This installation is not empty: the table " + table
                            + " has rows. Restore into an empty database.");
                }
            }
            String version = schema.version();
            if (!version.isEmpty() && !version.equals(contents.schemaVersion())) {
                throw new BackupRefused("The empty tables are of version " + version + ", the backup of version "
                        + contents.schemaVersion() + ". Restore into a database without tables.");
            }
        }
        List<String> there = new ArrayList<>();
        store.forEachPutBefore(clock.instant().plusSeconds(1), there::add);
        if (!there.isEmpty()) {
            throw new BackupRefused("This installation is not empty: the scan store has " + there.size()
                    + " contents. Restore into an empty one.");
        }
    }

    private void migrate(String version) {
        MigrationVersion target = MigrationVersion.fromVersion(version);
        Flyway.configure()
                .dataSource(database)
                .locations("classpath:db/migration")
                .target(target)
                .load()
                .migrate();
    }

    private void fill(Contents contents, ZipInputStream zip, List<String> laidDown) throws SQLException, IOException {
        Map<String, Long> filled = new HashMap<>();
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            try {
                Schema schema = new Schema(connection);
                clear(connection, schema);
                for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                    if (entry.getName().startsWith(Backup.TABLES)) {
                        String table = entry.getName().substring(Backup.TABLES.length());
                        filled.put(table, fill(connection, schema, table, zip));
                    } else if (entry.getName().startsWith(Backup.SCANS)) {
                        laidDown.add(layDown(entry.getName().substring(Backup.SCANS.length()), zip));
                    }
                }
                compare(contents, filled, laidDown.size());
                connection.commit();
            } catch (SQLException | IOException | RuntimeException broken) {
                connection.rollback();
                throw broken;
            }
        }
    }

    /** What migrations wrote into new tables is in the backup too. */
    private static void clear(Connection connection, Schema schema) throws SQLException {
        List<String> tables = new ArrayList<>(schema.tables());
        Collections.reverse(tables);
        for (String table : tables) {
            try (var statement = connection.createStatement()) {
                statement.execute("delete from " + Schema.quoted(table));
            }
        }
    }

    private static long fill(Connection connection, Schema schema, String table, InputStream lines)
            throws SQLException, IOException {
        if (!schema.tables().contains(table)) {
            throw new BackupRefused("The backup has a table that this program does not know: " + table + ".");
        }
        BufferedReader reader = new BufferedReader(new InputStreamReader(unclosed(lines), StandardCharsets.UTF_8));
        String first = reader.readLine();
        if (first == null) {
            throw new BackupRefused("The table " + table + " is cut off.");
        }
        Map<String, Schema.ColumnOf> known = new HashMap<>();
        schema.columns(table).forEach(column -> known.put(column.name(), column));
        List<Schema.ColumnOf> columns = new ArrayList<>();
        for (String name : JSON.readValue(first, String[].class)) {
            Schema.ColumnOf column = known.get(name);
            if (column == null) {
                throw new BackupRefused("The table " + table + " has no column " + name + " in this program.");
            }
            columns.add(column);
        }
        long rows = insert(connection, table, columns, reader);
        countOn(connection, table, columns);
        return rows;
    }

    private static InputStream unclosed(InputStream stream) {
        return new FilterInputStream(stream) {
            @Override
            public void close() {
                // The next entry follows in the same stream.
            }
        };
    }

    private static long insert(
            Connection connection, String table, List<Schema.ColumnOf> columns, BufferedReader reader)
            throws SQLException, IOException {
        String names = String.join(
                ", ", columns.stream().map(column -> Schema.quoted(column.name())).toList());
        String places = String.join(", ", Collections.nCopies(columns.size(), "?"));
        long rows = 0;
        try (PreparedStatement insert = connection.prepareStatement(
                "insert into " + Schema.quoted(table) + " (" + names + ") values (" + places + ")")) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] values = JSON.readValue(line, String[].class);
                if (values.length != columns.size()) {
                    throw new BackupRefused("A row of the table " + table + " is cut off.");
                }
                for (int place = 0; place < values.length; place++) {
                    Values.set(insert, place + 1, columns.get(place).kind(), values[place]);
                }
                insert.addBatch();
                rows++;
                if (rows % ROWS_AT_ONCE == 0) {
                    insert.executeBatch();
                }
            }
            insert.executeBatch();
        }
        return rows;
    }

    /** New rows are numbered behind those of the backup. */
    private static void countOn(Connection connection, String table, List<Schema.ColumnOf> columns) throws SQLException {
        for (Schema.ColumnOf column : columns) {
            if (column.counted()) {
                String name = Schema.quoted(column.name());
                long next;
                try (var statement = connection.createStatement();
                        ResultSet last = statement.executeQuery(
                                "select coalesce(max(" + name + "), 0) + 1 from " + Schema.quoted(table))) {
                    last.next();
                    next = last.getLong(1);
                }
                try (var statement = connection.createStatement()) {
                    statement.execute(
                            "alter table " + Schema.quoted(table) + " alter column " + name + " restart with " + next);
                }
            }
        }
    }

    private String layDown(String name, InputStream content) throws IOException {
        ScanStore.Kept kept = store.put(unclosed(content));
        if (!kept.name().equals(name)) {
            store.delete(kept.name());
            throw new BackupRefused("The content " + name + " of the scan store is damaged in the backup.");
        }
        return name;
    }

    private static void compare(Contents contents, Map<String, Long> filled, int laidDown) {
        for (Contents.TableRows table : contents.tables()) {
            long rows = filled.getOrDefault(table.name(), -1L);
            if (rows != table.rows()) {
                throw new BackupRefused("The backup is cut off: the table " + table.name() + " should have "
                        + table.rows() + " rows and has " + Math.max(rows, 0) + ".");
            }
        }
        if (laidDown != contents.contents()) {
            throw new BackupRefused("The backup is cut off: the scan store should have " + contents.contents()
                    + " contents and has " + laidDown + ".");
        }
    }

    private void takeAway(List<String> laidDown) throws IOException {
        for (String name : laidDown) {
            store.delete(name);
        }
    }
}
