package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.bean.override.mockito.MockitoBean;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
import wallplate.records.Readings;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** The reading of files as the queue calls it, with one of the project's own sheets. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:jobs;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/jobs",
            "wallplate.demonstration.enabled=false"
        })
class ReadingTest {

    private static final Path SAMPLES = Path.of("sample-scans");

    /** Keeps the queue still, so that a test does every step itself. */
    @MockitoBean
    private Start.ReadingStart start;

    @Autowired
    private FileOpening opening;

    @Autowired
    private SheetReading reading;

    @Autowired
    private ReadingQueue queue;

    @Autowired
    private QueueTable table;

    @Autowired
    private Readings readings;

    @Autowired
    private JdbcClient database;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private ScanStore store;

    private ClassSet classSet;

    @BeforeEach
    void aClassSet() throws IOException {
        TaskReading task = TaskFile.read(Files.readString(SAMPLES.resolve("task.yml")));
        classSet = classSets.add(
                "Test set",
                "10B",
                List.of(new ClassListEntry("Amara", "")),
                tasks.add(((TaskReading.Accepted) task).task()),
                false);
    }

    @Test
    void readsMarksAndKeepsASheet() throws IOException {
        ScanFileEntry file = received("01-amara.jpg", Files.readAllBytes(SAMPLES.resolve("01-amara.jpg")));

        read(file);

        SheetEntry sheet = sheets.of(classSet.id()).get(0);
        assertThat(sheet.state()).isEqualTo(SheetState.READ);
        assertThat(sheet.label()).isEqualTo("Amara");
        assertThat(sheet.available()).isGreaterThan(30);
        assertThat(sheet.awarded()).isGreaterThan(20);
        assertThat(sheets.resultJson(sheet.id()).orElseThrow()).contains("\"status\"", "roof.pitch");
        try (var png = store.open(sheet.pagePicture().orElseThrow())) {
            assertThat(png.readNBytes(4)).isEqualTo(new byte[] {(byte) 0x89, 'P', 'N', 'G'});
        }
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void refusesATextNamedAsAPictureWithAReason() throws IOException {
        ScanFileEntry file = received("homework.png", "dear teacher".getBytes(StandardCharsets.UTF_8));

        read(file);

        SheetEntry sheet = sheets.of(classSet.id()).get(0);
        assertThat(sheet.state()).isEqualTo(SheetState.UNREADABLE);
        assertThat(sheet.reason().orElseThrow()).isNotBlank();
        assertThat(sheet.needsPerson()).isTrue();
    }

    @Test
    void setsASheetAsideThatStoppedTheProgramTwice() throws IOException {
        ScanFileEntry file = received("01-amara.jpg", Files.readAllBytes(SAMPLES.resolve("01-amara.jpg")));
        SheetEntry sheet = sheets.page(file.id(), 1);
        sheets.beginReading(sheet.id());
        sheets.beginReading(sheet.id());

        read(file);

        SheetEntry aside = sheets.find(sheet.id()).orElseThrow();
        assertThat(aside.state()).isEqualTo(SheetState.FAILED);
        assertThat(aside.reason().orElseThrow()).contains("twice");
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void goesOnWhereItStoodAfterACrash() throws IOException {
        ScanFileEntry file = received("homework.png", "dear teacher".getBytes(StandardCharsets.UTF_8));
        SheetEntry sheet = sheets.page(file.id(), 1);
        sheets.refuse(sheet.id(), "kept before the crash", "{}");
        files.begin(file.id());

        read(file);

        assertThat(sheets.of(classSet.id())).hasSize(1);
        assertThat(sheets.find(sheet.id()).orElseThrow().reason()).contains("kept before the crash");
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void leavesAStoppedFileAlone() throws IOException {
        ScanFileEntry file = received("homework.png", "dear teacher".getBytes(StandardCharsets.UTF_8));
        sheets.page(file.id(), 1);
        files.stop(classSet.id());

        read(file);

        assertThat(sheets.of(classSet.id()).get(0).state()).isEqualTo(SheetState.WAITING);
    }

    @Test
    void readsEveryScanInAZipFileUnderItsOwnName() throws IOException {
        ScanFileEntry archive = received(
                "set.zip",
                zip("b.png", "not a picture", "folder/a.png", "nor this", "inner.zip", "PK\u0003\u0004"));
        sheets.page(archive.id(), 1);

        read(archive);
        for (ScanFileEntry file : files.of(classSet.id())) {
            read(file);
        }

        assertThat(sheets.of(classSet.id()))
                .extracting(sheet -> sheet.fileName() + " " + sheet.state())
                .containsExactly("set.zip UNREADABLE", "b.png UNREADABLE", "a.png UNREADABLE");
        assertThat(files.of(classSet.id())).extracting(ScanFileEntry::state).containsOnly(FileState.DONE);
    }

    @Test
    void takesAZipFileOutOfTheListWhereEverythingInItIsTaken() throws IOException {
        ScanFileEntry archive = received("set.zip", zip("a.png", "not a picture", "b.png", "nor this"));
        sheets.page(archive.id(), 1);

        read(archive);
        read(archive);

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::fileName).containsExactly("a.png", "b.png");
    }

    @Test
    void makesEveryPageAJobOfItsOwn() throws IOException {
        ScanFileEntry file = received("pages.pdf", pdfOf(3));
        sheets.page(file.id(), 1);

        opening.open(file.id());

        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::page).containsExactly(1, 2, 3);
        assertThat(jobsOf(classSet)).hasSize(3);
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.READING);
        readSheets();
        assertThat(sheets.of(classSet.id())).extracting(SheetEntry::state).containsOnly(SheetState.UNREADABLE);
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void readsOneSheetOfAnotherClassBetweenTwoOfALongSet() throws IOException {
        ScanFileEntry longSet = received("two-hundred.pdf", pdfOf(200));
        opening.open(longSet.id());
        serve(20);
        ClassSet first = classSet;
        aClassSet();
        opening.open(received("five.pdf", pdfOf(5)).id());

        List<String> next = database.sql(
                        "select task_instance from scheduled_tasks order by priority desc, execution_time limit 10")
                .query(String.class)
                .list();

        assertThat(next.stream().filter(job -> job.startsWith("class-" + classSet.classId() + "/"))).hasSize(5);
        assertThat(next.stream().filter(job -> job.startsWith("class-" + first.classId() + "/"))).hasSize(5);
    }

    @Test
    void handsBackASheetThatTheStoreDoesNotGive() throws IOException {
        ScanFileEntry file = received("homework.png", "in no store".getBytes(StandardCharsets.UTF_8));
        opening.open(file.id());
        store.delete(file.contentHash());
        long sheet = sheets.of(classSet.id()).get(0).id();

        for (int attempt = 1; attempt <= 4; attempt++) {
            assertThatThrownBy(() -> reading.read(sheet)).isInstanceOf(NoSuchFileException.class);
        }

        assertThat(sheets.find(sheet).orElseThrow().state()).isEqualTo(SheetState.WAITING);
        store.put(new ByteArrayInputStream("in no store".getBytes(StandardCharsets.UTF_8)));
        reading.read(sheet);
        assertThat(sheets.find(sheet).orElseThrow().state()).isEqualTo(SheetState.UNREADABLE);
    }

    /** Only a killed process leaves a beginning; whoever hands the sheet back afterwards takes back its own and no other. */
    @Test
    void keepsTheBeginningOfAKilledProcessWhenAnotherHandsTheSheetBack() throws IOException {
        ScanFileEntry file = received("homework.png", "begun by two".getBytes(StandardCharsets.UTF_8));
        opening.open(file.id());
        store.delete(file.contentHash());
        long sheet = sheets.of(classSet.id()).get(0).id();
        sheets.beginReading(sheet);

        assertThatThrownBy(() -> reading.read(sheet)).isInstanceOf(NoSuchFileException.class);

        assertThat(sheets.find(sheet).orElseThrow().state()).isEqualTo(SheetState.WAITING);
        assertThat(database.sql("select attempts from sheets where id = ?").param(sheet).query(Integer.class).single())
                .isEqualTo(1);
    }

    /** The beginning and having it in hand are one step: nothing is begun that nobody would hand back. */
    @Test
    void beginsNoSheetOnceEverythingWasHandedBack() throws IOException {
        ScanFileEntry file = received("homework.png", "too late".getBytes(StandardCharsets.UTF_8));
        opening.open(file.id());
        long sheet = sheets.of(classSet.id()).get(0).id();
        InHand ending = new InHand(readings, table, new ProcessName());
        ending.beginWork();
        ending.take(sheet, sheets::beginReading);

        ending.handAllBack();

        assertThatThrownBy(() -> ending.take(sheet, sheets::beginReading)).isInstanceOf(IllegalStateException.class);
        assertThat(sheets.find(sheet).orElseThrow().state()).isEqualTo(SheetState.WAITING);
        assertThat(database.sql("select attempts from sheets where id = ?").param(sheet).query(Integer.class).single())
                .isZero();
    }

    @Test
    void readsASheetAgainThatWasSetAside() throws IOException {
        ScanFileEntry file = received("homework.png", "dear teacher".getBytes(StandardCharsets.UTF_8));
        opening.open(file.id());
        long sheet = sheets.of(classSet.id()).get(0).id();
        sheets.fail(sheet, "the store was away");
        readings.finishWhereRead(file.id());
        clearQueue();

        assertThat(queue.tryAllAgain(classSet.id())).isEqualTo(1);
        assertThat(queue.tryAgain(sheet)).isFalse();
        assertThat(sheets.find(sheet).orElseThrow().reason()).isEmpty();
        read(file);

        assertThat(sheets.find(sheet).orElseThrow().state()).isEqualTo(SheetState.UNREADABLE);
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void setsAFileAsideWhoseOpeningStoppedTheProgramTwice() throws IOException {
        ScanFileEntry file = received("trap.pdf", pdfOf(1));
        sheets.page(file.id(), 1);
        files.begin(file.id());
        files.begin(file.id());

        opening.open(file.id());

        SheetEntry aside = sheets.of(classSet.id()).get(0);
        assertThat(aside.state()).isEqualTo(SheetState.FAILED);
        assertThat(aside.reason().orElseThrow()).contains("twice");
    }

    @Test
    void findsFilesAndSheetsThatHaveNoJob() throws IOException {
        ScanFileEntry kept = received("kept.png", "not queued yet".getBytes(StandardCharsets.UTF_8));
        ScanFileEntry opened = received("opened.pdf", pdfOf(2));
        ScanFileEntry queued = received("queued.png", "queued".getBytes(StandardCharsets.UTF_8));
        opening.open(opened.id());
        queue.add(queued);
        assertThat(table.lostFiles()).contains(kept.id()).doesNotContain(opened.id(), queued.id());

        database.sql("delete from scheduled_tasks where task_instance = ?").param(jobsOf(classSet).get(1)).update();

        assertThat(table.lostFiles()).contains(opened.id());
    }

    private void read(ScanFileEntry file) throws IOException {
        opening.open(file.id());
        readSheets();
    }

    private void readSheets() throws IOException {
        for (SheetEntry sheet : sheets.of(classSet.id())) {
            reading.read(sheet.id());
        }
    }

    private List<String> jobsOf(ClassSet of) {
        return database.sql(
                        "select task_instance from scheduled_tasks where task_instance like ? order by priority desc, execution_time")
                .param("class-" + of.classId() + "/%")
                .query(String.class)
                .list();
    }

    private void serve(int jobs) {
        for (String job : jobsOf(classSet).subList(0, jobs)) {
            database.sql("delete from scheduled_tasks where task_instance = ?").param(job).update();
        }
    }

    @AfterEach
    void clearQueue() {
        database.sql("delete from scheduled_tasks").update();
    }

    private static byte[] zip(String... namesAndContents) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int index = 0; index < namesAndContents.length; index += 2) {
                zip.putNextEntry(new ZipEntry(namesAndContents[index]));
                zip.write(namesAndContents[index + 1].getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] pdfOf(int pages) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            for (int page = 0; page < pages; page++) {
                document.addPage(new PDPage(new PDRectangle(60, 40)));
            }
            document.save(bytes);
        }
        return bytes.toByteArray();
    }

    private ScanFileEntry received(String name, byte[] content) throws IOException {
        ScanStore.Kept kept = store.put(new ByteArrayInputStream(content));
        return files.add(classSet.id(), name, kept.name(), kept.sizeBytes()).orElseThrow();
    }
}
