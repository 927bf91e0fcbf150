package wallplate.records.jdbc;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import wallplate.records.StoredNames;

@Repository
class JdbcStoredNames implements StoredNames {

    /** A column that holds names in the scan store. */
    private record Column(String table, String name) {}

    /** Every such column; a test compares it with the tables. */
    private static final List<Column> COLUMNS = List.of(
            new Column("scan_files", "content_hash"),
            new Column("sheets", "page_picture"),
            new Column("sheets", "screen_picture"),
            new Column("sheet_first_readings", "page_picture"),
            new Column("sheet_first_readings", "screen_picture"),
            new Column("self_checks", "content_hash"),
            new Column("self_checks", "screen_picture"),
            new Column("prepared_files", "content_hash"));

    private final JdbcClient database;

    JdbcStoredNames(JdbcClient database) {
        this.database = database;
    }

    @Override
    public Set<String> inUse(Collection<String> names) {
        Set<String> used = new HashSet<>();
        if (names.isEmpty()) {
            return used;
        }
        for (Column column : COLUMNS) {
            used.addAll(database.sql("select distinct %s from %s where %s in (:names)"
                            .formatted(column.name(), column.table(), column.name()))
                    .param("names", names)
                    .query(String.class)
                    .list());
        }
        return used;
    }

    @Override
    public List<String> columns() {
        return COLUMNS.stream().map(column -> column.table() + "." + column.name()).toList();
    }
}
