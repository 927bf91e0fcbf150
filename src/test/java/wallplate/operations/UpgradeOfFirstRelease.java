package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectOutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.init.ScriptUtils;
import wallplate.records.ClassSets;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;

/** A database of the first release goes on with this one: nothing is lost, and work that was under way is finished. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = "wallplate.demonstration.enabled=false")
abstract class UpgradeOfFirstRelease {

    /** SHA-256 of "dear teacher", by sha256sum of GNU coreutils. */
    private static final String WAITING = "65779d9810717aab476493577e402948d1f21b9fc3cf652cd933b305befa0ca0";

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private JdbcClient database;

    /** Makes the tables of the first release and fills them. */
    static void fill(String address, String user, String password, String scans) {
        try {
            Path scan = Path.of(scans, WAITING.substring(0, 2), WAITING);
            Files.createDirectories(scan.getParent());
            Files.writeString(scan, "dear teacher");
            Flyway.configure().dataSource(address, user, password).target("0003").load().migrate();
            String script = Files.readString(Path.of("src/test/resources/upgrade/first-release.sql"))
                    .replace("${task}", DrawnSheets.aTaskFile().replace("'", "''"))
                    .replace("${waiting}", WAITING);
            try (Connection connection = DriverManager.getConnection(address, user, password)) {
                ScriptUtils.executeSqlScript(
                        connection, new ByteArrayResource(script.getBytes(StandardCharsets.UTF_8)));
                addJob(connection);
            }
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        } catch (SQLException broken) {
            throw new IllegalStateException("the database of the first release could not be made", broken);
        }
    }

    /** The job that a process of the first release had taken when it ended. */
    private static void addJob(Connection connection) throws SQLException, IOException {
        ByteArrayOutputStream number = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(number)) {
            out.writeObject(2L);
        }
        try (PreparedStatement insert = connection.prepareStatement(
                """
                insert into scheduled_tasks
                    (task_name, task_instance, task_data, execution_time, picked, picked_by, last_heartbeat, version)
                values ('read-file', '2', ?, timestamp with time zone '2026-09-03 09:00:01+00', true, 'gone',
                        timestamp with time zone '2026-09-03 09:00:02+00', 2)""")) {
            insert.setBytes(1, number.toByteArray());
            insert.executeUpdate();
        }
    }

    @Test
    void keepsWhatTheFirstReleaseKeptAndFinishesItsWork() throws InterruptedException {
        assertThat(tasks.byLearnerCode("K7QM2P").orElseThrow().task()).isEqualTo(DrawnSheets.aTask());
        assertThat(classSets.learners(1)).extracting("name").containsExactly("Ada Nkosi", "Bo Lind");
        SheetEntry ada = sheets.of(1).get(0);
        assertThat(ada.label()).isEqualTo("Ada Nkosi");
        assertThat(ada.reason()).contains("The sheet is cut off.");
        assertThat(ada.checkedAt()).contains(Instant.parse("2026-09-03T09:10:00Z"));
        assertThat(sheets.changes(1)).extracting("changedBy").containsExactly("A. Teacher");
        assertThat(count("moderation_sheets")).isEqualTo(1);
        assertThat(stateOfBo()).isEqualTo(SheetState.UNREADABLE);
        assertThat(count("sheets")).isEqualTo(2);
    }

    private SheetState stateOfBo() throws InterruptedException {
        Instant latest = Instant.now().plus(Duration.ofSeconds(120));
        while (!sheets.of(1).get(1).state().isFinished() && Instant.now().isBefore(latest)) {
            Thread.sleep(100);
        }
        return sheets.of(1).get(1).state();
    }

    private int count(String table) {
        return database.sql("select count(*) from " + table).query(Integer.class).single();
    }
}
