package wallplate.records.jdbc;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.records.FileState;
import wallplate.records.Readings;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetState;
import wallplate.records.Sheets;

@Repository
class JdbcReadings implements Readings {

    private static final String UNFINISHED = "state in ('waiting', 'reading')";

    private final JdbcClient database;
    private final ScanFiles files;
    private final Sheets sheets;

    JdbcReadings(JdbcClient database, ScanFiles files, Sheets sheets) {
        this.database = database;
        this.files = files;
        this.sheets = sheets;
    }

    @Override
    public Optional<ScanFileEntry> fileOf(long sheetId) {
        return database.sql("select scan_file_id from sheets where id = ?")
                .param(sheetId)
                .query(Long.class)
                .optional()
                .flatMap(files::find);
    }

    @Override
    @Transactional
    public List<Long> open(long fileId, int pages) {
        int wanted = database.sql("update scan_files set state = ?, attempts = 0 where id = ? and " + UNFINISHED)
                .params(FileState.READING.word(), fileId)
                .update();
        if (wanted == 0) {
            return List.of();
        }
        addMissing(files.find(fileId).orElseThrow(), pages);
        return database.sql("select id from sheets where scan_file_id = ? and " + UNFINISHED + " order by page")
                .param(fileId)
                .query(Long.class)
                .list();
    }

    private void addMissing(ScanFileEntry file, int pages) {
        Set<Integer> present = new HashSet<>(database.sql("select page from sheets where scan_file_id = ?")
                .param(file.id())
                .query(Integer.class)
                .list());
        boolean added = false;
        for (int page = 1; page <= pages; page++) {
            if (present.add(page)) {
                database.sql("insert into sheets (class_set_id, scan_file_id, page, state) values (?, ?, ?, ?)")
                        .params(file.classSetId(), file.id(), page, SheetState.WAITING.word())
                        .update();
                added = true;
            }
        }
        if (added) {
            sheets.match(file.classSetId());
        }
    }

    @Override
    @Transactional
    public void unpacked(long fileId) {
        long classSetId = files.find(fileId).orElseThrow().classSetId();
        database.sql("delete from sheets where scan_file_id = ? and " + UNFINISHED).param(fileId).update();
        files.finish(fileId);
        sheets.match(classSetId);
    }

    @Override
    public int openings(long fileId) {
        return database.sql("select attempts from scan_files where id = ?")
                .param(fileId)
                .query(Integer.class)
                .single();
    }

    @Override
    public void handBackFile(long fileId) {
        database.sql("update scan_files set attempts = greatest(attempts - 1, 0) where id = ?")
                .param(fileId)
                .update();
    }

    @Override
    public void handBack(long sheetId) {
        database.sql("update sheets set state = ?, attempts = greatest(attempts - 1, 0) where id = ? and state = ?")
                .params(SheetState.WAITING.word(), sheetId, SheetState.READING.word())
                .update();
    }

    @Override
    public void finishWhereRead(long fileId) {
        database.sql(
                        """
                        update scan_files set state = ? where id = ? and state = ?
                          and not exists (
                            select 1 from sheets s where s.scan_file_id = scan_files.id and s.state in (?, ?))""")
                .params(
                        FileState.DONE.word(),
                        fileId,
                        FileState.READING.word(),
                        SheetState.WAITING.word(),
                        SheetState.READING.word())
                .update();
    }

    @Override
    @Transactional
    public Optional<ScanFileEntry> tryAgain(long sheetId) {
        int waiting = database.sql(
                        "update sheets set state = ?, reason = null, attempts = 0, assessed_at = null where id = ? and state = ?")
                .params(SheetState.WAITING.word(), sheetId, SheetState.FAILED.word())
                .update();
        if (waiting == 0) {
            return Optional.empty();
        }
        Optional<ScanFileEntry> file = fileOf(sheetId);
        file.ifPresent(found -> database.sql("update scan_files set state = ?, attempts = 0 where id = ?")
                .params(FileState.WAITING.word(), found.id())
                .update());
        return file;
    }

    @Override
    public List<Long> setAside(long classSetId) {
        return database.sql("select id from sheets where class_set_id = ? and state = ? order by id")
                .params(classSetId, SheetState.FAILED.word())
                .query(Long.class)
                .list();
    }
}
