package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.JavascriptException;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.FluentWait;
import org.openqa.selenium.support.ui.WebDriverWait;
import wallplate.Needed;

/** A real browser without a window, at the size of a desk or of a phone, which keeps pictures of what it saw. */
final class Browser implements AutoCloseable {

    /** The size of the window. */
    enum Size {
        DESK(1366, 900),
        PHONE(360, 740);

        private final Dimension dimension;

        Size(int widthPx, int heightPx) {
            this.dimension = new Dimension(widthPx, heightPx);
        }
    }

    private static final Path PICTURES = Path.of("target", "screenshots");
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final List<String> WCAG_22_AA = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    private final ChromeDriver driver;
    private final String root;
    private final Size size;

    private Browser(ChromeDriver driver, String root, Size size) {
        this.driver = driver;
        this.root = root;
        this.size = size;
    }

    /** Opens a browser, or skips the test with a message where the machine has none; under CI that is a failure. */
    static Browser open(int port, Size size, String... more) {
        Optional<Path> chromium = firstOf("chromium", "chromium-browser", "google-chrome");
        Optional<Path> chromedriver = firstOf("chromedriver");
        Needed.holds(
                chromium.isPresent() && chromedriver.isPresent(),
                "Chromium and its driver are needed for this test and are not on this machine's path.");
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.orElseThrow().toString());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-default-apps",
                "--disable-sync",
                "--no-first-run",
                "--hide-scrollbars",
                "--force-device-scale-factor=1",
                "--lang=en-GB");
        options.addArguments(more);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chromedriver.orElseThrow().toFile())
                .build();
        ChromeDriver driver = new ChromeDriver(service, options);
        Browser browser = new Browser(driver, "http://localhost:" + port, size);
        browser.resize(size.dimension);
        return browser;
    }

    private static Optional<Path> firstOf(String... names) {
        return Stream.of(names)
                .flatMap(name -> Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                        .map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Headless windows are not narrower than 500 pixels; the view inside one can be. */
    private void resize(Dimension dimension) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of(
                        "width", dimension.width, "height", dimension.height, "deviceScaleFactor", 1, "mobile", size == Size.PHONE));
    }

    ChromeDriver driver() {
        return driver;
    }

    void prefer(String feature, String value) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", feature, "value", value))));
    }

    /** Takes the line to the server away, or gives it back. */
    void line(boolean there) {
        driver.executeCdpCommand("Network.enable", Map.of());
        driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of("offline", !there, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }

    Browser go(String address) {
        driver.get(root + address);
        return this;
    }

    WebElement find(String css) {
        return waiting().until(page -> page.findElement(By.cssSelector(css)));
    }

    List<WebElement> findAll(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** Waits until a condition written in the page's own language holds. */
    void await(String what, String condition) {
        waiting()
                .withMessage(() -> what + ", at " + path())
                .until(page -> Boolean.TRUE.equals(((JavascriptExecutor) page).executeScript("return " + condition)));
    }

    /** Waits until a text is seen; the driver has several words for a page that gives way meanwhile. */
    void awaitText(String text) {
        waiting()
                .ignoring(WebDriverException.class)
                .withMessage(() -> "the text " + text + ", at " + path())
                .until(page -> page.findElement(By.tagName("body")).getText().contains(text));
    }

    /** While a page gives way to the next, what was found on it is no longer there. */
    private FluentWait<WebDriver> waiting() {
        return new WebDriverWait(driver, PATIENCE)
                .ignoring(StaleElementReferenceException.class)
                .ignoring(JavascriptException.class);
    }

    String path() {
        return driver.getCurrentUrl().substring(root.length());
    }

    /** Keeps a picture of the whole page and checks what must hold for every page. */
    void look(String name) {
        picture(name);
        assertThat(status()).as("%s: the server's answer", name).isLessThan(500);
        assertThat(findAll(".title-block")).as("%s: the page is whole, down to its title block", name).hasSize(1);
        assertThat(overflowPx()).as("%s: what sticks out to the right, in pixels", name).isLessThanOrEqualTo(1);
        Results results = new AxeBuilder().withTags(WCAG_22_AA).analyze(driver);
        assertThat(results.getViolations().stream().map(Browser::inWords).toList())
                .as("%s: breaches of WCAG 2.2 AA", name)
                .isEmpty();
    }

    private static String inWords(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + " at " + rule.getNodes().stream()
                .limit(3)
                .map(node -> node.getTarget() + " " + node.getHtml())
                .toList();
    }

    private long status() {
        return ((Number) driver.executeScript("return performance.getEntriesByType('navigation')[0].responseStatus"))
                .longValue();
    }

    private long overflowPx() {
        return ((Number) driver.executeScript(
                        "return document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .longValue();
    }

    /** Pictures further down are otherwise fetched only when they come into the window. */
    private void awaitPictures() {
        driver.executeScript("document.querySelectorAll('img[loading=lazy]').forEach((picture) => { picture.loading = 'eager'; })");
        await("the pictures of the page", "[...document.images].every((picture) => picture.complete)");
    }

    void picture(String name) {
        awaitPictures();
        long heightPx = ((Number) driver.executeScript("return document.documentElement.scrollHeight")).longValue();
        resize(new Dimension(size.dimension.width, (int) Math.min(6000, Math.max(heightPx, size.dimension.height))));
        try {
            write(PICTURES.resolve("%s-%s.png".formatted(name, size.name().toLowerCase(Locale.ROOT))));
        } finally {
            resize(size.dimension);
        }
    }

    /** Keeps the page as it comes out of a printer, and returns it: a PDF file. */
    byte[] print(String name) {
        awaitPictures();
        Object pdf = driver.executeCdpCommand(
                        "Page.printToPDF",
                        Map.of("paperWidth", 8.27, "paperHeight", 11.69, "printBackground", false))
                .get("data");
        byte[] content = Base64.getDecoder().decode(pdf.toString());
        try {
            Files.createDirectories(PICTURES);
            Files.write(PICTURES.resolve(name + ".pdf"), content);
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return content;
    }

    /** Keeps a picture of the window as it stands, for the help pages. */
    void helpPicture(String name) {
        awaitPictures();
        write(PICTURES.resolve("help").resolve(name + ".png"));
    }

    private void write(Path file) {
        try {
            Files.createDirectories(file.getParent());
            Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** The bytes of scripts, styles and fonts that the page has fetched, as they were before compression. */
    long scriptAndStyleBytes() {
        return ((Number) driver.executeScript(
                        "return performance.getEntriesByType('resource')"
                                + ".filter(entry => /\\.(js|css)(\\?|$)/.test(entry.name))"
                                + ".reduce((sum, entry) => sum + entry.decodedBodySize, 0)"))
                .longValue();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
