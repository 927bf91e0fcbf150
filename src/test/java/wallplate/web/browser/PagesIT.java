package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.util.AntPathMatcher;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import wallplate.classes.SchoolClass;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.KeptTask;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** Every page in a real browser, at a desk and on a phone: no breach of WCAG 2.2 AA, nothing sticks out, light enough. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:pages;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/pages",
            "wallplate.demonstration.enabled=false"
        })
@Import(SeededRecords.class)
class PagesIT {

    private static final long MOST_SCRIPT_AND_STYLE_BYTES = 300_000;

    /** Parts of pages, addresses that lead on, and pages that {@code ModerationIT} or {@code AfternoonIT} looks at. */
    private static final Set<String> ELSEWHERE = Set.of(
            "/class-sets/{id}/check",
            "/class-sets/{id}/standing",
            "/sheets/{id}/lines/{criterion}/choices",
            "/tasks/{id}/guideline/usual",
            "/today/standing",
            "/check/{code}/results/{token}",
            "/moderations/{id}",
            "/moderations/{id}/sheets/{place}",
            // The pages of accounts are looked at by AccountsIT.
            "/sign-in",
            "/set-password/{token}",
            "/account",
            "/accounts",
            "/accounts/new",
            "/accounts/{id}");

    /** Pages whose pictures stand in the help. */
    private static final Set<String> IN_HELP =
            Set.of("today", "teach-again", "guideline", "feedback-codes", "learners", "class", "mark-sheet");

    @LocalServerPort
    private int port;

    @Autowired
    private SeededRecords seeded;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private FeedbackCodes codes;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    private RequestMappingHandlerMapping mappings;

    private final Map<String, String> pages = new LinkedHashMap<>();
    private String remarked = "";

    @BeforeEach
    void everyPageOfATaskAndAClassSet() {
        KeptTask task = seeded.aTask();
        ClassSet classSet = seeded.aClassSet(task);
        tasks.change(task.id(), task.task().withMarking(Map.of("name", "strict", "tolerance", Map.of("length", 0.5))));
        SheetEntry read = sheets.of(classSet.id()).get(2);
        SheetEntry refused = sheets.of(classSet.id()).stream()
                .filter(sheet -> sheet.state() == SheetState.UNREADABLE)
                .findFirst()
                .orElseThrow();
        pages.put("today", "/");
        pages.put("tasks", "/tasks");
        pages.put("task", "/tasks/" + task.id());
        pages.put("guideline", "/tasks/" + task.id() + "/guideline");
        pages.put("guideline-of-set", "/class-sets/" + classSet.id() + "/guideline");
        classSets.release(classSet.id());
        Map<Long, String> made = codes.make(classSet.id());
        pages.put("feedback", "/feedback/" + made.get(read.id()));
        pages.put("feedback-refused", "/feedback/" + made.get(refused.id()));
        pages.put("feedback-enter", "/feedback");
        pages.put("feedback-codes", "/class-sets/" + classSet.id() + "/feedback-codes");
        pages.put("feedback-files", "/class-sets/" + classSet.id() + "/feedback-files");
        pages.put("task-form", "/tasks/new");
        pages.put("task-change", "/tasks/" + task.id() + "/edit");
        pages.put("task-import", "/tasks/import");
        pages.put("class-sets", "/class-sets");
        pages.put("class-set-form", "/class-sets/new");
        pages.put("class-set", "/class-sets/" + classSet.id());
        pages.put("sheet", "/sheets/" + read.id());
        pages.put("sheet-refused", "/sheets/" + refused.id());
        pages.put("scale", "/sheets/" + read.id() + "/scale");
        pages.put("lines", "/sheets/" + read.id() + "/lines/rafter-depth?wait=true");
        pages.put("items", "/class-sets/" + classSet.id() + "/items");
        pages.put("moderation-draw", "/class-sets/" + classSet.id() + "/moderation");
        pages.put("growth", "/learners/" + read.learner().orElseThrow().id() + "/growth");
        pages.put("audit", "/audit");
        pages.put("task-copy", "/tasks/" + task.id() + "/copy");
        pages.put("check-guide", "/check/" + task.learnerCode() + "/guide");
        pages.put("across", "/class-sets/" + classSet.id() + "/across?criterion=rafter-depth");
        pages.put("teach-again", "/class-sets/" + classSet.id() + "/teach-again");
        pages.put("learners", "/class-sets/" + classSet.id() + "/learners");
        pages.put("guide", "/tasks/" + task.id() + "/guide");
        pages.put("check", "/check");
        pages.put("check-task", "/check/" + task.learnerCode());
        SchoolClass schoolClass = seeded.aSchoolClass();
        pages.put("classes", "/classes");
        pages.put("class-form", "/classes/new");
        pages.put("class", "/classes/" + schoolClass.id());
        pages.put("mark-sheets", "/mark-sheets");
        pages.put("mark-sheet-form", "/mark-sheets/new?class=" + classSet.classId());
        pages.put("mark-sheet", "/mark-sheets/" + seeded.aMarkSheet(classSet));
        pages.put("learner", "/learners/" + read.learner().orElseThrow().id());
        pages.put("everything", "/learners/" + read.learner().orElseThrow().id() + "/everything");
        pages.put("privacy", "/privacy");
        pages.put("handover", "/handover");
        pages.put("erase", "/learners/" + read.learner().orElseThrow().id() + "/erase");
        pages.put("audit", "/audit");
        pages.put("help", "/help");
        pages.put("missing", "/sheets/999999");
        remarked = "/class-sets/" + classSet.id() + "/guideline";
    }

    /** So that no new page is forgotten here. */
    @Test
    void looksAtEveryPageThereIs() {
        AntPathMatcher matcher = new AntPathMatcher();
        List<String> addresses = pages.values().stream().map(address -> address.replaceAll("\\?.*", "")).toList();
        assertThat(pagePatterns().filter(pattern -> !ELSEWHERE.contains(pattern)))
                .allSatisfy(pattern -> assertThat(addresses).anyMatch(address -> matcher.match(pattern, address)));
    }

    private Stream<String> pagePatterns() {
        return mappings.getHandlerMethods().entrySet().stream()
                .filter(mapping -> mapping.getKey().getMethodsCondition().getMethods().contains(RequestMethod.GET))
                .filter(mapping -> mapping.getValue().getMethod().getReturnType() == String.class)
                .flatMap(mapping -> mapping.getKey().getPatternValues().stream());
    }

    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void isAccessibleFitsTheWindowAndIsLight(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            pages.forEach((name, address) -> {
                browser.go(address).look(name);
                if (size == Browser.Size.DESK && IN_HELP.contains(name)) {
                    browser.helpPicture(name);
                }
                if (size == Browser.Size.DESK && name.equals("teach-again")) {
                    browser.driver().executeScript("document.getElementById('groups').scrollIntoView()");
                    browser.helpPicture("groups");
                }
                assertThat(browser.scriptAndStyleBytes())
                        .as("%s: bytes of scripts and styles", name)
                        .isLessThan(MOST_SCRIPT_AND_STYLE_BYTES);
            });
        }
    }

    /** On paper stands what a page says, and nothing that can only be pressed. */
    @Test
    void isPrintedAsAPageToRead() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.prefer("prefers-color-scheme", "dark");
            Map.of(
                            "sheet", "Roof pitch",
                            "class-set", "All sheets",
                            "teach-again", "How many met it",
                            "across", "Asked:",
                            "mark-sheet", "Amahle Dube",
                            "feedback", "Roof pitch")
                    .forEach((name, says) -> {
                        browser.go(pages.get(name)).await("the page is whole", "document.readyState === 'complete'");
                        String text = textOf(browser.print(name));
                        assertThat(text).as(name).contains(says).doesNotContain("Check my drawing", "Back to the class set");
                    });
        }
    }

    private static String textOf(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** What a changed guideline would do, before anything is kept. */
    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void showsWhoseMarksAnotherGuidelineWouldChange(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            browser.go(remarked).find("main form button[type=submit]").click();
            browser.look("remark-preview");
            browser.prefer("prefers-color-scheme", "dark");
            browser.look("remark-preview-dark");
        }
    }

    /** Its fields are fetched, and what was typed in others meanwhile is not lost. */
    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void fetchesACriterionsFieldsWhenItIsOpened(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            browser.go(pages.get("guideline")).find("#criterion-2 summary").click();
            browser.await("the second criterion is open", "document.querySelector('#criteria-2-title') !== null");
            browser.find("#criteria-2-title").sendKeys("As typed");
            browser.find("#criterion-3 summary").click();
            browser.await("the third criterion is open", "document.querySelector('#criteria-3-title') !== null");
            browser.await("what was typed stands", "document.querySelector('#criteria-2-title').value === 'As typed'");
            browser.look("guideline-criterion");
        }
    }

    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void isAccessibleInTheDark(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            browser.prefer("prefers-color-scheme", "dark");
            pages.forEach((name, address) -> browser.go(address).look(name + "-dark"));
        }
    }
}
