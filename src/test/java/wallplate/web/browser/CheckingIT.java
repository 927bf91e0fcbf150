package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.measure.Finding;
import wallplate.measure.Measurement;
import wallplate.records.ClassSet;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkEntry;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.sheet.ScanFile;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Checking in a real browser, by keyboard alone and by pointing, with sheets that were read from scans. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:checking;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/checking",
            "wallplate.demonstration.enabled=false"
        })
@Import(SeededRecords.class)
class CheckingIT {

    private static final Path SAMPLES = Path.of("sample-scans");

    @LocalServerPort
    private int port;

    @Autowired
    private SeededRecords seeded;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Sheets sheets;

    @Autowired
    private SheetCorrections corrections;

    private ClassSet classSet;
    private SheetEntry first;

    @BeforeEach
    void threeSheetsOfTheSampleClass() throws IOException {
        String yaml = Files.readString(SAMPLES.resolve("task.yml"));
        DrawingTask task = ((TaskReading.Accepted) TaskFile.read(yaml)).task();
        List<AssessedSheet.Read> read = new ArrayList<>();
        for (String name : List.of("02-bongani.jpg", "04-dalia.jpg", "09-itzel.jpg")) {
            read.add(assessed(name, task));
        }
        classSet = seeded.aClassSetOf(tasks.add(task), read);
        first = sheets.of(classSet.id()).get(0);
    }

    private static AssessedSheet.Read assessed(String name, DrawingTask task) throws IOException {
        List<AssessedSheet> pages = new ArrayList<>();
        ScanFile.forEachPage(SAMPLES.resolve(name), page -> pages.add(new Assessor().assess(page, task)));
        return (AssessedSheet.Read) pages.get(0);
    }

    /** Nothing but keys from here to the last assertion: the pointer is never moved and nothing is clicked. */
    @Test
    void checksByKeyboardAlone() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            String wallThickness = "wall-thickness";
            browser.go("/sheets/" + first.id());
            browser.find("[data-keys-help]:not([hidden])");
            List<MarkEntry> open =
                    sheets.marks(first.id()).stream().filter(MarkEntry::isUndecided).toList();
            for (MarkEntry mark : open) {
                press(browser, "u");
                browser.await("an open criterion is the current one", "document.querySelector('.criteria > .current [data-quick]') !== null");
                press(browser, "m");
                browser.await(
                        "it is decided",
                        "!document.querySelector('#%s [data-quick]')".formatted(mark.criterion()));
            }
            assertThat(sheets.marks(first.id())).noneMatch(MarkEntry::isUndecided);

            goToCriterion(browser, wallThickness);
            assertThat(browser.findAll(".evidence.shown")).hasSize(1);
            press(browser, "l");
            browser.find("[data-lines]");
            tabTo(browser, "input[data-line='0']");
            press(browser, Keys.SPACE);
            tabTo(browser, "input[data-line='1']");
            press(browser, Keys.SPACE);
            browser.awaitText("Two lines are chosen.");
            press(browser, Keys.ENTER);
            browser.awaitText("was measured again from the lines that you chose");
            assertThat(browser.find("#" + wallThickness).getText()).contains("Measured from lines chosen by demonstration");

            press(browser, "s");
            browser.find("[data-ticks]");
            String before = browser.find("input[name=leftX]").getDomProperty("value");
            tabTo(browser, "[data-tick=left]");
            press(browser, Keys.ARROW_RIGHT);
            press(browser, Keys.ARROW_RIGHT);
            assertThat(number(browser, "leftX")).isCloseTo(Double.parseDouble(before) + 1, within(0.01));
            tabTo(browser, "form button[type=submit]");
            press(browser, Keys.ENTER);
            browser.awaitText("Measured again from both ticks");
            assertThat(browser.find(".title-block").getText()).contains("both ticks, by hand");

            press(browser, "n");
            browser.await("the next sheet", "/Bo Lind/.test(document.querySelector('h1').innerText)");
            press(browser, "p");
            browser.await("the sheet before", "/Amahle/.test(document.querySelector('h1').innerText)");
            press(browser, "c");
            browser.await("checked", "!/Amahle/.test(document.querySelector('h1').innerText)");
        }
        assertThat(sheets.find(first.id()).orElseThrow().checkedAt()).isPresent();
    }

    @Test
    void showsStrokesWithTheirCriteriaAndCriteriaWithTheirStrokes() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.go("/sheets/" + first.id());
            browser.find("[data-zoom=in]:not([hidden])");
            new Actions(browser.driver()).moveToElement(browser.find("#rafter-depth .name")).perform();
            browser.await("strokes", "document.querySelector('.evidence.shown')?.dataset.evidence === 'rafter-depth'");

            browser.driver().executeScript("document.querySelector('[data-show-part=wall]').focus()");
            browser.await("criteria", "document.querySelector('#wall-thickness.shown') !== null");
            browser.await("lines", "document.querySelector('.part.shown').dataset.part === 'wall'");

            press(browser, Keys.SPACE);
            browser.await("switched off", "document.querySelectorAll('.page .part.off[data-part=wall]').length > 0");
            browser.await("the others stay", "document.querySelectorAll('.page .part.off:not([data-part=wall])').length === 0");
        }
    }

    /** The bar shown 8 mm too short makes every size larger; taking it back gives each value as it was. */
    @Test
    void measuresAgainFromTicksThatWereClickedAndTakesItBack() {
        KeptAssessment asRead = sheets.assessment(first.id()).orElseThrow();
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.go("/sheets/" + first.id() + "/scale");
            browser.find("[data-tick=left]:not([hidden])");
            double left = number(browser, "leftX");
            double right = number(browser, "rightX");
            double up = number(browser, "leftY");
            clickAt(browser, left + 8, up, asRead);
            clickAt(browser, right, number(browser, "rightY"), asRead);
            assertThat(number(browser, "leftX")).isCloseTo(left + 8, within(0.6));
            browser.look("scale");
            browser.helpPicture("scale");
            browser.find("form button.first").click();
            browser.awaitText("Measured again from both ticks: sizes are 8");
            browser.look("scale-corrected");
            assertThat(growth(asRead, sheets.assessment(first.id()).orElseThrow())).isCloseTo(100 / 92.0, within(0.012));

            browser.go("/sheets/" + first.id() + "/scale");
            browser.find("form[action$='/restore'] button").click();
            browser.awaitText("Taken back: the sheet is measured as before.");
        }
        assertThat(sheets.assessment(first.id())).contains(asRead);
        assertThat(corrections.of(first.id())).hasSize(2).allMatch(one -> one.correctedBy().equals("demonstration"));
    }

    @Test
    void measuresAPartFromLinesThatWereClickedAndSaysSo() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            browser.go("/sheets/" + first.id());
            browser.driver().executeScript("document.querySelector('#rafter-depth details').open = true");
            browser.find("#rafter-depth [data-key=lines]").click();
            browser.find("[data-lines]");
            browser.find("form button.first").click();
            browser.awaitText("Choose a line first.");
            browser.find("input[data-line='0']").click();
            clickLine(browser, 1);
            browser.await("both are marked on the sheet", "document.querySelectorAll('.choosable.chosen').length === 2");
            browser.look("lines");
            browser.helpPicture("lines");
            browser.find("form button.first").click();
            browser.awaitText("Measured from lines chosen by demonstration");
            browser.look("lines-chosen");

            browser.go("/sheets/" + first.id() + "/lines/rafter-depth");
            browser.find("form[action$='/restore'] button").click();
            browser.awaitText("Taken back: the sheet is measured as before.");
            assertThat(browser.find("#rafter-depth").getText()).doesNotContain("lines chosen by");
        }
    }

    @Test
    void correctsOnAPhone() {
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            browser.go("/sheets/" + first.id() + "/scale").look("scale");
            browser.go("/sheets/" + first.id() + "/lines/wall-thickness").look("lines");
        }
    }

    /** The median growth of the lengths measured on both; one line taken for another does not move it. */
    private static double growth(KeptAssessment before, KeptAssessment after) {
        double[] growths = lengths(before).entrySet().stream()
                .filter(entry -> lengths(after).containsKey(entry.getKey()))
                .mapToDouble(entry -> lengths(after).get(entry.getKey()) / entry.getValue())
                .sorted()
                .toArray();
        assertThat(growths.length).isGreaterThan(6);
        return growths[growths.length / 2];
    }

    private static Map<String, Double> lengths(KeptAssessment assessment) {
        Map<String, Double> lengths = new HashMap<>();
        for (Measurement measurement : assessment.measured().measurements()) {
            if (!measurement.key().equals("roof.pitch")
                    && measurement.finding() instanceof Finding.Quantity quantity
                    && quantity.value() > 4) {
                lengths.put(measurement.key(), quantity.value());
            }
        }
        return lengths;
    }

    private static void goToCriterion(Browser browser, String criterion) {
        for (int step = 0; step < 60 && browser.findAll("#" + criterion + ".current").isEmpty(); step++) {
            press(browser, "j");
        }
        if (browser.findAll("#" + criterion + ".current").isEmpty()) {
            for (int step = 0; step < 60 && browser.findAll("#" + criterion + ".current").isEmpty(); step++) {
                press(browser, "k");
            }
        }
        assertThat(browser.findAll("#" + criterion + ".current")).hasSize(1);
    }

    private static void tabTo(Browser browser, String css) {
        String reached = "return document.activeElement.matches(\"%s\")".formatted(css);
        for (int step = 0; step < 60; step++) {
            if (Boolean.TRUE.equals(browser.driver().executeScript(reached))) {
                return;
            }
            press(browser, Keys.TAB);
        }
        throw new AssertionError("the Tab key does not lead to " + css);
    }

    private static double number(Browser browser, String name) {
        return Double.parseDouble(browser.find("input[name=" + name + "]").getDomProperty("value"));
    }

    private static void clickAt(Browser browser, double x, double y, KeptAssessment asRead) {
        WebElement page = browser.find("svg.page");
        double scale = page.getSize().width / asRead.page().widthMm();
        int right = (int) Math.round((x - asRead.page().widthMm() / 2) * scale);
        int down = (int) Math.round((asRead.page().heightMm() / 2 - y) * scale);
        new Actions(browser.driver()).moveToElement(page, right, down).click().perform();
    }

    private static void clickLine(Browser browser, int number) {
        browser.driver().executeScript(
                "document.querySelector('.choosable[data-line=\"%d\"] .hit').dispatchEvent(new MouseEvent('click', {bubbles: true}))"
                        .formatted(number));
    }

    private static void press(Browser browser, CharSequence keys) {
        new Actions(browser.driver()).sendKeys(keys).perform();
    }
}
