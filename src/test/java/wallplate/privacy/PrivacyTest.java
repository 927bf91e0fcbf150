package wallplate.privacy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionOperations;
import wallplate.assessment.AssessedSheet;
import wallplate.audit.AuditCheck;
import wallplate.audit.AuditTrail;
import wallplate.backup.Backup;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.Enrolment;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.records.ClassSet;
import wallplate.ownership.Share;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.StoredNames;
import wallplate.records.Tasks;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;
import wallplate.sheet.InkImage;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** Everything about one learner handed out, one learner erased, and data that is over its time taken away. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:privacy;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/privacy",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class PrivacyTest {

    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired private MockMvc pages;
    @Autowired private Tasks tasks;
    @Autowired private Classes classes;
    @Autowired private ClassLists lists;
    @Autowired private ClassSets classSets;
    @Autowired private ScanFiles files;
    @Autowired private Sheets sheets;
    @Autowired private ScanStore store;
    @Autowired private StoredNames names;
    @Autowired private MarkSheets markSheets;
    @Autowired private MarkSheetBook book;
    @Autowired private DecidedSets decided;
    @Autowired private AuditTrail trail;
    @Autowired private JdbcClient database;
    @Autowired private DataSource source;
    @Autowired private Overdue overdue;
    @Autowired private LeftOvers leftOvers;
    @Autowired private TransactionOperations together;

    private ClassSet set;
    private long ada;
    private long bo;
    private SheetEntry ofAda;
    private String name;
    private String candidate;
    private String scan;

    /** Two learners with a sheet each, a mark sheet with both, and a reason that names one. */
    @BeforeEach
    void aClassWithASet() throws IOException {
        int number = NUMBER.incrementAndGet();
        name = "Adaeze Nwosu-" + number;
        candidate = "KX" + number;
        SchoolClass schoolClass = classes.add("class " + number, new SchoolYear("2026/27")).orElseThrow();
        lists.take(schoolClass, (name + "," + candidate + "\nBo Lind-" + number + ",B" + number).getBytes(StandardCharsets.UTF_8));
        List<Enrolment> present = lists.present(schoolClass.id());
        ada = present.get(0).id();
        bo = present.get(1).id();
        KeptTask task = tasks.add(DrawnSheets.aTask());
        set = classSets.addFor(schoolClass.id(), "Set " + number, task);
        scan = kept(("the scan of " + name).getBytes(StandardCharsets.UTF_8));
        keep(task, name.replace(' ', '-') + ".png", scan, 2 * number, ada);
        keep(task, "bo.png", kept(("the scan of bo " + number).getBytes(StandardCharsets.UTF_8)), 2 * number + 1, bo);
        ofAda = sheets.of(set.id()).get(0);
        decided.decide(set);
        database.sql("update mark_changes set reason = ? where sheet_id = ?")
                .params(name + " showed it in class", ofAda.id())
                .update();
        long sheet = markSheets.add(new NewMarkSheet(
                schoolClass.id(), "Term 1 of " + number, "class " + number, "2026/27", "Term 1", 0,
                List.of(new NewMarkSheet.Task(set.id(), "Eaves", BigDecimal.ONE)), "teacher"));
        assertThat(book.submit(book.find(sheet).orElseThrow(), "teacher")).isInstanceOf(MarkSheetBook.Submitted.class);
    }

    private void keep(KeptTask task, String fileName, String content, int seed, long learner) throws IOException {
        ScanFileEntry file = files.add(set.id(), fileName, content, 20).orElseThrow();
        SheetEntry sheet = sheets.page(file.id(), 1);
        AssessedSheet.Read drawn = DrawnSheets.aSheet(task.task(), fileName, seed);
        InkImage picture = ownPicture(drawn.levelPage().ink(), seed);
        sheets.keep(
                sheet.id(),
                drawn,
                kept(PagePicture.full(picture)),
                kept(PagePicture.forScreen(picture)),
                ResultFile.write(drawn));
        sheets.giveTo(sheet.id(), Optional.of(learner));
        files.begin(file.id());
        files.finish(file.id());
    }

    /** Drawn sheets look all alike, and the store keeps the same content once. */
    private static InkImage ownPicture(InkImage like, int seed) {
        byte[] ink = new byte[like.widthPx() * like.heightPx()];
        java.util.Arrays.fill(ink, 0, 20 * seed * like.widthPx(), (byte) 200);
        return new InkImage(like.widthPx(), like.heightPx(), like.pixelsPerMm(), ink);
    }

    private String kept(byte[] content) throws IOException {
        return store.put(new ByteArrayInputStream(content)).name();
    }

    @Test
    void handsOutEverythingAboutOneLearnerAndNothingAboutOthers() throws Exception {
        Map<String, byte[]> all = zip(ada);

        String folder = "sheets/" + ofAda.id() + "/";
        assertThat(all.keySet())
                .contains("learner.json", "sheets.csv", "marks.csv", "mark-sheets.csv")
                .contains(folder + "result.json", folder + "feedback.pdf", folder + "page.png", folder + "scan.png");
        assertThat(text(all, "learner.json")).contains(name, candidate);
        assertThat(text(all, "sheets.csv")).contains("Set ").contains(".png");
        assertThat(text(all, "marks.csv").lines().count()).isEqualTo(1 + sheets.marks(ofAda.id()).size());
        assertThat(text(all, "marks.csv")).contains(name + " showed it in class");
        assertThat(text(all, "mark-sheets.csv")).contains("Term 1").contains("Eaves");
        assertThat(text(all, folder + "scan.png")).isEqualTo("the scan of " + name);
        all.values().forEach(content ->
                assertThat(new String(content, StandardCharsets.UTF_8)).doesNotContain("Bo Lind"));
    }

    @Test
    void erasesOneLearnerAndKeepsTheFiguresOfTheSet() throws Exception {
        var marksBefore = sheets.marksOfSet(set.id()).stream().map(mark -> mark.criterion() + mark.awarded()).toList();
        String pictureBefore = ofAda.pagePicture().orElseThrow();
        pages.perform(get("/learners/" + ada + "/erase")).andExpect(status().isOk()).andExpect(content().string(containsString(name)));
        pages.perform(post("/learners/" + ada + "/erase")).andExpect(status().isUnprocessableContent());
        assertThat(classes.enrolment(ada).orElseThrow().name()).as("nothing without being sure").isEqualTo(name);

        pages.perform(post("/learners/" + ada + "/erase").param("sure", "true")).andExpect(status().is3xxRedirection());

        assertThat(sheets.marksOfSet(set.id()).stream().map(mark -> mark.criterion() + mark.awarded()).toList())
                .isEqualTo(marksBefore);
        assertNowhere(name);
        assertNowhere(name.replace(' ', '-'));
        assertNowhere("\"" + candidate + "\"");
        assertThat(names.inUse(List.of(scan, pictureBefore))).isEmpty();
        List<String> inStore = new ArrayList<>();
        store.forEachPutBefore(Instant.now().plusSeconds(5), inStore::add);
        assertThat(inStore).doesNotContain(scan, pictureBefore);
        assertThat(trail.page(Long.MAX_VALUE, "learner-erased", 1).get(0).subject()).isEqualTo("/learners/" + ada);
        for (String address : List.of("/class-sets/" + set.id(), "/sheets/" + ofAda.id(), "/class-sets/" + set.id() + "/items",
                "/class-sets/" + set.id() + "/learners", "/learners/" + ada, "/learners/" + bo, "/audit")) {
            pages.perform(get(address)).andExpect(status().isOk());
        }
        pages.perform(get("/sheets/" + ofAda.id() + "/scale")).andExpect(status().isNotFound());
        assertThat(zip(bo)).as("others are as they were").containsKey("sheets/" + sheets.of(set.id()).get(1).id() + "/scan.png");
        assertThat(classes.enrolment(bo).orElseThrow().name()).startsWith("Bo Lind");
    }

    /** By what a backup would take along: every column of every table. */
    private void assertNowhere(String personal) throws Exception {
        var out = new java.io.ByteArrayOutputStream();
        new Backup(source, store, Clock.systemUTC()).write(out);
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(out.toByteArray()))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().startsWith("tables/")) {
                    assertThat(new String(zip.readAllBytes(), StandardCharsets.UTF_8))
                            .as(personal + " in " + entry.getName())
                            .doesNotContain(personal);
                }
            }
        }
    }

    @Test
    void listsWhatIsOverItsTimeAndTakesItAwayWithAnEntryEach() throws Exception {
        Instant later = Instant.now().plusSeconds(3 * 366 * 86_400L);
        Retention retention = retention(
                Map.of("scans", Period.ofYears(1), "pictures", Period.ofYears(2), "mark-sheets", Period.ofYears(10)), later);
        String screen = ofAda.screenPicture().orElseThrow();

        List<Retention.Listed> listed = retention.listing();
        assertThat(found(listed, Kind.SCANS).oldest().get(0)).startsWith("/class-sets/");
        assertThat(found(listed, Kind.MARK_SHEETS).number()).isZero();
        assertThat(found(listed, Kind.CLASS_SETS).number()).as("stays for good").isZero();
        assertThat(names.inUse(List.of(scan))).as("a listing changes nothing").contains(scan);

        List<Retention.Taken> taken = retention.run("teacher");

        assertThat(taken).extracting(Retention.Taken::kind).containsExactly(Kind.SCANS, Kind.PICTURES);
        assertThat(taken).extracting(Retention.Taken::number)
                .containsExactly(found(listed, Kind.SCANS).number(), found(listed, Kind.PICTURES).number());
        assertThat(names.inUse(List.of(scan, screen))).isEmpty();
        assertThat(retention.listing()).allSatisfy(one -> assertThat(one.found().number()).isZero());
        assertThat(trail.page(Long.MAX_VALUE, "retention", 2))
                .extracting(entry -> entry.act().split(" ")[1])
                .containsExactly("pictures", "scans");
        pages.perform(get("/sheets/" + ofAda.id())).andExpect(status().isOk()).andExpect(content().string(containsString(name)));
        pages.perform(get("/privacy")).andExpect(status().isOk()).andExpect(content().string(containsString("for good")));
    }

    @Test
    void takesSetsMarkSheetsAndTheOldestEntriesAwayAndTheTrailStillHolds() throws Exception {
        trail.append("teacher", "POST /for-the-test", "/for-the-test");
        Instant later = Instant.now().plusSeconds(11 * 366 * 86_400L);
        Map<String, Period> keep = new LinkedHashMap<>();
        for (Kind kind : Kind.values()) {
            keep.put(kind.word(), Period.ofYears(10));
        }
        classes.leave(lists.present(set.classId()));

        retention(keep, later).run("teacher");

        assertThat(classSets.find(set.id())).isEmpty();
        assertThat(classes.enrolment(ada)).isEmpty();
        assertThat(markSheets.all(Share.everything())).isEmpty();
        assertNowhere(name);
        try (var connection = source.getConnection()) {
            assertThat(AuditCheck.of(connection, Optional.empty())).isInstanceOfSatisfying(
                    AuditCheck.Sound.class, sound -> assertThat(sound.from()).isGreaterThan(1));
        }
        database.sql("delete from audit_entries where number = (select min(number) from audit_entries)").update();
        try (var connection = source.getConnection()) {
            assertThat(AuditCheck.of(connection, Optional.empty())).isInstanceOf(AuditCheck.Broken.class);
        } catch (SQLException broken) {
            throw new AssertionError(broken);
        }
        database.sql("delete from audit_entries").update();
        database.sql("delete from audit_head where id = 2").update();
        database.sql("update audit_head set number = 0, hash = ?").param("0".repeat(64)).update();
    }

    private Retention retention(Map<String, Period> keep, Instant now) {
        return new Retention(
                new RetentionSettings(keep), overdue, leftOvers, trail, together, Clock.fixed(now, ZoneOffset.UTC));
    }

    private static Overdue.Found found(List<Retention.Listed> listed, Kind kind) {
        return listed.stream().filter(one -> one.kind() == kind).findFirst().orElseThrow().found();
    }

    private Map<String, byte[]> zip(long learner) throws Exception {
        String page = "/learners/" + learner + "/everything";
        pages.perform(post(page)).andExpect(status().is3xxRedirection());
        await().atMost(Duration.ofSeconds(60))
                .until(() -> pages.perform(get(page)).andReturn().getResponse().getContentAsString().contains(page + ".zip"));
        byte[] file = pages.perform(get(page + ".zip")).andExpect(status().isOk()).andReturn().getResponse().getContentAsByteArray();
        Map<String, byte[]> entries = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                entries.put(entry.getName(), zip.readAllBytes());
            }
        }
        return entries;
    }

    private static String text(Map<String, byte[]> all, String entry) {
        return new String(all.get(entry), StandardCharsets.UTF_8);
    }
}
