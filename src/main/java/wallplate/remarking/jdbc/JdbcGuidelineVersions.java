package wallplate.remarking.jdbc;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import wallplate.marking.Guideline;
import wallplate.remarking.GuidelineRun;
import wallplate.remarking.GuidelineVersions;
import wallplate.remarking.KeptGuideline;
import wallplate.task.TaskFile;

@Repository
class JdbcGuidelineVersions implements GuidelineVersions {

    private static final String SELECT =
            "select version, content, kept_by, kept_at from guideline_versions where task_id = ? ";

    private final JdbcClient database;
    private final Clock clock;

    JdbcGuidelineVersions(JdbcClient database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public List<KeptGuideline> of(long taskId) {
        return database.sql(SELECT + "order by id desc")
                .param(taskId)
                .query((row, number) -> guideline(row))
                .list();
    }

    @Override
    public Optional<KeptGuideline> find(long taskId, String version) {
        return database.sql(SELECT + "and version = ?")
                .params(taskId, version)
                .query((row, number) -> guideline(row))
                .optional();
    }

    @Override
    @Transactional
    public void keep(long taskId, Guideline guideline, String keptBy) {
        if (find(taskId, guideline.version()).isPresent()) {
            return;
        }
        database.sql("insert into guideline_versions (task_id, version, content, kept_by, kept_at) values (?, ?, ?, ?, ?)")
                .params(
                        taskId,
                        guideline.version(),
                        TaskFile.writeMarking(guideline.asMap()),
                        keptBy,
                        clock.instant().atOffset(ZoneOffset.UTC))
                .update();
    }

    @Override
    public List<GuidelineRun> runs(long classSetId) {
        return database.sql(
                        """
                        select from_version, to_version, sheets, sheets_changed, applied_by, applied_at
                        from guideline_runs where class_set_id = ? order by id desc""")
                .param(classSetId)
                .query((row, number) -> new GuidelineRun(
                        row.getString("from_version"),
                        row.getString("to_version"),
                        row.getInt("sheets"),
                        row.getInt("sheets_changed"),
                        row.getString("applied_by"),
                        row.getObject("applied_at", OffsetDateTime.class).toInstant()))
                .list();
    }

    @Override
    public void add(long classSetId, GuidelineRun run) {
        database.sql(
                        """
                        insert into guideline_runs
                            (class_set_id, from_version, to_version, sheets, sheets_changed, applied_by, applied_at)
                        values (?, ?, ?, ?, ?, ?, ?)""")
                .params(
                        classSetId,
                        run.fromVersion(),
                        run.toVersion(),
                        run.sheets(),
                        run.sheetsChanged(),
                        run.appliedBy(),
                        run.appliedAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private static KeptGuideline guideline(ResultSet row) throws SQLException {
        return new KeptGuideline(
                row.getString("version"),
                row.getString("content"),
                row.getString("kept_by"),
                row.getObject("kept_at", OffsetDateTime.class).toInstant());
    }
}
