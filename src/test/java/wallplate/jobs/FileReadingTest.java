package wallplate.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
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
class FileReadingTest {

    private static final Path SAMPLES = Path.of("sample-scans");

    @Autowired
    private FileReading reading;

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

        reading.read(file.id());

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

        reading.read(file.id());

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

        reading.read(file.id());

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

        reading.read(file.id());

        assertThat(sheets.of(classSet.id())).hasSize(1);
        assertThat(sheets.find(sheet.id()).orElseThrow().reason()).contains("kept before the crash");
        assertThat(files.find(file.id()).orElseThrow().state()).isEqualTo(FileState.DONE);
    }

    @Test
    void leavesAStoppedFileAlone() throws IOException {
        ScanFileEntry file = received("homework.png", "dear teacher".getBytes(StandardCharsets.UTF_8));
        sheets.page(file.id(), 1);
        files.stop(classSet.id());

        reading.read(file.id());

        assertThat(sheets.of(classSet.id()).get(0).state()).isEqualTo(SheetState.WAITING);
    }

    private ScanFileEntry received(String name, byte[] content) throws IOException {
        ScanStore.Kept kept = store.put(new ByteArrayInputStream(content));
        return files.add(classSet.id(), name, kept.name(), kept.sizeBytes()).orElseThrow();
    }
}
