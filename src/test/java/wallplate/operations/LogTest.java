package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * What the log says while a set is handed in, read, marked and handed out, with everything that can go wrong on the way: numbers of
 * requests and sheets, and never a learner's name, candidate number or file name.
 *
 * <p>The log is written in the Elastic Common Schema, as on a server, with the program's own lines down to the finest.
 */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:log;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/log",
            "wallplate.demonstration.enabled=false",
            "logging.structured.format.file=ecs",
            "logging.file.name=target/test-data/log/wallplate.log",
            "logging.level.wallplate=trace",
            "logging.level.com.github.kagkarlsson=debug"
        })
@AutoConfigureMockMvc
class LogTest {

    private static final Path LOG = Path.of("target/test-data/log/wallplate.log");
    private static final Path SAMPLES = Path.of("sample-scans");
    private static final JsonMapper JSON = JsonMapper.builder().build();
    /** Invented, and like nothing else in a log. */
    private static final List<String> PERSONAL = List.of("Quillfeather", "Umbrascot", "ZX-90417", "ZX-90418");

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @BeforeAll
    static void withoutTheLogOfAnEarlierRun() throws IOException {
        Files.deleteIfExists(LOG);
    }

    @Test
    void tellsRequestsAndSheetsAndNoPerson() throws Exception {
        TaskReading task = TaskFile.read(Files.readString(SAMPLES.resolve("task.yml")));
        long taskId = tasks.add(((TaskReading.Accepted) task).task()).id();
        pages.perform(multipart("/class-sets")
                .param("task", Long.toString(taskId))
                .param("className", "9X")
                .param("classList", "Ottoline Quillfeather,ZX-90417\nBram Umbrascot,ZX-90418"));
        ClassSet set = classSets.all().get(0);
        assertThat(classSets.learners(set.classId())).hasSize(2);

        handIn(set, "Ottoline-Quillfeather.jpg", sample(0));
        handIn(set, "umbrascot ZX-90418.zip", zipped("Bram Umbrascot.jpg", sample(1), "notes of Quillfeather.txt"));
        handIn(set, "broken-Umbrascot.pdf", "%PDF-1.7 and nothing after it".getBytes(StandardCharsets.UTF_8));
        awaitFinished(set, 3);
        loseAScan(set);
        SheetEntry sheet = sheets.of(set.id()).get(0);
        mark(set, sheet);
        askForWhatIsNotThere();

        assertThat(log()).isNotEmpty().allSatisfy(line -> {
            for (String personal : PERSONAL) {
                assertThat(line.toString().toLowerCase(java.util.Locale.ROOT))
                        .doesNotContain(personal.toLowerCase(java.util.Locale.ROOT));
            }
        });
        assertThat(log())
                .as("the line of a sheet names the sheet and its set")
                .anySatisfy(line -> {
                    assertThat(line.path("message").asString()).contains("was read in");
                    assertThat(line.path("sheet").asString()).isEqualTo(Long.toString(sheet.id()));
                    assertThat(line.path("classSet").asString()).isEqualTo(Long.toString(set.id()));
                });
        assertThat(log())
                .as("the line of a request names the request")
                .anySatisfy(line -> assertThat(line.path("request").asString()).matches("[0-9a-f]{8}-\\d+"));
    }

    private void handIn(ClassSet set, String name, byte[] content) throws Exception {
        pages.perform(multipart("/class-sets/" + set.id() + "/scans").file(new MockMultipartFile("scans", name, null, content)));
    }

    private static byte[] sample(int number) throws IOException {
        try (var all = Files.list(SAMPLES)) {
            return Files.readAllBytes(all.filter(path -> path.toString().endsWith(".jpg")).sorted().skip(number).findFirst().orElseThrow());
        }
    }

    private static byte[] zipped(String name, byte[] content, String other) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(content);
            zip.putNextEntry(new ZipEntry(other));
            zip.write(1);
        }
        return out.toByteArray();
    }

    /** A file whose content is gone before it is read: an error with its stack. */
    private void loseAScan(ClassSet set) throws Exception {
        ScanFileEntry lost = files.add(set.id(), "lost-Quillfeather.jpg", "%064x".formatted(77), 5).orElseThrow();
        long sheet = sheets.page(lost.id(), 1).id();
        sheets.fail(sheet, "for the test");
        files.begin(lost.id());
        files.finish(lost.id());
        pages.perform(post("/sheets/" + sheet + "/try-again"));
        awaitFinished(set, sheets.of(set.id()).size());
    }

    private void mark(ClassSet set, SheetEntry sheet) throws Exception {
        String criterion = sheets.marks(sheet.id()).get(0).criterion();
        pages.perform(post("/sheets/" + sheet.id() + "/marks/" + criterion)
                .param("verdict", "met")
                .param("awarded", "1")
                .param("reason", "Quillfeather explained it"));
        pages.perform(post("/sheets/" + sheet.id() + "/checked"));
        for (String address : List.of("/class-sets/" + set.id(), "/sheets/" + sheet.id(), "/class-sets/" + set.id() + "/learners",
                "/class-sets/" + set.id() + "/mark-sheet.csv", "/class-sets/" + set.id() + "/feedback-files",
                "/sheets/" + sheet.id() + "/feedback.pdf", "/learners/" + classSets.learners(set.classId()).get(0).id())) {
            assertThat(pages.perform(get(address)).andReturn().getResponse().getStatus()).as(address).isEqualTo(200);
        }
    }

    /** Bad requests that carry a name. */
    private void askForWhatIsNotThere() throws Exception {
        pages.perform(get("/learners/Quillfeather"));
        pages.perform(get("/audit").param("containing", "Umbrascot").param("before", "ZX-90417"));
        pages.perform(post("/feedback").param("code", "Quillfeather"));
        pages.perform(post("/classes").param("name", "").param("year", "Umbrascot"));
        pages.perform(get("/no-such-page/Umbrascot"));
    }

    private void awaitFinished(ClassSet set, int least) throws InterruptedException {
        Instant latest = Instant.now().plus(Duration.ofSeconds(120));
        while (Instant.now().isBefore(latest)
                && sheets.of(set.id()).stream().filter(sheet -> sheet.state().isFinished()).count() < least) {
            Thread.sleep(200);
        }
        assertThat(sheets.of(set.id()).stream().filter(sheet -> sheet.state().isFinished()).count()).isGreaterThanOrEqualTo(least);
    }

    private static List<JsonNode> log() throws IOException {
        return Files.readAllLines(LOG).stream().filter(line -> line.startsWith("{")).map(JSON::readTree).toList();
    }
}
