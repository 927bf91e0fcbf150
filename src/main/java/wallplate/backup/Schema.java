package wallplate.backup;

import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The tables of a database as it describes them itself. */
final class Schema {

    static final String HISTORY = "flyway_schema_history";

    /** What passes: sessions and links would open accounts to whoever has the backup. */
    private static final Set<String> PASSING =
            Set.of("spring_session", "spring_session_attributes", "one_time_links", "sign_in_waits");

    private final Connection database;
    private final String schema;

    Schema(Connection database) throws SQLException {
        this.database = database;
        this.schema = database.getSchema();
    }

    /** A column; the kind is a word that both databases share. */
    record ColumnOf(String name, Kind kind, boolean counted) {}

    /** How a value is written down. */
    enum Kind {
        BYTES,
        MOMENT,
        BOOLEAN,
        NUMBER,
        TEXT
    }

    /** Every table but the migrations' own and those of what passes, each after those that it refers to. */
    List<String> tables() throws SQLException {
        Map<String, Set<String>> refersTo = new LinkedHashMap<>();
        DatabaseMetaData facts = database.getMetaData();
        try (ResultSet found = facts.getTables(database.getCatalog(), schema, "%", new String[] {"TABLE", "BASE TABLE"})) {
            while (found.next()) {
                String name = found.getString("TABLE_NAME");
                if (!name.equals(HISTORY) && !PASSING.contains(name)) {
                    refersTo.put(name, new LinkedHashSet<>());
                }
            }
        }
        for (Map.Entry<String, Set<String>> table : refersTo.entrySet()) {
            try (ResultSet keys = facts.getImportedKeys(database.getCatalog(), schema, table.getKey())) {
                while (keys.next()) {
                    table.getValue().add(keys.getString("PKTABLE_NAME"));
                }
            }
            table.getValue().remove(table.getKey());
        }
        return inOrder(refersTo);
    }

    private static List<String> inOrder(Map<String, Set<String>> refersTo) {
        List<String> ordered = new ArrayList<>();
        while (ordered.size() < refersTo.size()) {
            int before = ordered.size();
            refersTo.forEach((table, others) -> {
                if (!ordered.contains(table) && ordered.containsAll(others)) {
                    ordered.add(table);
                }
            });
            if (ordered.size() == before) {
                throw new IllegalStateException("tables refer to each other in a circle: " + refersTo);
            }
        }
        return ordered;
    }

    List<ColumnOf> columns(String table) throws SQLException {
        List<ColumnOf> columns = new ArrayList<>();
        try (ResultSet found = database.getMetaData().getColumns(database.getCatalog(), schema, escaped(table), "%")) {
            while (found.next()) {
                columns.add(new ColumnOf(
                        found.getString("COLUMN_NAME"),
                        kind(found.getString("TYPE_NAME").toLowerCase(java.util.Locale.ROOT)),
                        found.getString("IS_AUTOINCREMENT").equals("YES")));
            }
        }
        return columns;
    }

    /** An underscore stands for any letter in what the database is asked for. */
    private String escaped(String name) throws SQLException {
        return name.replace("_", database.getMetaData().getSearchStringEscape() + "_");
    }

    private static Kind kind(String type) {
        if (type.startsWith("bytea") || type.startsWith("binary") || type.startsWith("blob")) {
            return Kind.BYTES;
        }
        if (type.startsWith("timestamp")) {
            return Kind.MOMENT;
        }
        if (type.startsWith("bool")) {
            return Kind.BOOLEAN;
        }
        if (type.matches("(big|small|tiny)?int.*|.*serial.*|numeric.*|decimal.*|float.*|double.*|real.*")) {
            return Kind.NUMBER;
        }
        return Kind.TEXT;
    }

    long rows(String table) throws SQLException {
        try (var statement = database.createStatement();
                ResultSet count = statement.executeQuery("select count(*) from " + quoted(table))) {
            count.next();
            return count.getLong(1);
        }
    }

    /** The last migration that was carried out; empty where there was none. */
    String version() throws SQLException {
        boolean known;
        try (ResultSet found = database.getMetaData().getTables(database.getCatalog(), schema, HISTORY, null)) {
            known = found.next();
        }
        if (!known) {
            return "";
        }
        List<String> versions = new ArrayList<>();
        try (var statement = database.createStatement();
                ResultSet found = statement.executeQuery(
                        "select version from " + HISTORY + " where success and version is not null")) {
            while (found.next()) {
                versions.add(found.getString(1));
            }
        }
        return versions.stream()
                .max(java.util.Comparator.comparing(org.flywaydb.core.api.MigrationVersion::fromVersion))
                .orElse("");
    }

    static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }
}
