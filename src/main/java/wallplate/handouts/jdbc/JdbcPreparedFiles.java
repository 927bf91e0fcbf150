package wallplate.handouts.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.handouts.PreparedFile;
import wallplate.handouts.PreparedFile.Standing;
import wallplate.handouts.PreparedFiles;

@Repository
class JdbcPreparedFiles implements PreparedFiles {

    private final JdbcClient database;
    private final Clock clock;

    JdbcPreparedFiles(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Asked ask(long subject, PreparedFile.Kind kind, Locale language) {
        Optional<String> letGo = find(subject, kind, language).flatMap(PreparedFile::content);
        // A new number: a job that still makes the earlier one keeps nothing.
        database.sql("delete from prepared_files where " + column(kind) + " = ? and kind = ? and language = ?")
                .params(subject, kind.word(), language.toLanguageTag())
                .update();
        database.sql("insert into prepared_files (" + column(kind) + ", kind, language, standing, asked_at) values (?, ?, ?, ?, ?)")
                .params(subject, kind.word(), language.toLanguageTag(), Standing.WAITING.word(), now())
                .update();
        return new Asked(find(subject, kind, language).orElseThrow().id(), letGo);
    }

    @Override
    public Optional<PreparedFile> find(long id) {
        return database.sql("select * from prepared_files where id = ?")
                .param(id)
                .query((row, number) -> file(row))
                .optional();
    }

    @Override
    public Optional<PreparedFile> find(long subject, PreparedFile.Kind kind, Locale language) {
        return database.sql("select * from prepared_files where " + column(kind) + " = ? and kind = ? and language = ?")
                .params(subject, kind.word(), language.toLanguageTag())
                .query((row, number) -> file(row))
                .optional();
    }

    @Override
    public void progress(long id, int done, int sheets) {
        database.sql("update prepared_files set done = ?, sheets = ? where id = ?")
                .params(done, sheets, id)
                .update();
    }

    @Override
    public boolean ready(long id, String state, String content, long sizeBytes) {
        return database.sql(
                                """
                                update prepared_files set standing = ?, done = sheets, state = ?, content_hash = ?, size_bytes = ?, made_at = ?
                                where id = ? and standing = ?""")
                        .params(Standing.READY.word(), state, content, sizeBytes, now(), id, Standing.WAITING.word())
                        .update()
                > 0;
    }

    @Override
    public void failed(long id) {
        database.sql("update prepared_files set standing = ? where id = ?")
                .params(Standing.FAILED.word(), id)
                .update();
    }

    @Override
    public String lastChanges(long classSetId) {
        return database.sql(
                        """
                        select count(*) as changes, coalesce(max(id), 0) as latest from mark_changes
                        where sheet_id in (select id from sheets where class_set_id = ?)""")
                .param(classSetId)
                .query((row, number) -> row.getLong("changes") + " " + row.getLong("latest"))
                .single();
    }

    @Override
    @Transactional
    public List<String> removeBefore(Instant moment) {
        OffsetDateTime before = moment.atOffset(ZoneOffset.UTC);
        List<String> names = database.sql(
                        "select content_hash from prepared_files where asked_at < ? and content_hash is not null")
                .param(before)
                .query(String.class)
                .list();
        database.sql("delete from prepared_files where asked_at < ?").param(before).update();
        return names;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private static String column(PreparedFile.Kind kind) {
        return kind.isAboutALearner() ? "learner_id" : "class_set_id";
    }

    private static PreparedFile file(ResultSet row) throws SQLException {
        PreparedFile.Kind kind = PreparedFile.Kind.of(row.getString("kind")).orElseThrow();
        return new PreparedFile(
                row.getLong("id"),
                row.getLong(column(kind)),
                kind,
                row.getString("language"),
                Standing.of(row.getString("standing")),
                row.getInt("done"),
                row.getInt("sheets"),
                row.getString("state"),
                Optional.ofNullable(row.getString("content_hash")),
                row.getLong("size_bytes"),
                row.getObject("asked_at", OffsetDateTime.class).toInstant(),
                Optional.ofNullable(row.getObject("made_at", OffsetDateTime.class)).map(OffsetDateTime::toInstant));
    }
}
