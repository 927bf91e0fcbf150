package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import wallplate.classes.Classes;
import wallplate.classes.ListedLearner;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.privacy.Erasing;
import wallplate.privacy.LearnerExport;
import wallplate.privacy.LeftOvers;
import wallplate.records.HomeChecks;
import wallplate.records.KeptAssessment;
import wallplate.records.KeptTask;
import wallplate.records.SelfChecks;
import wallplate.records.Tasks;
import wallplate.samples.pdf.ScannedDocument;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** The learner at home, with real sheets and without scripts. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:self-check;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/self-check",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class SelfCheckPagesTest {

    private static final Path SAMPLES = Path.of("sample-scans");
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final Path STORE = Path.of("target/test-data/self-check");

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private SelfChecks checks;

    @Autowired
    private LeftOvers leftOvers;

    @Autowired
    private Classes classes;

    @Autowired
    private HomeChecks homeChecks;

    @Autowired
    private LearnerExport export;

    @Autowired
    private Erasing erasing;

    @Autowired
    private JdbcClient database;

    private KeptTask kept;

    @BeforeEach
    void aTask() throws IOException {
        kept = tasks.add(((TaskReading.Accepted) TaskFile.read(Files.readString(SAMPLES.resolve("task.yml")))).task());
    }

    /** The photograph is gone when it was read; everything else is when no page has asked for it any more, as the job that clears up does it. */
    @Test
    void keepsNothingOfAVisit() throws Exception {
        forgetEverything();
        pages.perform(get("/check/" + kept.learnerCode())).andExpect(status().isOk());
        Map<String, Long> rowsBefore = rows();
        List<String> filesBefore = files();

        String address = checked(sent("05-emre.jpg"));
        pages.perform(get(address)).andExpect(content().string(containsString("advice")));
        pages.perform(sent("task.yml")).andExpect(status().isUnprocessableContent());
        pages.perform(get("/check/" + kept.learnerCode() + "/guide")).andExpect(status().isOk());
        String photograph = hashOf("05-emre.jpg");
        assertThat(files()).noneMatch(name -> name.contains(photograph));

        forgetEverything();

        await().atMost(PATIENCE).untilAsserted(() -> assertThat(rows()).isEqualTo(rowsBefore));
        assertThat(files()).isEqualTo(filesBefore);
        pages.perform(get(address)).andExpect(status().isNotFound());
    }

    @Test
    void deletesEverythingWhenTheLearnerIsDone() throws Exception {
        forgetEverything();
        Map<String, Long> rowsBefore = rows();
        List<String> filesBefore = files();
        String address = checked(sent("05-emre.jpg"));

        pages.perform(post("/check/" + kept.learnerCode() + "/end").param("token", token(address)))
                .andExpect(redirectedUrl("/check?ended=yes"));
        pages.perform(get("/check?ended=yes")).andExpect(content().string(containsString("Your result is deleted")));

        pages.perform(get(address)).andExpect(status().isNotFound());
        await().atMost(PATIENCE).untilAsserted(() -> assertThat(rows()).isEqualTo(rowsBefore));
        assertThat(files()).isEqualTo(filesBefore);
    }

    /** A page that is loaded again is left and comes back. */
    @Test
    void deletesAResultThatWasLeftUnlessItsPageComesBack() throws Exception {
        String address = checked(sent("05-emre.jpg"));
        leave(address);
        pages.perform(get(address)).andExpect(status().isOk());
        leftOvers.clear(checks.removeOver(Instant.EPOCH, Instant.now().plusSeconds(1)));
        pages.perform(get(address)).andExpect(status().isOk());

        leave(address);
        leftOvers.clear(checks.removeOver(Instant.EPOCH, Instant.now().plusSeconds(1)));

        pages.perform(get(address)).andExpect(status().isNotFound());
    }

    private void leave(String address) throws Exception {
        pages.perform(post("/check/" + kept.learnerCode() + "/end").param("token", token(address)).param("leaving", "true"))
                .andExpect(status().isNoContent());
    }

    @Test
    void keepsNothingThatIsFoundAfterTheVisit() throws IOException {
        SelfChecks.Added added = checks.add(kept.id(), "en", Map.of(), "%064x".formatted(5));
        checks.remove(added.token());

        assertThat(checks.keep(added.id(), KeptAssessment.of(DrawnSheets.aSheet(kept.task(), "a.jpg", 1)), "%064x".formatted(6)))
                .isFalse();
    }

    @Test
    void keepsACheckForTheClassOfALearnerWhoWantsIt() throws Exception {
        SchoolClass schoolClass = classes.add("11B of checks", new SchoolYear("2026/27")).orElseThrow();
        classes.enrol(schoolClass.id(), List.of(new ListedLearner(1, "Ada Quill", "1040"), new ListedLearner(2, "Bo", "")));
        long ada = classes.enrolments(schoolClass.id()).get(0).id();
        pages.perform(post("/classes/" + schoolClass.id() + "/check-code")).andExpect(status().is3xxRedirection());
        String code = homeChecks.codeOf(schoolClass.id()).orElseThrow();
        pages.perform(get("/classes/" + schoolClass.id())).andExpect(content().string(containsString(code)));
        String address = checked(sent("05-emre.jpg"));
        pages.perform(get(address)).andExpect(content().string(containsString("Nothing of this check is kept, unless")));

        pages.perform(keep(address, code, "Emre")).andExpect(status().isUnprocessableContent());
        pages.perform(keep(address, "AAAA", "Ada Quill")).andExpect(status().isUnprocessableContent());
        assertThat(homeChecks.of(List.of(ada))).isEmpty();
        pages.perform(keep(address, code.toLowerCase(Locale.ROOT), " ada quill ")).andExpect(redirectedUrl(address));
        pages.perform(keep(address, code, "1040")).andExpect(redirectedUrl(address));
        pages.perform(get(address)).andExpect(content().string(containsString("This check is kept for your class")));
        forgetEverything();

        assertThat(homeChecks.of(List.of(ada))).singleElement().satisfies(check -> {
            assertThat(check.met() + check.notMet() + check.undecided()).isGreaterThan(20);
            assertThat(check.taskTitle()).isEqualTo(kept.task().title());
        });
        pages.perform(get("/learners/" + ada)).andExpect(content().string(containsString("Checks at home")));
        ByteArrayOutputStream everything = new ByteArrayOutputStream();
        export.write(ada, Locale.ENGLISH, (done, sheets) -> {}, everything);
        assertThat(entry(everything.toByteArray(), "checks-at-home.csv")).contains(kept.task().title()).contains("rafter-depth");

        erasing.erase(ada);
        assertThat(homeChecks.of(List.of(ada))).isEmpty();
    }

    private MockHttpServletRequestBuilder keep(String address, String classCode, String who) {
        return post("/check/" + kept.learnerCode() + "/keep")
                .param("token", token(address))
                .param("classCode", classCode)
                .param("who", who);
    }

    private static String token(String address) {
        return address.substring(address.lastIndexOf('/') + 1);
    }

    private void forgetEverything() throws IOException {
        leftOvers.clear(checks.removeOver(Instant.now().plusSeconds(1), Instant.EPOCH));
    }

    private static String entry(byte[] zip, String name) throws IOException {
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (entry.getName().equals(name)) {
                    return new String(in.readAllBytes(), StandardCharsets.UTF_8);
                }
            }
        }
        throw new AssertionError("no entry " + name);
    }

    @Test
    void showsWhatToRedoInTheOrderOfDrawingWithItsStep() throws Exception {
        String html = shown(sent("05-emre.jpg"));

        List<Integer> steps = Pattern.compile("guide#step-(\\d+)").matcher(html).results()
                .map(step -> Integer.parseInt(step.group(1)))
                .toList();
        assertThat(steps).isNotEmpty().isSorted();
        assertThat(html).contains("class=\"guide-step\"").doesNotContain("Compared with your last try");
        assertThat(html).contains("How your lines are drawn").containsPattern("outlines are about \\d[\\d.]* mm");
    }

    @Test
    void comparesAnotherTryByItsValues() throws Exception {
        String first = shown(sent("05-emre.jpg"));
        MockMultipartHttpServletRequestBuilder again = sent("01-amara.jpg");
        List<MatchResult> carried = Pattern.compile("name=\"(was\\.[^\"]+)\" value=\"([^\"]+)\"").matcher(first).results().toList();
        assertThat(carried).hasSizeGreaterThan(20);
        carried.forEach(field -> again.param(field.group(1), field.group(2)));

        String second = shown(again);

        assertThat(second).contains("Compared with your last try").contains("Right now, and not before");
        assertThat(second).containsPattern("was \\d[\\d.]*(°| mm), is \\d[\\d.]*(°| mm) now");
    }

    @Test
    void keepsTheComparisonWhereAPictureCannotBeRead() throws Exception {
        pages.perform(sent("task.yml").param("was.rafter-depth", "not-met 9.1 0.1"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("value=\"not-met 9.1 0.1\"")));
    }

    /** A part has several sizes: without its name nobody knows which of them "It should be 4.5 mm" is about. */
    @Test
    void namesEachSizeThatIsToBeDrawnAgain() throws Exception {
        String page = shown(sent("09-itzel.jpg"));

        assertThat(page)
                .contains(">Gutter width. This is not on your drawing yet.", ">Gutter depth. This is not on your drawing yet.")
                .contains(">Barge board clearance. There is no clearance to measure yet")
                .contains("underside misses the heel point by");
    }

    @Test
    void doesNotNameTwiceWhatASentenceBeginsWith() throws Exception {
        assertThat(shown(sent("04-dalia.jpg"))).contains(">The overhang is ").doesNotContain(">Overhang. ");
    }

    @Test
    void saysWhatWasFoundInTheLanguageThatIsChosenAfterwards() throws Exception {
        String address = checked(sent("09-itzel.jpg"));

        String page = pages.perform(get(address).cookie(new Cookie("language", "de")))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();

        assertThat(page)
                .contains(">Breite der Rinne. Das fehlt noch auf deiner Zeichnung.")
                .contains("Die Unterkante des Sparrens verfehlt den Fußpunkt um")
                .doesNotContain("It should be");
    }

    @Test
    void saysThatTheFirstOfSeveralPagesIsRead() throws Exception {
        byte[] jpeg = Files.readAllBytes(SAMPLES.resolve("01-amara.jpg"));
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(jpeg));
        ScannedDocument.ScannedPage sheet =
                new ScannedDocument.ScannedPage(jpeg, picture.getWidth(), picture.getHeight(), 300);
        MockMultipartFile two =
                new MockMultipartFile("photograph", "two.pdf", "application/pdf", ScannedDocument.of(List.of(sheet, sheet)));

        assertThat(shown(multipart("/check/" + kept.learnerCode()).file(two)))
                .contains("2 pages were sent: the first one is read.");
        assertThat(shown(sent("01-amara.jpg"))).doesNotContain("pages were sent");
    }

    /** Waits until a photograph was read and returns the address of its result. */
    private String checked(MockMultipartHttpServletRequestBuilder sent) throws Exception {
        String address = pages.perform(sent)
                .andExpect(status().is3xxRedirection())
                .andReturn()
                .getResponse()
                .getRedirectedUrl();
        await().atMost(PATIENCE)
                .until(() -> !pages.perform(get(address)).andReturn().getResponse().getContentAsString().contains("data-check-waiting"));
        return address;
    }

    private String shown(MockMultipartHttpServletRequestBuilder sent) throws Exception {
        return pages.perform(get(checked(sent))).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
    }

    private static String hashOf(String sample) throws IOException, NoSuchAlgorithmException {
        return HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(SAMPLES.resolve(sample))));
    }

    private MockMultipartHttpServletRequestBuilder sent(String sample) throws IOException {
        byte[] content = Files.readAllBytes(SAMPLES.resolve(sample));
        return multipart("/check/" + kept.learnerCode())
                .file(new MockMultipartFile("photograph", sample, "image/jpeg", content));
    }

    /** How many rows each table has. */
    private Map<String, Long> rows() {
        Map<String, Long> rows = new TreeMap<>();
        database.sql("select table_name from information_schema.tables where table_schema = 'public'")
                .query(String.class)
                .list()
                .forEach(table -> rows.put(
                        table, database.sql("select count(*) from \"" + table + "\"").query(Long.class).single()));
        assertThat(rows).containsKeys("sheets", "drawing_tasks", "audit_entries");
        return rows;
    }

    private static List<String> files() throws IOException {
        if (!Files.exists(STORE)) {
            return List.of();
        }
        try (Stream<Path> all = Files.walk(STORE)) {
            return all.map(Path::toString).sorted().toList();
        }
    }
}
