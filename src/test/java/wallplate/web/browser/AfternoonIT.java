package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.records.Tasks;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** The teacher's afternoon and the learner's visit, with real sheets, in a real browser. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:afternoon;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/afternoon",
            "wallplate.demonstration.enabled=false"
        })
class AfternoonIT {

    private static final Path SAMPLES = Path.of("sample-scans").toAbsolutePath();

    @LocalServerPort
    private int port;

    @Autowired
    private Tasks tasks;

    @Autowired
    private JdbcClient database;

    @Test
    void marksAClassSetAtADesk() {
        try (Browser browser = Browser.open(port, Browser.Size.DESK)) {
            takeTheTaskIn(browser);
            handThreeSheetsIn(browser);
            browser.await("all sheets are read", "!document.querySelector('[data-progress]') && /03-chiyo/.test(document.body.innerText)");
            browser.look("afternoon-class-set");
            browser.helpPicture("class-set");
            String classSet = browser.path();

            checkBySheet(browser);
            browser.go(classSet + "/across");
            browser.look("afternoon-across");
            browser.helpPicture("across");
            browser.go(classSet + "/teach-again").look("afternoon-teach-again");
            makeAnExercise(browser, classSet);
            swapTwoLearners(browser, classSet);

            browser.go(classSet);
            browser.find("form[action$='/release'] button").click();
            browser.awaitText("The marks are released to the learners.");
        }
    }

    /** A group's exercise: made, then there to be printed. */
    private static void makeAnExercise(Browser browser, String classSet) {
        browser.find("#groups form button").click();
        browser.awaitText("The exercise is made");
        assertThat(browser.findAll("#groups a[href$='/sheets.pdf']")).hasSize(1);
        browser.look("afternoon-exercise");
        browser.go(classSet);
    }

    private void takeTheTaskIn(Browser browser) {
        importTheTask(browser);
        browser.go("/tasks/new").find("#title").sendKeys("Section through the eaves of the pump house");
        WebElement pitch = browser.find("#pitch");
        pitch.clear();
        pitch.sendKeys("90");
        browser.awaitText("The drawing waits for these sizes");
        pitch.clear();
        pitch.sendKeys("35");
        browser.await("the drawing follows", "/35\\s?°/.test(document.getElementById('preview').innerText)");
        browser.helpPicture("task-form");
    }

    private static void importTheTask(Browser browser) {
        browser.go("/tasks/import").find("#file").sendKeys(SAMPLES.resolve("task.yml").toString());
        browser.find("main form button").click();
        browser.awaitText("The task is taken in.");
    }

    private static void makeAnEmptySet(Browser browser, String className) {
        importTheTask(browser);
        browser.go("/class-sets/new");
        new Select(browser.find("#task")).selectByIndex(1);
        browser.find("#class-name").sendKeys(className);
        browser.find("main form button[type=submit]").click();
        browser.awaitText("The class set is made.");
    }

    private void handThreeSheetsIn(Browser browser) {
        browser.go("/class-sets/new");
        new Select(browser.find("#task")).selectByIndex(1);
        browser.find("#class-name").sendKeys("10B");
        browser.find("#class-list").sendKeys("Amara\nBongani\nChiyo");
        browser.find("#scans")
                .sendKeys(Stream.of("01-amara.jpg", "02-bongani.jpg", "03-chiyo.jpg")
                        .map(name -> SAMPLES.resolve(name).toString())
                        .collect(Collectors.joining("\n")));
        browser.find("main form button[type=submit]").click();
        browser.await("the set is made and every file is here", "/\\/class-sets\\/\\d+$/.test(location.pathname)");
    }

    /** Keyboard alone: to a criterion, change its mark with a reason, give it back, checked. */
    private void checkBySheet(Browser browser) {
        browser.driver().findElement(By.linkText("Chiyo")).click();
        browser.find("[data-keys-help]:not([hidden])");
        String before = browser.find(".total").getText();
        browser.helpPicture("sheet");
        press(browser, "j");
        press(browser, "j");
        browser.await("strokes light up", "document.querySelectorAll('.evidence.shown').length === 1");
        press(browser, "x");
        browser.await("the reason is asked for", "document.activeElement.name === 'reason'");
        press(browser, "one face drawn twice");
        press(browser, Keys.ENTER);
        browser.awaitText("Changed by hand: one face drawn twice");
        browser.look("afternoon-sheet-changed");
        assertThat(browser.find(".total").getText()).isNotEqualTo(before);

        browser.find(".criteria form[action$='/restore']").submit();
        browser.awaitText("the guideline's mark given back");
        assertThat(browser.find(".total").getText()).isEqualTo(before);
        press(browser, "c");
        browser.await("it went on", "!/Chiyo/.test(document.querySelector('h1').innerText)");
    }

    private static void type(Browser browser, int row, String name) {
        WebElement field = browser.findAll("td input[list]").get(row);
        field.clear();
        field.sendKeys(name);
    }

    /** On the page of all names, where a name may stand once only, and back by keyboard on the page of the set. */
    private void swapTwoLearners(Browser browser, String classSet) {
        browser.go(classSet + "/learners");
        type(browser, 0, "Bongani");
        browser.find("main form button").click();
        browser.awaitText("each learner has one sheet of a set");
        type(browser, 1, "Amara");
        browser.find("main form button").click();
        browser.awaitText("2 sheets have other learners now.");

        browser.go(classSet);
        browser.findAll(".give summary").get(0).sendKeys(Keys.ENTER);
        WebElement name = browser.find(".give[open] input[name=learner]");
        name.clear();
        name.sendKeys("ama", Keys.ENTER);
        browser.await(
                "the first sheet is Amara's, and the second Bongani's again by the name of its file",
                "[...document.querySelectorAll('tr[id^=sheet-] td:nth-child(2) > a')].map((name) => name.innerText).join()"
                        + " === 'Amara,Bongani,Chiyo'");
        browser.look("afternoon-whose-sheet");
    }

    @Test
    void goesOnWithAnUploadAfterTheLineWasLost() {
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            makeAnEmptySet(browser, "10C");
            browser.find("#scans").sendKeys(SAMPLES.resolve("12-lerato.jpg").toString());
            browser.line(false);
            browser.find("[data-upload] button[type=submit]").click();
            browser.awaitText("the line is lost");
            browser.picture("upload-line-lost");
            browser.line(true);
            browser.await("it went on by itself", "/12-lerato/.test(document.getElementById('standing').innerText)");
        }
    }

    /** What is refused for what it is would be refused each time: another file helps, and is said to. */
    @Test
    void offersNoOtherTryForAFileThatIsNoScan() {
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            makeAnEmptySet(browser, "10D");
            browser.find("#scans").sendKeys(SAMPLES.resolve("task.yml").toString());
            browser.find("[data-upload] button[type=submit]").click();
            browser.awaitText("Upload the scan itself.");
            assertThat(browser.findAll("[data-upload-list] button")).isEmpty();
            browser.picture("upload-refused");
        }
    }

    @Test
    void letsALearnerCheckADrawingOnAPhone() {
        long before = database.sql("select coalesce(max(id), 0) from self_checks").query(Long.class).single();
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            importTheTask(browser);
            String code = tasks.all().get(0).learnerCode();

            browser.go("/check").find("#code").sendKeys("wrong");
            browser.find("main form button").click();
            browser.awaitText("No task has this code.");
            WebElement field = browser.find("#code");
            field.clear();
            field.sendKeys(code.toLowerCase(Locale.ROOT));
            browser.find("main form button").click();
            browser.find("#photograph").sendKeys(SAMPLES.resolve("05-emre.jpg").toString());
            browser.find("[data-photograph] button").click();
            browser.await("the advice is there", "document.querySelector('.advice') !== null");
            browser.look("check-result");
            assertThat(browser.find("body").getText()).doesNotContain(" of 33 marks");

            browser.find("#photograph").sendKeys(SAMPLES.resolve("01-amara.jpg").toString());
            browser.find("[data-photograph] button").click();
            browser.awaitText("Compared with your last try");
            browser.awaitText("Right now, and not before");
            browser.look("check-again");
            browser.helpPicture("check");
            await().atMost(Duration.ofSeconds(20))
                    .untilAsserted(() -> assertThat(visitsSince(before)).as("the try before is told to be left").isEqualTo(1));

            browser.go("/help");
            await().atMost(Duration.ofSeconds(20)).untilAsserted(() -> assertThat(visitsSince(before)).isZero());
        }
    }

    /** Results that nobody said were left. */
    private long visitsSince(long before) {
        return database.sql("select count(*) from self_checks where id > ? and left_at is null")
                .param(before)
                .query(Long.class)
                .single();
    }

    /** A picture larger than is needed goes over a slow line smaller; the page says what goes on. */
    @Test
    void makesALargePhotographSmallerBeforeItIsSent() throws IOException {
        String code = aTaskKept();
        Path large = Path.of("target", "large.png").toAbsolutePath();
        BufferedImage sample = ImageIO.read(SAMPLES.resolve("01-amara.jpg").toFile());
        BufferedImage enlarged = new BufferedImage(4200, 2979, BufferedImage.TYPE_INT_RGB);
        Graphics2D paper = enlarged.createGraphics();
        paper.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        paper.drawImage(sample, 0, 0, 4200, 2979, null);
        paper.dispose();
        ImageIO.write(enlarged, "png", large.toFile());
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            browser.go("/check/" + code);
            browser.driver().executeScript(
                    """
                    window.heard = [];
                    const said = document.querySelector('[data-photograph-said]');
                    new MutationObserver(() => window.heard.push(said.textContent)).observe(said, { childList: true });
                    const send = XMLHttpRequest.prototype.send;
                    XMLHttpRequest.prototype.send = function (body) {
                      window.sentBytes = body.get('photograph').size;
                      return send.call(this, body);
                    };
                    """);
            browser.find("#photograph").sendKeys(large.toString());
            browser.find("[data-photograph] button").click();
            browser.await("the result is there", "document.querySelector('.viewer') !== null");
            long sent = ((Number) browser.driver().executeScript("return window.sentBytes")).longValue();
            assertThat(sent).isLessThan(Files.size(large) / 3).isLessThan(2_000_000);
            assertThat(browser.driver().executeScript("return window.heard.join('; ')").toString())
                    .contains("being made smaller", "being sent", "being measured");
            browser.find(".languages button[value=de]").click();
            browser.awaitText("Das ist richtig");
        }
    }

    @Test
    void letsALearnerCheckADrawingWithoutScripts() {
        String code = aTaskKept();
        try (Browser browser = Browser.open(port, Browser.Size.PHONE)) {
            browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
            browser.go("/check").find("#code").sendKeys(code);
            browser.find("main form button").click();
            browser.find("#photograph").sendKeys(SAMPLES.resolve("05-emre.jpg").toString());
            browser.find("[data-photograph] button").click();
            browser.awaitText("What to do next");
            browser.find(".guide-step summary").click();
            assertThat(browser.find(".guide-step[open] svg").isDisplayed()).isTrue();
            browser.find("#photograph").sendKeys(SAMPLES.resolve("01-amara.jpg").toString());
            browser.find("[data-photograph] button").click();
            browser.awaitText("Compared with your last try");
        }
    }

    private String aTaskKept() {
        try {
            TaskReading task = TaskFile.read(Files.readString(SAMPLES.resolve("task.yml")));
            return tasks.add(((TaskReading.Accepted) task).task()).learnerCode();
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    private static void press(Browser browser, CharSequence keys) {
        new Actions(browser.driver()).sendKeys(keys).perform();
    }
}
