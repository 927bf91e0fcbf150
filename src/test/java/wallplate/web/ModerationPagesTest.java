package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import wallplate.marking.Verdict;
import wallplate.moderation.BlindSheet;
import wallplate.moderation.Moderating;
import wallplate.moderation.Moderation;
import wallplate.moderation.Moderations;
import wallplate.records.ClassSet;
import wallplate.records.MarkEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** The pages of moderation, item analysis and growth: what they show, what they must not show, what a person may get wrong. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:moderation-pages;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/moderation-pages",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class ModerationPagesTest {

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Moderating moderating;

    @Autowired
    private Moderations moderations;

    @Autowired
    private DecidedSets sets;

    private ClassSet classSet;

    @BeforeEach
    void aDecidedSet() {
        classSet = sets.aSet(tasks.add(DrawnSheets.aTask()), 6, 1);
    }

    @Test
    void drawsASampleAndStatesItsRule() throws Exception {
        pages.perform(drawing("at-random", "50", "percent", "7", "M. Two"))
                .andExpect(redirectedUrlPattern("/moderations/*"));

        Moderation drawn = moderations.of(classSet.id()).get(0);
        assertThat(drawn.sheets()).hasSize(3);
        pages.perform(get("/moderations/" + drawn.id()))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("50 % of the sheets, rounded up")));
    }

    @ParameterizedTest
    @CsvSource({
        "0, sheets, 1, M. Two, right would be a whole number from 1",
        "101, percent, 1, M. Two, from 1 to 100",
        "many, sheets, 1, M. Two, Found: &quot;many&quot;",
        "3, sheets, -4, M. Two, 0 or more",
        "3, sheets, 1, '', Say who marks"
    })
    void saysWhatIsWrongWithADraw(String size, String unit, String seed, String moderator, String said) throws Exception {
        pages.perform(drawing("at-random", size, unit, seed, moderator))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString(said), containsString("value=\"" + size + "\""))));
        assertThat(moderations.of(classSet.id())).isEmpty();
    }

    /** The strongest form of "blind": other first marks, changed by hand with reasons, do not change a byte of the page. */
    @Test
    void sendsTheSecondMarkerTheSamePageWhateverTheFirstMarksAre() throws Exception {
        Moderation drawn = sets.drawn(classSet, 1);
        String before = page("/moderations/" + drawn.id() + "/sheets/1");
        for (MarkEntry mark : sheets.marks(drawn.sheets().get(0).sheetId())) {
            sets.change(mark, Verdict.NOT_MET, mark.available() / 2);
        }

        assertThat(page("/moderations/" + drawn.id() + "/sheets/1")).isEqualTo(before);
        assertThat(before).doesNotContain("Learner ").doesNotContain("verdict-").doesNotContain("/sheets/" + drawn.sheets().get(0).sheetId() + "\"");
    }

    @Test
    void keepsWhatWasTypedWhereAMarkIsMissing() throws Exception {
        Moderation drawn = sets.drawn(classSet, 2);
        BlindSheet sheet = moderating.sheet(drawn.id(), 1).orElseThrow();
        String first = sheet.criteria().get(0).id();

        pages.perform(post("/moderations/%d/sheets/1".formatted(drawn.id())).param("mark-" + first, "0.25"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(
                        containsString("value=\"0.25\""),
                        containsString((sheet.criteria().size() - 1) + " marks are missing"))));
        assertThat(moderations.secondMarks(drawn.id(), 1)).isEmpty();
    }

    @Test
    void goesFromSheetToSheetAndHandsIn() throws Exception {
        Moderation drawn = sets.drawn(classSet, 2);
        String address = "/moderations/" + drawn.id();

        pages.perform(filled(drawn, 1)).andExpect(redirectedUrl(address + "/sheets/2"));
        pages.perform(post(address + "/hand-in")).andExpect(flash().attribute("wrong", containsString("Nothing was handed in")));
        pages.perform(filled(drawn, 2)).andExpect(redirectedUrl(address));
        pages.perform(get(address)).andExpect(content().string(not(containsString("ICC(2,1)"))));
        pages.perform(post(address + "/hand-in")).andExpect(redirectedUrl(address));
        pages.perform(get(address)).andExpect(content().string(containsString("ICC(2,1)")));
        pages.perform(filled(drawn, 1)).andExpect(flash().attribute("wrong", containsString("no longer be changed")));
    }

    @ParameterizedTest
    @CsvSource({
        "'', '', '', why, Choose whether",
        "accept, '', '', '', Say why",
        "adjust, '', -1, why, Choose the criterion",
        "adjust, roof-pitch, 0, why, that is not 0",
        "adjust, roof-pitch, 50, why, right would be a number",
        "adjust, roof-pitch, one, why, right would be a number"
    })
    void saysWhatIsWrongWithADecision(String decision, String criterion, String by, String reason, String said)
            throws Exception {
        Moderation drawn = handedIn();

        pages.perform(decided(drawn, decision, criterion, by, reason))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString(said)));
        assertThat(moderations.find(drawn.id()).orElseThrow().decisions()).isEmpty();
    }

    @Test
    void decidesAndSaysWhatItDid() throws Exception {
        Moderation drawn = handedIn();

        pages.perform(decided(drawn, "adjust", "roof-pitch", "-0,5", "marked high"))
                .andExpect(flash().attribute("done", containsString("by −0.5")));
        pages.perform(get("/moderations/" + drawn.id()))
                .andExpect(content().string(allOf(containsString("marked high"), containsString("Adjusted"))));
        pages.perform(get("/sheets/" + sheets.of(classSet.id()).get(0).id()))
                .andExpect(content().string(containsString("Moderation " + drawn.id() + ": marked high")));
    }

    @Test
    void saysThatADecisionWasMadeMeanwhile() throws Exception {
        Moderation drawn = handedIn();
        pages.perform(decided(drawn, "accept", "", "", "fine")).andExpect(flash().attributeExists("done"));

        pages.perform(decided(drawn, "mark-again", "", "", "too far apart"))
                .andExpect(flash().attribute("wrong", containsString("A decision was made since")));
        assertThat(moderations.find(drawn.id()).orElseThrow().decisions()).hasSize(1);
    }

    @Test
    void decidesNothingBeforeTheSecondMarksAreIn() throws Exception {
        Moderation drawn = sets.drawn(classSet, 2);

        pages.perform(decided(drawn, "accept", "", "", "fine")).andExpect(status().isUnprocessableContent());
        assertThat(moderations.find(drawn.id()).orElseThrow().decisions()).isEmpty();
    }

    @Test
    void showsTheItemsOfASetAndWhyAFigureCannotBeTold() throws Exception {
        ClassSet one = sets.aSet(tasks.add(DrawnSheets.aTask()), 1, 2);

        pages.perform(get("/class-sets/" + classSet.id() + "/items"))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("6 sheets stand"), containsString("Cronbach"))));
        pages.perform(get("/class-sets/" + one.id() + "/items"))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(
                        containsString("cannot be told: it takes at least two learners"), not(containsString("NaN")))));
    }

    @Test
    void showsTheGrowthOfALearnerOverTheSetsOfOneClass() throws Exception {
        ClassSet later = sets.aSet(tasks.find(classSet.taskId()).orElseThrow(), 6, 3);
        long learner = sheets.of(later.id()).get(0).learner().orElseThrow().id();

        pages.perform(get("/learners/" + learner + "/growth"))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("Learner 1 over the tasks"), containsString("Task 2"))));
    }

    @ParameterizedTest
    @CsvSource({"/moderations/999", "/moderations/999/sheets/1", "/learners/999/growth", "/class-sets/999/items", "/class-sets/999/moderation"})
    void answersWithAPageWhatIsNotThere(String address) throws Exception {
        pages.perform(get(address)).andExpect(status().isNotFound());
    }

    private MockHttpServletRequestBuilder drawing(String choice, String size, String unit, String seed, String moderator) {
        return post("/class-sets/" + classSet.id() + "/moderation")
                .param("choice", choice)
                .param("size", size)
                .param("unit", unit)
                .param("seed", seed)
                .param("moderator", moderator);
    }

    private MockHttpServletRequestBuilder filled(Moderation moderation, int place) {
        MockHttpServletRequestBuilder request = post("/moderations/%d/sheets/%d".formatted(moderation.id(), place));
        moderating.sheet(moderation.id(), place).orElseThrow().criteria().forEach(criterion ->
                request.param("mark-" + criterion.id(), Double.toString(criterion.available())));
        return request;
    }

    private static MockHttpServletRequestBuilder decided(
            Moderation moderation, String decision, String criterion, String by, String reason) {
        return post("/moderations/" + moderation.id() + "/decision")
                .param("decision", decision)
                .param("criterion", criterion)
                .param("by", by)
                .param("reason", reason);
    }

    private Moderation handedIn() {
        Moderation drawn = sets.drawn(classSet, 4);
        sets.markAndHandIn(drawn, 0.5);
        return drawn;
    }

    /** A page without the token of its forms, which is another one each time. */
    private String page(String address) throws Exception {
        return pages.perform(get(address)).andExpect(status().isOk()).andReturn().getResponse().getContentAsString()
                .replaceAll("(name=\"_?csrf\" (?:content|value)=\")[^\"]*", "$1");
    }
}
