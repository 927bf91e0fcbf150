package wallplate.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.SchoolYear;
import wallplate.marking.Verdict;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.ownership.Share;
import wallplate.records.ClassSet;
import wallplate.records.PostgresServer;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** Everything that an installation keeps, backed up and restored into empty ones, table by table and file by file. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:backup;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/backup",
            "wallplate.demonstration.enabled=false"
        })
@Import(DecidedSets.class)
class BackupTest {

    private static final String H2 =
            "--spring.datasource.url=jdbc:h2:mem:%s;DB_CLOSE_DELAY=-1;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH";
    /** Tables that this test's installation must have filled, so that a comparison says something. */
    private static final Set<String> FILLED = Set.of(
            "drawing_tasks", "school_classes", "learners", "class_sets", "scan_files", "sheets", "marks",
            "mark_changes", "moderations", "moderation_sheets", "mark_sheets", "mark_sheet_columns", "mark_sheet_lines",
            "mark_sheet_entries", "scheduled_tasks");

    @Autowired
    private DataSource database;

    @Autowired
    private ScanStore store;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Classes classes;

    @Autowired
    private ClassLists lists;

    @Autowired
    private MarkSheets markSheets;

    @Autowired
    private MarkSheetBook book;

    @TempDir
    private Path folder;

    private byte[] backup;

    @BeforeEach
    void anInstallationThatIsInUse() throws IOException {
        if (classes.all(Share.everything()).isEmpty()) {
            fill();
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Backup(database, store, Clock.systemUTC()).write(out);
        backup = out.toByteArray();
    }

    private void fill() throws IOException {
        ClassSet set = decided.aSet(tasks.add(DrawnSheets.aTask()), 10, 1);
        decided.change(sheets.marksOfSet(set.id()).get(0), Verdict.NOT_MET, 0);
        decided.markAndHandIn(decided.drawn(set, 6), 1);
        var eleventh = classes.add("11B \"quoted\", Zoë", new SchoolYear("2026/27")).orElseThrow();
        lists.take(eleventh, "Ada,1\nBo,\n".getBytes(StandardCharsets.UTF_8));
        classes.leave(lists.present(eleventh.id()).subList(0, 1));
        long sheet = markSheets.add(new NewMarkSheet(
                set.classId(), "Term 1", "11B", "", "Term 1", 5,
                List.of(new NewMarkSheet.Task(set.id(), "Eaves", new BigDecimal("1.25"))), "teacher"));
        book.submit(book.find(sheet).orElseThrow(), "teacher");
        JdbcClient.create(database)
                .sql("insert into scheduled_tasks (task_name, task_instance, task_data, execution_time, picked, version) "
                        + "values ('left', 'over', ?, current_timestamp, false, 1)")
                .param(new byte[] {0, 1, (byte) 0xff})
                .update();
        for (int number = 0; number < 3; number++) {
            byte[] content = new byte[200_000 * number + 1];
            Arrays.fill(content, (byte) number);
            store.put(new ByteArrayInputStream(content));
        }
    }

    @Test
    void restoresEveryTableAndFileOnPostgresAndFromThereOnH2() throws Exception {
        String[] postgres = onPostgres("restored");
        byte[] onPostgres = backupOf(postgres, restore(postgres, backup));
        String[] h2 = onH2("restored");
        byte[] onH2 = backupOf(h2, restore(h2, onPostgres));

        Map<String, List<String>> before = entries(backup);
        assertThat(before.keySet().stream().filter(name -> before.get(name).size() > 1)
                        .map(name -> name.replace("tables/", "")))
                .containsAll(FILLED);
        assertThat(entries(onH2)).isEqualTo(before);
        assertThat(entries(onPostgres).keySet()).isEqualTo(before.keySet());
    }

    @Test
    void numbersNewRowsBehindTheRestoredOnes() throws Exception {
        for (String[] settings : List.of(onH2("counted"), onPostgres("counted"))) {
            restore(settings, backup);
            Installation.open(settings, opened -> {
                var client = JdbcClient.create(opened.database());
                client.sql("insert into school_classes (name, created_at) values ('new', current_timestamp)").update();
                assertThat(client.sql("select count(*) from school_classes").query(Integer.class).single())
                        .isGreaterThan(2);
                return none();
            });
        }
    }

    @Test
    void refusesToRestoreOverSomething() throws Exception {
        String[] settings = onH2("twice");
        restore(settings, backup);

        assertThatThrownBy(() -> restore(settings, backup))
                .isInstanceOf(BackupRefused.class)
                .hasMessageContaining("not empty");

        String[] onlyScans = onH2("only-scans");
        Installation.open(onlyScans, opened -> {
            opened.store().put(new ByteArrayInputStream(new byte[] {7}));
            return none();
        });
        assertThatThrownBy(() -> restore(onlyScans, backup))
                .isInstanceOf(BackupRefused.class)
                .hasMessageContaining("scan store");
    }

    @Test
    void keepsNothingOfABackupThatIsCutOffOrNone() throws Exception {
        String[] settings = onH2("cut-off");
        for (int length : new int[] {backup.length / 3, backup.length * 9 / 10}) {
            assertThatThrownBy(() -> restore(settings, Arrays.copyOf(backup, length))).isInstanceOf(BackupRefused.class);
        }
        assertThatThrownBy(() -> restore(settings, "no backup".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(BackupRefused.class);

        restore(settings, backup);
    }

    private String[] onH2(String name) throws IOException {
        return new String[] {
            H2.formatted("backup-" + name), "--spring.datasource.username=wallplate", "--spring.datasource.password=",
            "--wallplate.scans=" + Files.createTempDirectory(folder, "h2")
        };
    }

    private String[] onPostgres(String name) throws IOException {
        List<String> settings = new ArrayList<>();
        PostgresServer.use((key, value) -> settings.add("--" + key + "=" + value.get()), "backup_" + name);
        settings.add("--wallplate.scans=" + Files.createTempDirectory(folder, "postgres"));
        return settings.toArray(String[]::new);
    }

    private static Contents restore(String[] settings, byte[] file) throws IOException {
        return Installation.open(
                settings,
                opened -> opened.restore().read(new ByteArrayInputStream(file)));
    }

    private static byte[] backupOf(String[] settings, Contents restored) throws IOException {
        assertThat(restored.rows()).isPositive();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Installation.open(settings, opened -> opened.backup().write(out));
        return out.toByteArray();
    }

    private static Contents none() {
        return new Contents(1, "", "", List.of(), 0);
    }

    /** The lines of every table, sorted, and of every scan its bytes as text; the first entry has the time of the backup. */
    private static Map<String, List<String>> entries(byte[] file) throws IOException {
        Map<String, List<String>> entries = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                String text = new String(zip.readAllBytes(), StandardCharsets.ISO_8859_1);
                if (!entry.getName().equals("contents.json")) {
                    entries.put(entry.getName(), text.lines().sorted().toList());
                }
            }
        }
        return entries;
    }
}
