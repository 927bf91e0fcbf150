package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import wallplate.moderation.BlindSheet;
import wallplate.moderation.Decision;
import wallplate.moderation.Moderating;
import wallplate.moderation.Moderation;
import wallplate.moderation.SecondMarks;
import wallplate.records.ClassSet;
import wallplate.records.KeptTask;
import wallplate.records.MarkEntry;
import wallplate.records.Sheets;
import wallplate.web.DecidedSets;

/** Moderation, item analysis and growth in a real browser, and second marks given by keyboard. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:moderation-it;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/moderation-it",
            "wallplate.demonstration.enabled=false"
        })
@Import({SeededRecords.class, DecidedSets.class})
class ModerationIT {

    @LocalServerPort
    private int port;

    @Autowired
    private SeededRecords seeded;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Moderating moderating;

    private Moderation open;
    private final Map<String, String> pages = new LinkedHashMap<>();

    @BeforeEach
    void aSetWithASampleMarkedTwice() {
        KeptTask task = seeded.aTask();
        ClassSet classSet = seeded.aClassSet(task);
        decided.decide(classSet);
        ClassSet many = decided.aSet(task, 24, 41);
        decided.aSet(task, 24, 42);
        Moderation compared = decided.drawn(many, 12);
        markNearly(compared);
        moderating.decide(compared.id(), new Decision.Accept(), "The two agree closely enough.", "head", 0);
        open = decided.drawn(classSet, 5);
        pages.put("moderation-draw", "/class-sets/" + many.id() + "/moderation");
        pages.put("moderation-open", "/moderations/" + open.id());
        pages.put("moderation-sheet", "/moderations/" + open.id() + "/sheets/1");
        pages.put("moderation-report", "/moderations/" + compared.id());
        pages.put("items", "/class-sets/" + many.id() + "/items");
        pages.put("growth", "/learners/" + sheets.of(many.id()).get(2).learner().orElseThrow().id() + "/growth");
    }

    /** The second marker agrees in nine of ten marks and gives half of what could be had in the others. */
    private void markNearly(Moderation moderation) {
        Random random = new Random(4);
        moderation.sheets().forEach(sampled -> {
            BlindSheet sheet = moderating.sheet(moderation.id(), sampled.place()).orElseThrow();
            Map<String, String> typed = new LinkedHashMap<>();
            for (MarkEntry mark : sheets.marks(sampled.sheetId())) {
                double given = random.nextInt(10) == 0 ? mark.available() / 2 : mark.awarded();
                typed.put(mark.criterion(), Double.toString(given));
            }
            moderating.mark(sheet, SecondMarks.read(sheet.criteria(), typed));
        });
        moderating.handIn(moderation.id());
    }

    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void isAccessibleAndFitsTheWindow(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            pages.forEach((name, address) -> browser.go(address).look(name));
            if (size == Browser.Size.DESK) {
                browser.go(pages.get("moderation-report")).helpPicture("moderation");
                browser.go(pages.get("items")).helpPicture("items");
                browser.go(pages.get("growth")).helpPicture("growth");
            }
        }
    }

    @Test
    void isAccessibleInTheDark() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.prefer("prefers-color-scheme", "dark");
            pages.forEach((name, address) -> browser.go(address).look(name + "-dark"));
        }
    }

    @Test
    void takesSecondMarksByKeyboard() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.go("/moderations/" + open.id() + "/sheets/1");
            browser.await("the keys are ready", "!document.querySelector('[data-keys-help]').hidden");
            List<WebElement> marks = browser.findAll("input[data-maximum]");
            for (int at = 0; at < marks.size(); at++) {
                browser.driver().switchTo().activeElement().sendKeys(at == 0 ? "x" : "m");
            }
            assertThat(marks.get(0).getDomProperty("value")).isEqualTo("0");
            browser.driver().switchTo().activeElement().sendKeys(Keys.ENTER);

            browser.awaitText("Sheet 2 of 5");
            assertThat(browser.path()).isEqualTo("/moderations/" + open.id() + "/sheets/2");
        }
    }
}
