package wallplate.records.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.records.FileState;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetState;

@Repository
class JdbcScanFiles implements ScanFiles {

    private static final int LONGEST_NAME = 400;
    private static final int LONGEST_REASON = 2000;
    private static final String SELECT =
            """
            select id, class_set_id, position, file_name, content_hash, size_bytes, state, reason, received_at
            from scan_files
            """;

    private final JdbcClient database;
    private final Clock clock;

    JdbcScanFiles(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Optional<ScanFileEntry> add(long classSetId, String fileName, String contentHash, long sizeBytes) {
        lockSet(classSetId);
        int same = database.sql("select count(*) from scan_files where class_set_id = ? and content_hash = ?")
                .params(classSetId, contentHash)
                .query(Integer.class)
                .single();
        if (same > 0) {
            return Optional.empty();
        }
        int last = database.sql("select coalesce(max(position), 0) from scan_files where class_set_id = ?")
                .param(classSetId)
                .query(Integer.class)
                .single();
        long id = Rows.insert(
                database.sql(
                                """
                                insert into scan_files
                                    (class_set_id, position, file_name, content_hash, size_bytes, state, received_at)
                                values (?, ?, ?, ?, ?, ?, ?)""")
                        .params(
                                classSetId,
                                last + 1,
                                Rows.cut(fileName, LONGEST_NAME),
                                contentHash,
                                sizeBytes,
                                FileState.WAITING.word(),
                                Rows.timestamp(clock.instant())));
        return find(id);
    }

    /** Two uploads for one set at once must not take the same position. */
    private void lockSet(long classSetId) {
        database.sql("select id from class_sets where id = ? for update")
                .param(classSetId)
                .query(Long.class)
                .optional();
    }

    @Override
    public Optional<ScanFileEntry> find(long id) {
        return database.sql(SELECT + "where id = ?")
                .param(id)
                .query((row, number) -> file(row))
                .optional();
    }

    @Override
    public List<ScanFileEntry> of(long classSetId) {
        return database.sql(SELECT + "where class_set_id = ? order by position")
                .param(classSetId)
                .query((row, number) -> file(row))
                .list();
    }

    @Override
    public boolean begin(long id) {
        int begun = database.sql("update scan_files set state = ?, attempts = attempts + 1 where id = ? and state in (?, ?)")
                .params(FileState.READING.word(), id, FileState.WAITING.word(), FileState.READING.word())
                .update();
        return begun == 1;
    }

    @Override
    public void finish(long id) {
        database.sql("update scan_files set state = ? where id = ? and state = ?")
                .params(FileState.DONE.word(), id, FileState.READING.word())
                .update();
    }

    @Override
    public void refuse(long id, String reason) {
        database.sql("update scan_files set state = ?, reason = ? where id = ?")
                .params(FileState.REFUSED.word(), Rows.cut(reason, LONGEST_REASON), id)
                .update();
    }

    @Override
    public void stop(long classSetId) {
        database.sql("update scan_files set state = ? where class_set_id = ? and state in (?, ?)")
                .params(FileState.STOPPED.word(), classSetId, FileState.WAITING.word(), FileState.READING.word())
                .update();
    }

    @Override
    @Transactional
    public List<ScanFileEntry> takeUpAgain(long classSetId) {
        List<ScanFileEntry> stopped = of(classSetId).stream()
                .filter(file -> file.state() == FileState.STOPPED)
                .toList();
        database.sql("update scan_files set state = ? where class_set_id = ? and state = ?")
                .params(FileState.WAITING.word(), classSetId, FileState.STOPPED.word())
                .update();
        database.sql("update sheets set attempts = 0 where class_set_id = ? and state in (?, ?)")
                .params(classSetId, SheetState.WAITING.word(), SheetState.READING.word())
                .update();
        return stopped;
    }

    private static ScanFileEntry file(ResultSet row) throws SQLException {
        return new ScanFileEntry(
                row.getLong("id"),
                row.getLong("class_set_id"),
                row.getInt("position"),
                row.getString("file_name"),
                row.getString("content_hash"),
                row.getLong("size_bytes"),
                FileState.of(row.getString("state")),
                Rows.optionalText(row, "reason"),
                Rows.instant(row, "received_at"));
    }
}
