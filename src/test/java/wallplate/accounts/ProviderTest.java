package wallplate.accounts;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.audit.AuditTrail;

/** Signing in through a provider: the whole exchange between browser, program and provider, over real connections. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "spring.datasource.url=jdbc:h2:mem:provider;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/provider",
            "wallplate.demonstration.enabled=false",
            "wallplate.sign-in.provider.name=the school",
            "wallplate.sign-in.provider.roles-claim=groups",
            "wallplate.sign-in.provider.roles.teacher=staff-drawing",
            "wallplate.sign-in.provider.roles.head=heads-drawing,heads-all"
        })
@Import(AccountsWithPassword.class)
class ProviderTest {

    private static final String PASSWORD = AccountsWithPassword.PASSWORD;
    private static SmallProvider provider;

    @LocalServerPort
    private int port;

    @Autowired
    private Accounts accounts;

    @Autowired
    private AccountsWithPassword withPassword;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private JdbcClient database;

    private HttpClient browser;

    @DynamicPropertySource
    static void theProvider(DynamicPropertyRegistry properties) throws Exception {
        provider = new SmallProvider();
        properties.add("wallplate.sign-in.provider.issuer", provider::issuer);
        properties.add("wallplate.sign-in.provider.client-id", () -> SmallProvider.CLIENT);
        properties.add("wallplate.sign-in.provider.client-secret", () -> SmallProvider.SECRET);
    }

    @AfterAll
    static void close() {
        provider.close();
    }

    @BeforeEach
    void nobodyHasAnAccount() {
        database.sql("delete from accounts where id <> 0").update();
        database.sql("delete from sign_in_waits").update();
        provider.falsified = Map.of();
        provider.signsWithAnotherKey = false;
        anotherBrowser();
    }

    private void anotherBrowser() {
        browser = HttpClient.newBuilder()
                .cookieHandler(new CookieManager())
                .followRedirects(HttpClient.Redirect.NORMAL)
                .build();
    }

    @Test
    void makesAnAccountWithTheRolesOfTheClaim() throws Exception {
        withPassword.add("M. Keller", Role.ADMINISTRATOR);
        isAtTheProvider("s-1", "Nora Vogt", "staff-drawing", "choir");
        HttpResponse<String> page = signIn();
        assertThat(page.uri().getPath()).isEqualTo("/");
        assertThat(page.body()).contains("Nora Vogt");
        Account made = accounts.named("Nora Vogt").orElseThrow();
        assertThat(made.roles()).containsExactly(Role.TEACHER);
        assertThat(made.hasPassword()).isFalse();
        assertThat(open("/class-sets").uri().getPath()).isEqualTo("/class-sets");

        // The same person again, under another name and with more to do.
        anotherBrowser();
        isAtTheProvider("s-1", "Nora Brandt", "staff-drawing", "heads-all");
        signIn();
        assertThat(accounts.all()).hasSize(2);
        assertThat(accounts.find(made.id()).orElseThrow().roles()).containsExactly(Role.TEACHER, Role.HEAD);
        assertThat(trail.page(Long.MAX_VALUE, "by the provider", 1).get(0).act()).isEqualTo("sign-in");
    }

    @Test
    void letsNobodyInWithoutAStandingHere() throws Exception {
        isAtTheProvider("s-2", "Ben Pupil", "learners", "administrator");
        assertRefused();
        isAtTheProvider("s-2", "Ben Pupil");
        assertRefused();
        assertThat(accounts.all()).isEmpty();
    }

    @Test
    void takesTheStandingAwayWhenTheProviderDoes() throws Exception {
        withPassword.add("M. Keller", Role.ADMINISTRATOR);
        isAtTheProvider("s-3", "Nora Vogt", "staff-drawing");
        signIn();
        anotherBrowser();
        isAtTheProvider("s-3", "Nora Vogt", "retired");
        assertRefused();
    }

    @Test
    void neverJoinsSomebodyToAnAccountByName() throws Exception {
        Account keller = withPassword.add("M. Keller", Role.ADMINISTRATOR);
        isAtTheProvider("s-4", "M. Keller", "staff-drawing");
        assertRefused();
        assertThat(accounts.all()).containsExactly(keller);
        for (String reserved : List.of("demonstration", "", "x".repeat(70))) {
            isAtTheProvider("s-4", reserved, "staff-drawing");
            assertRefused();
        }
    }

    @Test
    void bindsAnAccountOnceItsHolderShowsTheirPasswordAndKeepsItsRoles() throws Exception {
        Account keller = withPassword.add("M. Keller", Role.ADMINISTRATOR);
        send("/sign-in", Map.of("name", "M. Keller", "password", PASSWORD), "/sign-in");
        HttpResponse<String> wrong = send("/account/provider", Map.of("present", "something else"), "/account");
        assertThat(wrong.statusCode()).isEqualTo(422);
        assertThat(wrong.body()).doesNotContain("/oauth2/authorization/school");
        HttpResponse<String> ready = send("/account/provider", Map.of("present", PASSWORD), "/account");
        assertThat(ready.body()).contains("/oauth2/authorization/school");
        isAtTheProvider("s-5", "Somebody", "learners");
        assertThat(signIn().body()).contains("is bound to your account");
        assertThat(open("/accounts").statusCode()).isEqualTo(200);

        anotherBrowser();
        assertThat(signIn().body()).contains("M. Keller");
        assertThat(accounts.find(keller.id()).orElseThrow().roles()).containsExactly(Role.ADMINISTRATOR);
        assertThat(database.sql("select count(*) from provider_identities").query(Integer.class).single()).isOne();

        accounts.add("Another", EnumSet.of(Role.ADMINISTRATOR));
        accounts.setBlocked(keller.id(), true);
        anotherBrowser();
        assertRefused();
    }

    @Test
    void believesNoTokenThatIsNotForThisSignIn() throws Exception {
        isAtTheProvider("s-6", "Nora Vogt", "staff-drawing");
        for (Map<String, Object> falsified : List.<Map<String, Object>>of(
                Map.of("aud", "another program"),
                Map.of("iss", "http://localhost:1"),
                Map.of("nonce", "of another sign-in"),
                Map.of("exp", java.util.Date.from(java.time.Instant.now().minusSeconds(600))))) {
            provider.falsified = falsified;
            assertRefused();
        }
        provider.falsified = Map.of();
        provider.signsWithAnotherKey = true;
        assertRefused();
        provider.signsWithAnotherKey = false;
        // A way back that nobody began here: a code of somebody else's, or none.
        assertThat(open("/login/oauth2/code/school?code=x&state=y").uri().toString()).endsWith("/sign-in?provider=refused");
        assertThat(accounts.all()).isEmpty();
        assertThat(signIn().body()).contains("Nora Vogt");
    }

    @Test
    void asksNoOtherHostUntilSomebodySignsIn() throws Exception {
        assertThat(open("/sign-in").body())
                .contains("href=\"/oauth2/authorization/school\"", "the school")
                .doesNotContain(provider.issuer());
    }

    /** OpenID Connect RP-Initiated Logout 1.0, section 2: the client's id stands for the hint, which is recommended only. */
    @Test
    void offersToSignOutThereTooOnlyToWhoeverCameFromThere() throws Exception {
        withPassword.add("M. Keller", Role.ADMINISTRATOR);
        isAtTheProvider("s-7", "Nora Vogt", "staff-drawing");
        signIn();
        HttpResponse<String> page = send("/sign-out", Map.of(), "/account");
        assertThat(open("/account").uri().getPath()).isEqualTo("/sign-in");
        Matcher there = Pattern.compile("href=\"(" + Pattern.quote(provider.issuer()) + "/end[^\"]*)\"").matcher(page.body());
        assertThat(there.find()).isTrue();
        HttpResponse<String> ended = browser.send(
                HttpRequest.newBuilder(URI.create(there.group(1).replace("&amp;", "&"))).build(),
                HttpResponse.BodyHandlers.ofString());
        assertThat(ended.statusCode()).isEqualTo(200);
        assertThat(ended.body()).isEqualTo("back to " + at("/sign-in"));

        send("/sign-in", Map.of("name", "M. Keller", "password", PASSWORD), "/sign-in");
        assertThat(send("/sign-out", Map.of(), "/account").body()).doesNotContain(provider.issuer());
    }

    private static void isAtTheProvider(String subject, String name, String... groups) {
        Map<String, Object> claims = new LinkedHashMap<>();
        claims.put("sub", subject);
        claims.put("name", name);
        claims.put("groups", List.copyOf(Set.of(groups)));
        provider.person = claims;
    }

    private HttpResponse<String> signIn() throws Exception {
        return open("/oauth2/authorization/school");
    }

    private void assertRefused() throws Exception {
        anotherBrowser();
        HttpResponse<String> page = signIn();
        assertThat(page.uri().toString()).endsWith("/sign-in?provider=refused");
        assertThat(page.body()).contains("does not open an account here");
        assertThat(open("/account").uri().getPath()).isEqualTo("/sign-in");
    }

    private HttpResponse<String> open(String address) throws Exception {
        return browser.send(
                HttpRequest.newBuilder(at(address)).header("Accept", "text/html").build(),
                HttpResponse.BodyHandlers.ofString());
    }

    /** Sends the form of a page with the token that it carries. */
    private HttpResponse<String> send(String address, Map<String, String> fields, String page) throws Exception {
        Matcher token = Pattern.compile("name=\"_csrf\" value=\"([^\"]+)\"").matcher(open(page).body());
        assertThat(token.find()).isTrue();
        StringBuilder body = new StringBuilder("_csrf=").append(URLEncoder.encode(token.group(1), StandardCharsets.UTF_8));
        fields.forEach((name, value) ->
                body.append('&').append(name).append('=').append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
        return browser.send(
                HttpRequest.newBuilder(at(address))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .header("Accept", "text/html")
                        .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private URI at(String address) {
        return URI.create("http://localhost:" + port + address);
    }
}
