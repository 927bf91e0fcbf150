package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.http.MediaType;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.marking.Verdict;
import wallplate.privacy.Erasing;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.Learner;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** What a learner's code opens, and what it does not. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:feedback;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/feedback",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(KeptSheets.class)
class FeedbackPagesTest {

    /** On a machine that does much else. */
    private static final long LONGEST_WAIT_MS = 120_000;

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private KeptSheets kept;

    @Autowired
    private Sheets sheets;

    @Autowired
    private ScanStore store;

    @Autowired
    private FeedbackCodes codes;

    @Autowired
    private Erasing erasing;

    @Autowired
    private JdbcClient database;

    private ClassSet classSet;
    private SheetEntry ada;

    @BeforeEach
    void aSetOfTwoLearners() throws Exception {
        classSet = classSets.add(
                "Eaves, 11B",
                "11B",
                List.of(new ClassListEntry("Ada", ""), new ClassListEntry("Bo", "")),
                tasks.add(DrawnSheets.aTask()),
                false);
        ada = aSheet(1);
        aSheet(2);
        ada = sheets.find(ada.id()).orElseThrow();
    }

    @Test
    void opensTheLearnersOwnSheetOnceTheMarksAreReleased() throws Exception {
        String code = codes.make(classSet.id()).get(ada.id());

        pages.perform(get("/feedback/" + code))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("has not released"), not(containsString("Ada")))));
        pages.perform(get("/feedback/" + code + "/page.png")).andExpect(status().isNotFound());
        pages.perform(get("/feedback/" + code + "/feedback.pdf")).andExpect(status().isNotFound());

        classSets.release(classSet.id());
        String page = pages.perform(get("/feedback/" + code))
                .andExpect(status().isOk())
                .andExpect(header().string("Cache-Control", "no-store"))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains("Feedback for Ada").doesNotContain("Bo<");
        sheets.marks(ada.id()).forEach(mark -> assertThat(page).contains(mark.title()));
        pages.perform(get("/feedback/" + code + "/page.png")).andExpect(content().contentType(MediaType.IMAGE_PNG));
        pages.perform(get("/feedback/" + code + "/feedback.pdf"))
                .andExpect(content().contentType(MediaType.APPLICATION_PDF));

        classSets.withdraw(classSet.id());
        pages.perform(get("/feedback/" + code + "/page.png")).andExpect(status().isNotFound());
    }

    @Test
    void sayingInGermanWhatWasMarkedInEnglish() throws Exception {
        classSets.release(classSet.id());
        String code = codes.make(classSet.id()).get(ada.id());

        pages.perform(get("/feedback/" + code).header("Accept-Language", "de-AT, en;q=0.5"))
                .andExpect(content()
                        .string(allOf(
                                containsString("R\u00fcckmeldung f\u00fcr Ada"),
                                containsString("Dachneigung"),
                                containsString("5,7 mm"),
                                not(containsString("You drew")))));
    }

    @Test
    void keepsTheLanguageThatWasChosen() throws Exception {
        Cookie german = pages.perform(post("/language").param("language", "de").param("back", "/feedback"))
                .andExpect(redirectedUrl("/feedback"))
                .andReturn()
                .getResponse()
                .getCookie("language");

        pages.perform(get("/feedback").cookie(german).header("Accept-Language", "en"))
                .andExpect(content().string(allOf(containsString("lang=\"de\""), containsString("Dein Kennwort"))));
        pages.perform(get("/feedback").header("Accept-Language", "fr, de;q=0.8"))
                .andExpect(content().string(containsString("Dein Kennwort")));
        pages.perform(get("/class-sets").cookie(german))
                .andExpect(content().string(allOf(containsString("lang=\"en\""), not(containsString("Deutsch")))));
        pages.perform(post("/language").param("language", "xx").param("back", "//elsewhere.example"))
                .andExpect(redirectedUrl("/"));
    }

    private MarkEntry anyRight() {
        return sheets.marks(ada.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void showsAPictureOfEachPlaceAndTextForIt() throws Exception {
        classSets.release(classSet.id());
        MarkEntry right = anyRight();
        sheets.change(
                ada.id(),
                new MarkChange(right.criterion(), Optional.of(Verdict.NOT_MET), 0, "Smudged.", "teacher", java.time.Instant.EPOCH));
        String code = codes.make(classSet.id()).get(ada.id());

        String page = pages.perform(get("/feedback/" + code)).andReturn().getResponse().getContentAsString();

        long pictures = Pattern.compile("<svg role=\"img\"").matcher(page).results().count();
        long named = Pattern.compile("<svg role=\"img\"[^>]* aria-label=\"[^\"]+\"").matcher(page).results().count();
        assertThat(named).isEqualTo(pictures).isGreaterThanOrEqualTo(3);
        assertThat(page).contains("data-difference").contains("Model answer at the same place");
    }

    /** A right size with half a mark looks like an error where nothing says that a person decided so. */
    @Test
    void saysWhereAPersonChangedTheMarkOfWhatIsRight() throws Exception {
        classSets.release(classSet.id());
        MarkEntry right = anyRight();
        String code = codes.make(classSet.id()).get(ada.id());
        String german = "Die Punkte hat eine Person geändert.";
        pages.perform(get("/feedback/" + code).header("Accept-Language", "de"))
                .andExpect(content().string(not(containsString(german))));

        sheets.change(
                ada.id(),
                new MarkChange(right.criterion(), Optional.of(Verdict.MET), 0.5, "All adjusted.", "head", java.time.Instant.EPOCH));

        pages.perform(get("/feedback/" + code).header("Accept-Language", "de"))
                .andExpect(content().string(containsString(german)));
    }

    @Test
    void acceptsACodeHoweverItIsTypedAndAnswersAWrongOneCalmly() throws Exception {
        String code = codes.make(classSet.id()).get(ada.id());
        String typed = code.toLowerCase(java.util.Locale.ROOT).replace('-', ' ');

        pages.perform(post("/feedback").param("code", " " + typed + " ")).andExpect(status().is3xxRedirection());
        pages.perform(post("/feedback").param("code", "AAAA-AAAA-AAAA"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("No feedback has this code")));
        pages.perform(post("/feedback")).andExpect(status().isUnprocessableContent());
        pages.perform(get("/feedback/" + "A".repeat(400))).andExpect(status().isNotFound());
    }

    @Test
    void aCodeIsShownOnceAndNewOnesCloseTheOld() throws Exception {
        String page = pages.perform(post("/class-sets/%d/feedback-codes".formatted(classSet.id())))
                .andExpect(status().isOk())
                .andExpect(header().string("Cache-Control", "no-store"))
                .andReturn()
                .getResponse()
                .getContentAsString();
        List<String> shown = Pattern.compile("[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}")
                .matcher(page)
                .results()
                .map(one -> one.group())
                .toList();
        assertThat(shown).hasSize(2).doesNotHaveDuplicates();
        // No setting says where the program is open: the browser that prints the slips does.
        assertThat(page).contains("data-here=\"yes\">/feedback</span>");
        assertThat(codes.sheetOf(shown.get(0))).contains(ada.id());
        pages.perform(get("/class-sets/%d/feedback-codes".formatted(classSet.id())))
                .andExpect(content().string(allOf(not(containsString(shown.get(0))), containsString("2 sheets"))));

        Map<Long, String> again = codes.make(classSet.id());

        assertThat(codes.sheetOf(shown.get(0))).isEmpty();
        assertThat(codes.sheetOf(again.get(ada.id()))).contains(ada.id());
    }

    @Test
    void aCodeOpensNothingOnceTheSheetIsAnotherLearners() {
        String code = codes.make(classSet.id()).get(ada.id());
        Learner bo = classSets.learners(classSet.classId()).get(1);

        sheets.giveTo(ada.id(), Optional.of(bo.id()));

        assertThat(codes.sheetOf(code)).isEmpty();
    }

    @Test
    void preparesTheFeedbackOfTheClassAsAFile() throws Exception {
        String offered = "/class-sets/%d/feedback-files".formatted(classSet.id());
        pages.perform(get(file("pdf"))).andExpect(redirectedUrl(offered));

        byte[] pdf = prepared("pdf");
        byte[] zip = prepared("zip");

        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getDocumentCatalog().getDocumentOutline().children())
                    .extracting(PDOutlineItem::getTitle)
                    .containsExactlyElementsOf(sheets.of(classSet.id()).stream().map(SheetEntry::label).toList());
        }
        assertThat(entries(zip)).hasSameSizeAs(sheets.of(classSet.id())).allMatch(name -> name.endsWith(".pdf"));
        pages.perform(get(offered)).andExpect(content().string(not(containsString("Something has changed"))));

        sheets.change(
                ada.id(),
                new MarkChange(
                        sheets.marks(ada.id()).get(0).criterion(), Optional.of(Verdict.MET), 0, "seen", "teacher", Instant.now()));

        pages.perform(get(offered))
                .andExpect(content().string(allOf(containsString("Something has changed"), containsString("Prepare it again"))));
        assertThat(prepared("pdf")).isNotEqualTo(pdf);
    }

    @Test
    void erasingALearnerTakesTheFilesAwayThatHoldIt() throws Exception {
        prepared("zip");
        String content = files("content_hash").get(0);

        erasing.erase(ada.learner().orElseThrow().id());

        assertThat(files("content_hash")).isEmpty();
        assertThatThrownBy(() -> store.open(content)).isInstanceOf(NoSuchFileException.class);
        pages.perform(get(file("zip"))).andExpect(status().isFound());
    }

    private String file(String kind) {
        return "/class-sets/%d/feedback.%s".formatted(classSet.id(), kind);
    }

    private List<String> files(String column) {
        return database.sql("select " + column + " from prepared_files where class_set_id = ?")
                .param(classSet.id())
                .query(String.class)
                .list();
    }

    /** Has a file prepared, waits for it as a teacher does, and saves it. */
    private byte[] prepared(String kind) throws Exception {
        pages.perform(post("/class-sets/%d/feedback-files".formatted(classSet.id())).param("kind", kind))
                .andExpect(status().is3xxRedirection());
        await().atMost(Duration.ofMillis(LONGEST_WAIT_MS)).until(() -> !files("standing").contains("waiting"));
        return pages.perform(get(file(kind)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }

    private static List<String> entries(byte[] zip) throws IOException {
        List<String> names = new ArrayList<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                names.add(entry.getName());
            }
        }
        return names;
    }

    private SheetEntry aSheet(int number) {
        String name = number + ".png";
        return kept.read(classSet, name, DrawnSheets.aSheet(DrawnSheets.aTask(), name, number));
    }
}
