package wallplate.web.browser;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Cookie;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import wallplate.accounts.OneTimeLinks;

/** From the link in the log to a teacher who is signed in, as people click it. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:accounts-it;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/accounts-it",
            "wallplate.demonstration.enabled=false"
        })
class AccountsIT {

    private static final String PASSWORD = "purlin kettle sober ostrich";

    @LocalServerPort
    private int port;

    @Autowired
    private OneTimeLinks links;

    @Autowired
    private JdbcClient database;

    @BeforeEach
    void nobodyHasAnAccount() {
        database.sql("delete from accounts where id <> 0").update();
    }

    @ParameterizedTest
    @EnumSource(Browser.Size.class)
    void makesTheAdministratorWhoMakesATeacher(Browser.Size size) {
        try (Browser browser = Browser.open(port, size)) {
            browser.go("/").awaitText("Today");
            browser.go("/set-password/" + links.makeForFirstAdministrator()).awaitText("first administrator");
            browser.look("accounts-first");
            browser.find("#name").sendKeys("Ada Root");
            choose(browser);
            browser.awaitText("The password is set");
            browser.look("today-as-administrator");
            Cookie session = browser.driver().manage().getCookieNamed("SESSION");
            assertThat(session.isHttpOnly()).isTrue();
            assertThat(session.getSameSite()).isEqualTo("Lax");

            browser.go("/accounts/new");
            browser.look("accounts-new");
            browser.find("#name").sendKeys("M. Keller");
            browser.find("main button.first").click();
            browser.awaitText("Hand this link over now");
            browser.look("accounts-link");
            String link = browser.find("main .figure").getText();
            browser.go("/accounts");
            browser.look("accounts");
            browser.findAll("main td a").stream()
                    .filter(one -> one.getText().equals("M. Keller"))
                    .findFirst()
                    .orElseThrow()
                    .click();
            browser.awaitText("no password yet");
            browser.look("accounts-one");
            browser.go("/class-sets").awaitText("This is not open to you");
            browser.look("accounts-refused");
            browser.find(".who button").click();
            browser.awaitText("Name of the account");

            browser.go(link.substring(link.indexOf("/set-password/"))).awaitText("For the account M. Keller");
            choose(browser);
            browser.awaitText("The password is set");
            browser.go("/account").awaitText("Teacher");
            browser.look("account");
            browser.find(".who button").click();
            // Asking for the next page while the session is being ended would lose what was asked for.
            browser.awaitText("Name of the account");

            // A visitor may look at the invented set; what belongs to an account asks for one.
            browser.go("/account").awaitText("Name of the account");
            browser.find("#name").sendKeys("M. Keller");
            browser.find("#password").sendKeys("something else");
            browser.find("main button.first").click();
            browser.awaitText("do not belong together");
            browser.look("sign-in");
            browser.find("#password").sendKeys(PASSWORD);
            browser.find("main button.first").click();
            browser.await("the page that was asked for", "location.pathname === '/account'");
            assertThat(browser.driver().findElement(By.cssSelector(".who")).getText()).contains("M. Keller");
        }
    }

    private static void choose(Browser browser) {
        browser.find("#password").sendKeys(PASSWORD);
        browser.find("#again").sendKeys(PASSWORD);
        browser.find("main button.first").click();
    }
}
