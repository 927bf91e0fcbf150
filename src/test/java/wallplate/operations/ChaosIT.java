package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.transaction.TransactionException;
import wallplate.audit.AuditCheck;
import wallplate.audit.AuditTrail;
import wallplate.records.ClassSet;
import wallplate.records.FileState;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.records.storage.S3Server;

/**
 * A class set is read by two workers while one is killed, the store goes away and the database server is stopped: at the end
 * every sheet is there once.
 *
 * <p>PostgreSQL, the S3 server and the workers are processes and servers of their own; this test is the web process. With
 * {@code -Dwallplate.chaos.sheets=200} it takes that many sheets and goes on making trouble until all are read.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.NONE)
@Import(HandIn.class)
class ChaosIT {

    private static final int SHEETS = Integer.getInteger("wallplate.chaos.sheets", 6);
    private static final long SEED = Long.getLong("wallplate.chaos.seed", 9);
    private static final Duration AWAY = Duration.ofSeconds(3);

    @TempDir
    static Path folder;

    private static EmbeddedPostgres postgres;
    private static int postgresPort;
    private static S3Server store;
    private static final Map<String, String> SETTINGS = new LinkedHashMap<>();

    @Autowired
    private Tasks tasks;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private ScanStore scans;

    @Autowired
    private HandIn handIn;

    @Autowired
    private JdbcClient database;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private DataSource connections;

    private final Set<Long> writtenEntries = ConcurrentHashMap.newKeySet();
    private volatile boolean isOver;
    private final List<ProgramProcess> workers = new ArrayList<>();
    private final Random chance = new Random(SEED);
    private int started;
    private int losses;
    private int troubles;

    @DynamicPropertySource
    static void servers(DynamicPropertyRegistry properties) throws Exception {
        postgresPort = ProgramProcess.freePort();
        startPostgres();
        store = new S3Server(folder.resolve("objects"));
        SETTINGS.put("spring.datasource.url", postgres.getJdbcUrl("postgres", "postgres"));
        SETTINGS.put("spring.datasource.username", "postgres");
        SETTINGS.put("spring.datasource.password", "");
        SETTINGS.put("db-scheduler.heartbeat-interval", "1s");
        SETTINGS.put("db-scheduler.missed-heartbeats-limit", "4");
        SETTINGS.put("db-scheduler.threads", "1");
        SETTINGS.putAll(store.settings());
        SETTINGS.forEach((key, value) -> properties.add(key, () -> value));
        properties.add("wallplate.role", () -> "web");
        properties.add("management.server.port", () -> "-1");
    }

    private static void startPostgres() throws IOException {
        postgres = EmbeddedPostgres.builder()
                .setPort(postgresPort)
                .setDataDirectory(folder.resolve("postgres"))
                .setCleanDataDirectory(false)
                .start();
    }

    @AfterAll
    static void stopServers() throws Exception {
        postgres.close();
        store.close();
    }

    @Test
    void readsEverySheetOnceWhateverHappensMeanwhile() throws Exception {
        ClassSet classSet =
                handIn.set("Chaos", tasks.add(SampleScans.task()), SampleScans.read().scans(0, SHEETS));
        List<Thread> people = List.of(keepsWritingEntries("A. Keller"), keepsWritingEntries("B. Lind"));
        try {
            workers.add(started());
            workers.add(started());
            awaitFinished(classSet, SHEETS / 6);
            isWatched(workers.get(0));
            killOne();
            awaitFinished(classSet, SHEETS / 3);
            loseStore();
            awaitFinished(classSet, SHEETS / 2);
            losePostgresWhileAWorkerStarts();
            while (SHEETS > 20 && finished(classSet) < SHEETS * 9 / 10) {
                Thread.sleep(5_000 + chance.nextInt(10_000));
                makeTrouble();
            }
            awaitFinished(classSet, SHEETS);
            awaitEmptyQueue();
            assertThat(workers.get(1).end(Duration.ofSeconds(40))).as("a worker ends when it is told to").isTrue();
        } finally {
            isOver = true;
            workers.forEach(ProgramProcess::kill);
        }
        everySheetIsThereOnce(classSet);
        for (Thread person : people) {
            person.join();
        }
        theTrailIsUnbroken();
        System.out.printf(
                "%d sheets, %d workers started, the database lost %d times, %d random troubles%n", SHEETS, started, losses, troubles);
    }

    /** People go on working meanwhile; what the trail has said to be written, it has to have at the end. */
    private Thread keepsWritingEntries(String person) {
        Thread thread = new Thread(() -> {
            while (!isOver) {
                try {
                    writtenEntries.add(trail.append(person, "sign-in", "account of " + person).number());
                    Thread.sleep(50);
                } catch (DataAccessException | TransactionException away) {
                    // The page would have failed, and nothing of it would have been kept.
                } catch (InterruptedException stopped) {
                    return;
                }
            }
        });
        thread.start();
        return thread;
    }

    private void theTrailIsUnbroken() throws SQLException {
        try (Connection connection = connections.getConnection()) {
            assertThat(AuditCheck.of(connection, Optional.empty())).isInstanceOf(AuditCheck.Sound.class);
        }
        assertThat(writtenEntries).hasSizeGreaterThan(20);
        assertThat(database.sql("select number from audit_entries").query(Long.class).list()).containsAll(writtenEntries);
        System.out.printf("%d entries of the trail were written meanwhile%n", writtenEntries.size());
    }

    private ProgramProcess started() throws IOException {
        started++;
        return ProgramProcess.start("chaos-worker-" + started, "worker", SETTINGS);
    }

    private static void isWatched(ProgramProcess worker) throws IOException, InterruptedException {
        assertThat(worker.isReady()).isTrue();
        assertThat(worker.watch("/actuator/health").body()).contains("\"store\"", "\"queue\"", "\"db\"");
        assertThat(metricsOnceItHasRead(worker))
                .contains("wallplate_sheets_total", "wallplate_queue_age_seconds", "wallplate_stage_seconds_sum")
                .contains("wallplate_criteria_total{outcome=\"undecided\"}");
        assertThat(worker.watch("/actuator/env").statusCode()).isEqualTo(404);
        assertThat(worker.log()).doesNotContain("Tomcat started on port 8080");
    }

    /** The other worker may have read every sheet so far. */
    private static String metricsOnceItHasRead(ProgramProcess worker) throws IOException, InterruptedException {
        long deadline = System.nanoTime() + Duration.ofMinutes(2).toNanos();
        String metrics = worker.watch("/actuator/prometheus").body();
        while (!metrics.contains("wallplate_criteria_total") && System.nanoTime() < deadline) {
            Thread.sleep(500);
            metrics = worker.watch("/actuator/prometheus").body();
        }
        return metrics;
    }

    private void makeTrouble() throws Exception {
        troubles++;
        switch (chance.nextInt(4)) {
            case 0 -> loseStore();
            case 1 -> losePostgres();
            default -> killOne();
        }
    }

    private void killOne() throws IOException {
        int which = chance.nextInt(workers.size());
        workers.get(which).kill();
        workers.set(which, started());
    }

    private void loseStore() throws Exception {
        store.stop();
        Thread.sleep(AWAY.toMillis());
        store.startAgain();
    }

    private void losePostgres() throws Exception {
        losses++;
        postgres.close();
        Thread.sleep(AWAY.toMillis());
        startPostgres();
    }

    private void losePostgresWhileAWorkerStarts() throws Exception {
        losses++;
        postgres.close();
        killOne();
        Thread.sleep(4 * AWAY.toMillis());
        startPostgres();
    }

    private long finished(ClassSet classSet) {
        try {
            return handIn.finished(classSet);
        } catch (DataAccessException | TransactionException away) {
            return -1;
        }
    }

    private void awaitFinished(ClassSet classSet, int number) throws Exception {
        Instant latest = Instant.now().plusSeconds(240 + 20L * SHEETS);
        while (finished(classSet) < number) {
            assertThat(Instant.now()).as("%d of %d sheets are read", finished(classSet), number).isBefore(latest);
            startAgainWhatEnded();
            Thread.sleep(200);
        }
    }

    /** What a supervisor does: a worker that ended because the database server went away while it was starting is started again. */
    private void startAgainWhatEnded() throws IOException {
        for (int which = 0; which < workers.size(); which++) {
            ProgramProcess worker = workers.get(which);
            if (!worker.isAlive()) {
                assertThat(tail(worker)).contains("org.postgresql.util.PSQLException");
                assertThat(losses).as("times that the database server went away").isPositive();
                workers.set(which, started());
            }
        }
    }

    private static String tail(ProgramProcess worker) {
        try {
            String log = worker.log();
            return log.substring(Math.max(0, log.length() - 20_000));
        } catch (IOException unreadable) {
            return "no log: " + unreadable;
        }
    }

    private void awaitEmptyQueue() throws InterruptedException {
        Instant latest = Instant.now().plusSeconds(60);
        while (waitingJobs() > 0 && Instant.now().isBefore(latest)) {
            Thread.sleep(200);
        }
    }

    private long waitingJobs() {
        return database.sql("select count(*) from scheduled_tasks where task_name in ('read-file', 'read-sheet')")
                .query(Long.class)
                .single();
    }

    private void everySheetIsThereOnce(ClassSet classSet) throws IOException {
        List<SheetEntry> entries = sheets.of(classSet.id());
        assertThat(entries).hasSize(SHEETS);
        assertThat(entries).extracting(SheetEntry::fileName).doesNotHaveDuplicates();
        if (SHEETS <= 20) {
            assertThat(entries).extracting(SheetEntry::state).isSubsetOf(SheetState.READ, SheetState.UNREADABLE);
        }
        assertThat(entries.stream().filter(sheet -> sheet.state() == SheetState.READ).count())
                .isGreaterThanOrEqualTo(SHEETS * 3L / 4);
        assertThat(files.of(classSet.id())).extracting(ScanFileEntry::state).containsOnly(FileState.DONE);
        assertThat(waitingJobs()).isZero();
        for (SheetEntry sheet : entries) {
            if (sheet.state() == SheetState.READ) {
                assertThat(sheets.marks(sheet.id()).stream().mapToDouble(mark -> mark.available()).sum())
                        .isEqualTo(sheet.available());
                try (InputStream picture = scans.open(sheet.pagePicture().orElseThrow())) {
                    assertThat(picture.read()).isEqualTo(0x89);
                }
            }
        }
    }
}
