package wallplate.records.jdbc;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.records.KeptAssessment;
import wallplate.records.SelfCheckEntry;
import wallplate.records.SelfChecks;
import wallplate.records.SheetState;

@Repository
class JdbcSelfChecks implements SelfChecks {

    /** 20 of 22 letters: nobody finds another's result by trying. */
    private static final int TOKEN_LENGTH = 20;

    private static final int LONGEST_REASON = 2000;
    private static final String UNREAD = "state in ('waiting', 'reading')";

    private final JdbcClient database;
    private final Clock clock;

    JdbcSelfChecks(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public Added add(long taskId, String language, Map<String, String> before, String content) {
        String token = RandomCode.ofLength(TOKEN_LENGTH);
        OffsetDateTime now = Rows.timestamp(clock.instant());
        long id = Rows.insert(
                database.sql(
                                """
                                insert into self_checks
                                    (token_hash, task_id, language, before_verdicts, content_hash, state, received_at, seen_at)
                                values (?, ?, ?, ?, ?, ?, ?, ?)""")
                        .params(
                                hash(token),
                                taskId,
                                language,
                                VerdictLines.write(before),
                                content,
                                SheetState.WAITING.word(),
                                now,
                                now));
        return new Added(id, token);
    }

    @Override
    public Optional<SelfCheckEntry> byToken(String token) {
        return database.sql("select * from self_checks where token_hash = ?")
                .param(hash(token))
                .query((row, number) -> entry(row))
                .optional();
    }

    @Override
    public Optional<SelfCheckEntry> find(long id) {
        return database.sql("select * from self_checks where id = ?")
                .param(id)
                .query((row, number) -> entry(row))
                .optional();
    }

    @Override
    public int waitingBefore(long id) {
        return database.sql("select count(*) from self_checks where id < ? and " + UNREAD)
                .param(id)
                .query(Integer.class)
                .single();
    }

    @Override
    public int waiting() {
        return database.sql("select count(*) from self_checks where " + UNREAD)
                .query(Integer.class)
                .single();
    }

    @Override
    @Transactional
    public int begin(long id) {
        int begun = database.sql("update self_checks set state = ?, attempts = attempts + 1 where id = ? and " + UNREAD)
                .params(SheetState.READING.word(), id)
                .update();
        return begun == 0
                ? 0
                : database.sql("select attempts from self_checks where id = ?")
                        .param(id)
                        .query(Integer.class)
                        .single();
    }

    @Override
    public void handBack(long id) {
        database.sql("update self_checks set state = ?, attempts = attempts - 1 where id = ? and state = ?")
                .params(SheetState.WAITING.word(), id, SheetState.READING.word())
                .update();
    }

    @Override
    public void seen(long id) {
        database.sql("update self_checks set seen_at = ?, left_at = null where id = ?")
                .params(Rows.timestamp(clock.instant()), id)
                .update();
    }

    @Override
    public void leaving(String token) {
        database.sql("update self_checks set left_at = ? where token_hash = ?")
                .params(Rows.timestamp(clock.instant()), hash(token))
                .update();
    }

    @Override
    @Transactional
    public List<String> remove(String token) {
        return remove(" where token_hash = ?", List.of(hash(token)));
    }

    @Override
    public boolean keep(long id, KeptAssessment found, String screenPicture) {
        return database.sql("update self_checks set state = ?, assessment = ?, screen_picture = ?, content_hash = null where id = ?")
                        .params(SheetState.READ.word(), AssessmentJson.write(found), screenPicture, id)
                        .update()
                > 0;
    }

    @Override
    public void refuse(long id, String reason) {
        database.sql("update self_checks set state = ?, reason = ?, content_hash = null where id = ?")
                .params(SheetState.UNREADABLE.word(), Rows.cut(reason, LONGEST_REASON), id)
                .update();
    }

    @Override
    @Transactional
    public List<String> removeOver(Instant seenBefore, Instant leftBefore) {
        return remove(
                " where seen_at < ? or left_at < ?", List.of(Rows.timestamp(seenBefore), Rows.timestamp(leftBefore)));
    }

    private List<String> remove(String which, List<?> values) {
        List<String> names = new ArrayList<>();
        database.sql("select content_hash, screen_picture from self_checks" + which)
                .params(values)
                .query(row -> {
                    Optional.ofNullable(row.getString(1)).ifPresent(names::add);
                    Optional.ofNullable(row.getString(2)).ifPresent(names::add);
                });
        database.sql("delete from self_checks" + which).params(values).update();
        return names;
    }

    private static SelfCheckEntry entry(ResultSet row) throws SQLException {
        Optional<KeptAssessment> found = Rows.optionalText(row, "assessment").map(AssessmentJson::read);
        return new SelfCheckEntry(
                row.getLong("id"),
                row.getLong("task_id"),
                row.getString("language"),
                VerdictLines.read(row.getString("before_verdicts")),
                SheetState.of(row.getString("state")),
                Rows.optionalText(row, "content_hash"),
                Rows.optionalText(row, "screen_picture"),
                found,
                Rows.optionalText(row, "reason"),
                row.getBoolean("kept"));
    }

    private static String hash(String token) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }
}
