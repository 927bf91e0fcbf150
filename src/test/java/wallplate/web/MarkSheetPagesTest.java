package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.marking.Verdict;
import wallplate.marksheets.Line;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.marksheets.Standing;
import wallplate.ownership.Share;
import wallplate.records.ClassSet;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** Mark sheets from draft to correction, through their pages and on a real database. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:mark-sheets;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/mark-sheets",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class MarkSheetPagesTest {

    private static final AtomicInteger SEED = new AtomicInteger();

    @Autowired
    private MockMvc pages;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Sheets sheets;

    @Autowired
    private MarkSheets kept;

    @Autowired
    private MarkSheetBook book;

    private ClassSet classSet;
    private long id;
    private String address;

    @BeforeEach
    void aDraftOfThreeLearners() {
        classSet = decided.aSet(tasks.add(DrawnSheets.aTask()), 3, SEED.incrementAndGet());
        id = kept.add(new NewMarkSheet(
                classSet.classId(),
                "Term 1, 11B",
                "11B",
                "",
                "Term 1",
                10,
                List.of(new NewMarkSheet.Task(classSet.id(), classSet.title(), BigDecimal.ONE)),
                "teacher"));
        address = "/mark-sheets/" + id;
    }

    @Test
    void beginsOneOrSaysWhatIsWrong() throws Exception {
        String set = "weight-" + classSet.id();
        String ofClass = Long.toString(classSet.classId());
        pages.perform(get("/mark-sheets/new").param("class", ofClass)).andExpect(status().isOk());
        pages.perform(post("/mark-sheets").param("class", ofClass).param("term", "").param(set, "-2").param("late", "x"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(
                        containsString("Name the term"), containsString("found: &quot;-2&quot;"), containsString("found: &quot;x&quot;"))));
        pages.perform(post("/mark-sheets").param("class", ofClass).param("term", "Term 2").param(set, "1,5"))
                .andExpect(status().is3xxRedirection());
        assertThat(kept.columns(kept.all(Share.everything()).get(0).id()).get(0).weight()).isEqualByComparingTo("1.5");
        pages.perform(get("/mark-sheets")).andExpect(content().string(containsString("Term 2")));
        pages.perform(get("/mark-sheets/new").param("class", "999999")).andExpect(status().isNotFound());
    }

    @Test
    void followsTheMarksUntilItIsSubmittedAndThenStaysAsItWas() throws Exception {
        SheetEntry sheet = sheets.of(classSet.id()).get(0);
        BigDecimal before = percent(1);
        pages.perform(get(address)).andExpect(content().string(containsString("A draft")));

        change(sheet, Verdict.NOT_MET);
        BigDecimal after = percent(1);
        pages.perform(post(address + "/submit")).andExpect(redirectedUrl(address));
        change(sheet, Verdict.MET);

        assertThat(after).isLessThan(before);
        assertThat(percent(1)).isEqualTo(after);
        pages.perform(get(address)).andExpect(content().string(containsString("and frozen")));
        pages.perform(post(address + "/throw-away")).andExpect(redirectedUrl(address));
        assertThat(kept.find(id)).isPresent();
    }

    @Test
    void keepsWhoWasLateAbsentOrExcused() throws Exception {
        List<Line> lines = sheet().lines();
        pages.perform(post(address + "/standings")
                        .param("standing-1-" + lines.get(0).learnerId().orElseThrow(), "late")
                        .param("standing-1-" + lines.get(1).learnerId().orElseThrow(), "absent")
                        .param("standing-1-" + lines.get(2).learnerId().orElseThrow(), "excused"))
                .andExpect(redirectedUrl(address));

        assertThat(sheet().lines())
                .extracting(line -> line.entries().get(0).standing())
                .containsExactly(Standing.LATE, Standing.ABSENT, Standing.EXCUSED);
        assertThat(percent(2)).isEqualByComparingTo("0.0");
        pages.perform(get(address + "/mark-sheet.csv"))
                .andExpect(content().string(allOf(containsString("absent"), containsString("late: "))));
    }

    @Test
    void takesTheMarksOfASheetThatWasMarkedOnPaper() throws Exception {
        sheets.giveTo(java.util.Map.of(sheets.of(classSet.id()).get(2).id(), Optional.empty()));
        BigDecimal outOf = sheet().lines().get(0).entries().get(0).available();
        String field = "marks-1-" + sheet().lines().get(2).learnerId().orElseThrow();
        pages.perform(get(address)).andExpect(content().string(containsString(field)));

        pages.perform(post(address + "/standings").param(field, "999"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("Learner 3"), containsString("value=\"999\""))));
        pages.perform(post(address + "/standings").param(field, "1,5")).andExpect(redirectedUrl(address));

        var entry = sheet().lines().get(2).entries().get(0);
        assertThat(entry.standing()).isEqualTo(Standing.MARKED);
        assertThat(entry.awarded()).isEqualByComparingTo("1.5");
        assertThat(entry.available()).isEqualByComparingTo(outOf);
        pages.perform(get(address)).andExpect(content().string(containsString("value=\"1.5\"")));
        pages.perform(post(address + "/submit")).andExpect(redirectedUrl(address));
    }

    @Test
    void prefersTheMarksOfASheetThatWasDecidedSince() throws Exception {
        SheetEntry third = sheets.of(classSet.id()).get(2);
        long learner = sheet().lines().get(2).learnerId().orElseThrow();
        BigDecimal drawn = sheet().lines().get(2).entries().get(0).awarded();
        sheets.giveTo(java.util.Map.of(third.id(), Optional.empty()));
        pages.perform(post(address + "/standings").param("marks-1-" + learner, "0")).andExpect(redirectedUrl(address));
        assertThat(sheet().lines().get(2).entries().get(0).awarded()).isEqualByComparingTo("0");

        sheets.giveTo(java.util.Map.of(third.id(), Optional.of(learner)));

        assertThat(sheet().lines().get(2).entries().get(0).awarded()).isEqualByComparingTo(drawn);
    }

    @Test
    void isNotSubmittedWhileSomethingIsOpen() throws Exception {
        sheets.giveTo(java.util.Map.of(sheets.of(classSet.id()).get(2).id(), Optional.empty()));

        pages.perform(post(address + "/submit"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Learner 3")));
        assertThat(kept.find(id).orElseThrow().isDraft()).isTrue();
    }

    /** Who says that somebody was late and then submits has said it, whether it was kept before or not. */
    @Test
    void submitsWithWhatStandsInTheFormOfTheDraft() throws Exception {
        pages.perform(get(address)).andExpect(content().string(containsString("formaction=\"" + address + "/submit\"")));
        String standing = "standing-1-" + sheet().lines().get(0).learnerId().orElseThrow();
        sheets.giveTo(java.util.Map.of(sheets.of(classSet.id()).get(2).id(), Optional.empty()));
        String onPaper = "marks-1-" + sheet().lines().get(2).learnerId().orElseThrow();

        pages.perform(post(address + "/submit").param(standing, "late").param(onPaper, "999"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Nothing was kept")));
        assertThat(kept.find(id).orElseThrow().isDraft()).isTrue();
        pages.perform(post(address + "/submit").param(standing, "late").param(onPaper, "2")).andExpect(redirectedUrl(address));

        assertThat(kept.find(id).orElseThrow().isDraft()).isFalse();
        assertThat(sheet().lines().get(0).entries().get(0).standing()).isEqualTo(Standing.LATE);
        assertThat(sheet().lines().get(2).entries().get(0).awarded()).isEqualByComparingTo("2");
    }

    /** The sheet to sign holds the same names and marks as the list, and is an export as that is. */
    @Test
    void writesDownWhoTookTheMarksOut() throws Exception {
        for (String file : List.of("/mark-sheet.pdf", "/mark-sheet.csv", "/mark-sheet.xlsx")) {
            pages.perform(get(address + file)).andExpect(status().isOk());

            pages.perform(get("/audit")).andExpect(content().string(containsString(address + file)));
        }
    }

    @Test
    void correctsWithAReasonAndKeepsWhatWasSubmitted() throws Exception {
        pages.perform(post(address + "/submit")).andExpect(redirectedUrl(address));
        var entry = sheet().lines().get(0).entries().get(0);

        pages.perform(post(address + "/corrections")
                        .param("line", "1")
                        .param("place", "1")
                        .param("standing", "marked")
                        .param("awarded", "999")
                        .param("available", "10")
                        .param("reason", "added up wrong"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("Nothing was corrected"), containsString("added up wrong"))));
        pages.perform(post(address + "/corrections")
                        .param("line", "1")
                        .param("place", "1")
                        .param("standing", "marked")
                        .param("awarded", "5")
                        .param("available", "20")
                        .param("reason", "added up wrong"))
                .andExpect(redirectedUrl(address + "#corrections"));

        assertThat(percent(1)).isEqualByComparingTo("25.0");
        assertThat(kept.frozenLines(id).get(0).entries().get(0).awarded()).isEqualByComparingTo(entry.awarded());
        byte[] paper = pages.perform(get(address + "/mark-sheet.pdf")).andReturn().getResponse().getContentAsByteArray();
        try (var document = Loader.loadPDF(paper)) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("Learner 2", "5/20*", "25.0", "added up wrong", "Moderator, name", "Head of department, name");
        }
        String term = pages.perform(get("/mark-sheets/term.csv").param("year", "").param("term", "Term 1"))
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);
        assertThat(term).contains("Learner 1", "25.0");
        assertThat(kept.placesOf(sheet().lines().get(0).learnerId().orElseThrow(), Share.everything())).hasSize(1);
    }

    @Test
    void throwsADraftAway() throws Exception {
        pages.perform(post(address + "/throw-away")).andExpect(redirectedUrl("/mark-sheets"));
        pages.perform(get(address)).andExpect(status().isNotFound());
    }

    private MarkSheet sheet() {
        return book.find(id).orElseThrow();
    }

    private BigDecimal percent(int line) {
        MarkSheet sheet = sheet();
        return sheet.result(sheet.lines().get(line - 1)).percentage().orElseThrow();
    }

    /** Gives every criterion of a sheet one verdict, so that its total changes whatever it was. */
    private void change(SheetEntry sheet, Verdict verdict) {
        for (MarkEntry mark : sheets.marks(sheet.id())) {
            double awarded = verdict == Verdict.MET ? mark.available() : 0;
            sheets.change(
                    sheet.id(),
                    new MarkChange(mark.criterion(), Optional.of(verdict), awarded, "seen", "teacher", Instant.EPOCH));
        }
    }
}
