package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.asyncDispatch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Verdict;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.Learner;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.report.PagePicture;
import wallplate.report.ResultFile;

/** What a learner's code opens, and what it does not. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:feedback;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/feedback",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
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
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private ScanStore store;

    @Autowired
    private FeedbackCodes codes;

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

    @Test
    void showsAPictureOfEachPlaceAndTextForIt() throws Exception {
        classSets.release(classSet.id());
        MarkEntry right = sheets.marks(ada.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET)
                .findFirst()
                .orElseThrow();
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
    void writesTheClassAsOnePdf() throws Exception {
        MvcResult started = pages.perform(get("/class-sets/%d/feedback.pdf".formatted(classSet.id()))).andReturn();
        started.getAsyncResult(LONGEST_WAIT_MS);

        byte[] pdf = pages.perform(asyncDispatch(started))
                .andExpect(content().contentType(MediaType.APPLICATION_PDF))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        assertThat(pdf).startsWith("%PDF".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        assertThat(pdf.length).isGreaterThan(20_000);
    }

    private SheetEntry aSheet(int number) throws Exception {
        ScanFileEntry file = files.add(
                        classSet.id(), number + ".png", "%064x".formatted(100 * classSet.id() + number), 10)
                .orElseThrow();
        AssessedSheet.Read read = DrawnSheets.aSheet(DrawnSheets.aTask(), number + ".png", number);
        SheetEntry sheet = sheets.page(file.id(), 1);
        sheets.keep(
                sheet.id(),
                read,
                store.put(new ByteArrayInputStream(PagePicture.full(read.levelPage().ink()))).name(),
                store.put(new ByteArrayInputStream(PagePicture.forScreen(read.levelPage().ink()))).name(),
                ResultFile.write(read));
        return sheet;
    }
}
