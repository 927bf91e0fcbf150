package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
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

    private final Map<String, String> pages = new LinkedHashMap<>();

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
        pages.put("task-form", "/tasks/new");
        pages.put("task-change", "/tasks/" + task.id() + "/edit");
        pages.put("task-import", "/tasks/import");
        pages.put("class-sets", "/class-sets");
        pages.put("class-set-form", "/class-sets/new");
        pages.put("class-set", "/class-sets/" + classSet.id());
        pages.put("sheet", "/sheets/" + read.id());
        pages.put("sheet-refused", "/sheets/" + refused.id());
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
        pages.put("privacy", "/privacy");
        pages.put("erase", "/learners/" + read.learner().orElseThrow().id() + "/erase");
        pages.put("audit", "/audit");
        pages.put("help", "/help");
        pages.put("missing", "/sheets/999999");
    }

    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void isAccessibleFitsTheWindowAndIsLight(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            pages.forEach((name, address) -> {
                browser.go(address).look(name);
                assertThat(browser.scriptAndStyleBytes())
                        .as("%s: bytes of scripts and styles", name)
                        .isLessThan(MOST_SCRIPT_AND_STYLE_BYTES);
            });
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
