package wallplate.backup;

import java.util.List;

/**
 * What a backup holds; the first entry of its file.
 *
 * @param format of the file; this program writes and reads 1
 * @param schemaVersion the last migration of the database that it was taken from
 * @param tables in an order in which they can be filled
 * @param contents how many contents of the scan store follow
 */
public record Contents(int format, String schemaVersion, String takenAt, List<TableRows> tables, int contents) {

    static final int FORMAT = 1;

    public Contents {
        tables = List.copyOf(tables);
    }

    /** A table and how many rows it has. */
    public record TableRows(String name, long rows) {}

    public long rows() {
        return tables.stream().mapToLong(TableRows::rows).sum();
    }
}
