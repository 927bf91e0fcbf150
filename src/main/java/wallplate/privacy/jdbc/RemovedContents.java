package wallplate.privacy.jdbc;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import wallplate.privacy.BlankPages;
import wallplate.records.PageFacts;
import wallplate.records.Sheets;

/** Lets records go of contents in the scan store; every method expects a transaction and returns the names that are left over. */
@Component
class RemovedContents {

    private final JdbcClient database;
    private final Sheets sheets;
    private final Clock clock;

    RemovedContents(JdbcClient database, Sheets sheets, Clock clock) {
        this.database = database;
        this.sheets = sheets;
        this.clock = clock;
    }

    /** Of scan files. A name that no content can have stands in the place of theirs, because a set has no name twice. */
    List<String> ofFiles(List<Long> fileIds) {
        List<String> names = new ArrayList<>();
        for (long id : fileIds) {
            names.addAll(database.sql("select content_hash from scan_files where id = ? and size_bytes > 0")
                    .param(id)
                    .query(String.class)
                    .list());
            database.sql("update scan_files set content_hash = ?, size_bytes = 0 where id = ?")
                    .params("%064x".formatted(id), id)
                    .update();
        }
        return names;
    }

    /** Of pages, their first readings included; blank pages as large stand in their place. */
    List<String> ofPages(List<Long> sheetIds, BlankPages blankPages) {
        List<String> names = new ArrayList<>();
        Map<String, BlankPages.Blank> made = new HashMap<>();
        for (long id : sheetIds) {
            PageFacts page = sheets.assessment(id).orElseThrow().page();
            BlankPages.Blank blank = made.computeIfAbsent(
                    page.widthPx() + "x" + page.heightPx(), size -> blankPages.like(page));
            for (String table : List.of("sheets", "sheet_first_readings")) {
                String key = table.equals("sheets") ? "id" : "sheet_id";
                database.sql("select page_picture, screen_picture from %s where %s = ?".formatted(table, key))
                        .param(id)
                        .query(row -> {
                            names.add(row.getString(1));
                            names.add(row.getString(2));
                        });
                database.sql("update %s set page_picture = ?, screen_picture = ? where %s = ?".formatted(table, key))
                        .params(blank.page(), blank.screen(), id)
                        .update();
            }
            database.sql("update sheets set pictures_removed_at = ? where id = ?")
                    .params(clock.instant().atOffset(ZoneOffset.UTC), id)
                    .update();
        }
        return names;
    }

    /** The names that class sets refer to. */
    List<String> namesOfSets(List<Long> setIds) {
        List<String> names = new ArrayList<>();
        for (long id : setIds) {
            names.addAll(database.sql(
                            """
                            select content_hash from scan_files where class_set_id = :set
                            union select page_picture from sheets where class_set_id = :set and page_picture is not null
                            union select screen_picture from sheets where class_set_id = :set and screen_picture is not null
                            union select r.page_picture from sheet_first_readings r join sheets s on s.id = r.sheet_id where s.class_set_id = :set
                            union select r.screen_picture from sheet_first_readings r join sheets s on s.id = r.sheet_id where s.class_set_id = :set
                            """)
                    .param("set", id)
                    .query(String.class)
                    .list());
        }
        return names;
    }
}
