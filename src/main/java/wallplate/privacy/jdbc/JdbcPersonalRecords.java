package wallplate.privacy.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;
import wallplate.privacy.BlankPages;
import wallplate.privacy.PersonalRecords;

@Repository
class JdbcPersonalRecords implements PersonalRecords {

    private static final String STAYS =
            """
            select l.id, c.name as class_name, coalesce(c.school_year, '') as school_year, l.position, l.name,
                   coalesce(l.candidate_number, '') as candidate_number,
                   coalesce(l.joined_at, c.created_at) as joined_at, l.left_at
            from learners l join school_classes c on c.id = l.class_id
            """;

    private static final String REASON = "(erased)";
    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final JdbcClient database;
    private final RemovedContents contents;
    private final Clock clock;

    JdbcPersonalRecords(JdbcClient database, RemovedContents contents, Clock clock) {
        this.database = database;
        this.contents = contents;
        this.clock = clock;
    }

    /** As histories tell who is the same: by moves between classes; in lists of single sets by number, else by name and class. */
    @Override
    public List<Stay> stays(long learnerId) {
        return database.sql(STAYS
                        + """
                        where l.id = :id
                           or l.person_id = (select p.person_id from learners p join school_classes k on k.id = p.class_id
                                             where p.id = :id and k.school_year is not null)
                           or c.school_year is null and exists (
                               select 1 from learners p join school_classes k on k.id = p.class_id
                               where p.id = :id and k.school_year is null
                                 and (coalesce(p.candidate_number, '') <> '' and p.candidate_number = l.candidate_number
                                      or coalesce(p.candidate_number, '') = '' and coalesce(l.candidate_number, '') = ''
                                         and p.name = l.name and k.name = c.name))
                        order by joined_at, l.id""")
                .param("id", learnerId)
                .query((row, number) -> stay(row))
                .list();
    }

    private static Stay stay(ResultSet row) throws SQLException {
        return new Stay(
                row.getLong("id"),
                row.getString("class_name"),
                row.getString("school_year"),
                row.getInt("position"),
                row.getString("name"),
                row.getString("candidate_number"),
                row.getObject("joined_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("left_at", OffsetDateTime.class)).map(OffsetDateTime::toInstant));
    }

    private static List<Long> ids(List<Stay> stays) {
        return stays.stream().map(Stay::learnerId).toList();
    }

    @Override
    public List<PersonalSheet> sheets(List<Stay> stays) {
        return stays.isEmpty()
                ? List.of()
                : database.sql(
                                """
                                select s.id, s.class_set_id, f.id as file_id, s.page, f.file_name, f.content_hash, f.size_bytes,
                                       s.printed_code,
                                       (select count(*) from sheets o where o.scan_file_id = f.id
                                            and (o.learner_id is null or o.learner_id not in (:learners))) as others
                                from sheets s join scan_files f on f.id = s.scan_file_id
                                where s.learner_id in (:learners) order by s.id""")
                        .param("learners", ids(stays))
                        .query((row, number) -> new PersonalSheet(
                                row.getLong("id"),
                                row.getLong("class_set_id"),
                                row.getLong("file_id"),
                                row.getInt("page"),
                                row.getString("file_name"),
                                row.getString("content_hash"),
                                row.getLong("size_bytes") > 0,
                                Optional.ofNullable(row.getString("printed_code")),
                                row.getInt("others")))
                        .list();
    }

    @Override
    public List<PersonalLine> lines(List<Stay> stays) {
        return stays.isEmpty()
                ? List.of()
                : database.sql(
                                """
                                select mark_sheet_id, line from mark_sheet_lines where learner_id in (:learners)
                                order by mark_sheet_id, line""")
                        .param("learners", ids(stays))
                        .query((row, number) -> new PersonalLine(row.getLong("mark_sheet_id"), row.getInt("line")))
                        .list();
    }

    @Override
    public List<String> erase(List<Stay> stays, List<PersonalSheet> sheets, BlankPages blank) {
        List<String> names = new ArrayList<>();
        lines(stays).forEach(this::eraseLine);
        for (PersonalSheet sheet : sheets) {
            names.addAll(contents.ofFiles(List.of(sheet.fileId())));
            if (isRead(sheet)) {
                names.addAll(contents.ofPages(List.of(sheet.sheetId()), blank));
            }
            eraseSheet(sheet);
        }
        names.addAll(letGoOfPreparedFiles(stays, sheets));
        if (!stays.isEmpty()) {
            database.sql("delete from home_checks where learner_id in (:learners)")
                    .param("learners", ids(stays))
                    .update();
        }
        // A row of its own for each time in a class: nothing says any more that they were one person's.
        stays.forEach(stay -> database.sql(
                        """
                        update learners set name = ?, candidate_number = null, person_id = id, left_at = coalesce(left_at, ?)
                        where id = ?""")
                .params("(erased %d)".formatted(stay.learnerId()), now(), stay.learnerId())
                .update());
        return names;
    }

    /** The learner's feedback is in every file of such a set. */
    private List<String> letGoOfPreparedFiles(List<Stay> stays, List<PersonalSheet> sheets) {
        List<String> names = new ArrayList<>();
        letGo("class_set_id", sheets.stream().map(PersonalSheet::classSetId).distinct().toList(), names);
        letGo("learner_id", ids(stays), names);
        return names;
    }

    private void letGo(String column, List<Long> subjects, List<String> names) {
        if (subjects.isEmpty()) {
            return;
        }
        names.addAll(database.sql("select content_hash from prepared_files where %s in (:subjects) and content_hash is not null"
                        .formatted(column))
                .param("subjects", subjects)
                .query(String.class)
                .list());
        database.sql("delete from prepared_files where %s in (:subjects)".formatted(column))
                .param("subjects", subjects)
                .update();
    }

    private boolean isRead(PersonalSheet sheet) {
        return database.sql("select count(*) from sheets where id = ? and page_picture is not null and assessment is not null")
                        .param(sheet.sheetId())
                        .query(Integer.class)
                        .single()
                > 0;
    }

    /** The learner stays the sheet's, as nobody, so that nobody else is matched with it. */
    private void eraseSheet(PersonalSheet sheet) {
        String fileName = "scan-%d".formatted(sheet.fileId());
        database.sql("update scan_files set file_name = ?, reason = null where id = ?")
                .params(fileName, sheet.fileId())
                .update();
        database.sql("update sheets set printed_code = null, matched_by = 'hand' where id = ?")
                .param(sheet.sheetId())
                .update();
        for (String table : List.of("sheets", "sheet_first_readings")) {
            renameInResult(table, table.equals("sheets") ? "id" : "sheet_id", sheet, fileName);
        }
        // Of a scan from a ZIP file the reason names the file.
        database.sql("update sheets set reason = ? where id = ? and reason is not null")
                .params(REASON, sheet.sheetId())
                .update();
        database.sql("delete from feedback_codes where sheet_id = ?").param(sheet.sheetId()).update();
        database.sql("update mark_changes set reason = ? where sheet_id = ? and reason <> ''")
                .params(REASON, sheet.sheetId())
                .update();
    }

    /** Result files name the scan that they come from. */
    private void renameInResult(String table, String key, PersonalSheet sheet, String fileName) {
        database.sql("select result_json from %s where %s = ? and result_json is not null".formatted(table, key))
                .param(sheet.sheetId())
                .query(String.class)
                .optional()
                .ifPresent(json -> database.sql("update %s set result_json = ? where %s = ?".formatted(table, key))
                        .params(renamed(json, fileName), sheet.sheetId())
                        .update());
    }

    private static String renamed(String json, String fileName) {
        JsonNode result = JSON.readTree(json);
        if (result instanceof ObjectNode object && object.has("scan")) {
            object.put("scan", fileName);
        }
        return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(result) + "\n";
    }

    private void eraseLine(PersonalLine line) {
        database.sql(
                        """
                        update mark_sheet_lines set name = '(erased)', candidate_number = '', learner_id = null
                        where mark_sheet_id = ? and line = ?""")
                .params(line.markSheetId(), line.line())
                .update();
        database.sql("update mark_sheet_corrections set reason = ? where mark_sheet_id = ? and line = ?")
                .params(REASON, line.markSheetId(), line.line())
                .update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
