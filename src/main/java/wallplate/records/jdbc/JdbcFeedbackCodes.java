package wallplate.records.jdbc;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.records.FeedbackCodes;

@Repository
class JdbcFeedbackCodes implements FeedbackCodes {

    /** Twelve of 22 letters: more than 50 bits, far beyond what can be tried over a network. */
    private static final int LENGTH = 12;

    /** A code that opens its sheet: the sheet is still whose it was. */
    private static final String OPENING =
            " from feedback_codes c join sheets s on s.id = c.sheet_id where s.learner_id is not distinct from c.learner_id ";

    private final JdbcClient database;
    private final Clock clock;

    JdbcFeedbackCodes(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    @Transactional
    public Map<Long, String> make(long classSetId) {
        database.sql("delete from feedback_codes where sheet_id in (select id from sheets where class_set_id = ?)")
                .param(classSetId)
                .update();
        List<Long> sheets = database.sql(
                        """
                        select s.id from sheets s join scan_files f on f.id = s.scan_file_id
                        where s.class_set_id = ? and s.state in ('read', 'unreadable') order by f.position, s.page""")
                .param(classSetId)
                .query(Long.class)
                .list();
        Map<Long, String> codes = new LinkedHashMap<>();
        sheets.forEach(sheet -> codes.put(sheet, make(classSetId, sheet)));
        return codes;
    }

    private String make(long classSetId, long sheetId) {
        String code = RandomCode.ofLength(LENGTH);
        database.sql(
                        """
                        insert into feedback_codes (sheet_id, learner_id, code_hash, made_at)
                        select id, learner_id, ?, ? from sheets where id = ? and class_set_id = ?""")
                .params(hash(code), Rows.timestamp(clock.instant()), sheetId, classSetId)
                .update();
        return code.replaceAll("(.{4})(?=.)", "$1-");
    }

    @Override
    public Optional<Long> sheetOf(String typed) {
        String code = RandomCode.plain(typed);
        return code.length() != LENGTH
                ? Optional.empty()
                : database.sql("select c.sheet_id" + OPENING + "and c.code_hash = ?")
                        .param(hash(code))
                        .query(Long.class)
                        .optional();
    }

    @Override
    public int count(long classSetId) {
        return database.sql("select count(*)" + OPENING + "and s.class_set_id = ?")
                .param(classSetId)
                .query(Integer.class)
                .single();
    }

    private static String hash(String code) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(code.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException broken) {
            throw new IllegalStateException("every Java platform has SHA-256", broken);
        }
    }
}
