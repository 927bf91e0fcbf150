package wallplate.accounts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.startsWith;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import wallplate.audit.AuditTrail;
import wallplate.records.HeldConnections;

/** Signing in through the pages, with sessions and waits in the database and the demonstration not open. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:signing-in;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/signing-in",
            "wallplate.demonstration.enabled=false",
            "wallplate.demonstration.open=false",
            "wallplate.open-pages.most-in-ten-minutes=5"
        })
@AutoConfigureMockMvc
@Import({SigningInTest.Settings.class, HeldConnections.class, AccountsWithPassword.class})
class SigningInTest {

    private static final String PASSWORD = AccountsWithPassword.PASSWORD;
    private static final Moving CLOCK = new Moving();

    @Autowired
    private MockMvc pages;

    @Autowired
    private Accounts accounts;

    @Autowired
    private AccountsWithPassword withPassword;

    @Autowired
    private SignInWaits waits;

    @Autowired
    private OneTimeLinks links;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private JdbcClient database;

    @Autowired
    private HeldConnections connections;

    @TestConfiguration
    static class Settings {
        @Bean
        @Primary
        Clock movedClock() {
            return CLOCK;
        }
    }

    /** The present, moved on by hand. */
    static final class Moving extends Clock {
        private Duration ahead = Duration.ZERO;

        @Override
        public Instant instant() {
            return Instant.now().plus(ahead);
        }

        @Override
        public java.time.ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(java.time.ZoneId zone) {
            return this;
        }
    }

    @BeforeEach
    void nobodyHasAnAccount() {
        database.sql("delete from accounts where id <> 0").update();
        database.sql("delete from one_time_links").update();
        database.sql("delete from sign_in_waits").update();
        CLOCK.ahead = Duration.ZERO;
    }

    @AfterEach
    void noPageTookASecondConnectionWhileItHeldOne() {
        assertThat(connections.takenBesideAnother()).isEmpty();
    }

    @Test
    void asksForSigningInAndComesBackToThePage() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        pages.perform(get("/class-sets?page=2").accept("text/html"))
                .andExpect(redirectedUrl("/sign-in?next=%2Fclass-sets%3Fpage%3D2"));
        pages.perform(get("/class-sets").header("HX-Request", "true"))
                .andExpect(status().isUnauthorized())
                .andExpect(header().string("HX-Redirect", "/sign-in"));
        pages.perform(get("/check")).andExpect(status().isOk());

        ResultActions answer = signIn("m. KELLER", PASSWORD, "/class-sets?page=2");
        Cookie session = answer.andExpect(redirectedUrl("/class-sets?page=2")).andReturn().getResponse().getCookie("SESSION");
        assertThat(session).isNotNull();
        pages.perform(get("/class-sets").cookie(session))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("M. Keller")));
        assertThat(database.sql("select count(*) from spring_session").query(Integer.class).single()).isPositive();
        assertThat(trail.page(Long.MAX_VALUE, "", 1)).singleElement().satisfies(entry -> {
            assertThat(entry.person()).isEqualTo("M. Keller");
            assertThat(entry.act()).isEqualTo("sign-in");
        });
    }

    @Test
    void goesToNoOtherHost() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        for (String elsewhere : Set.of("https://elsewhere.example", "//elsewhere.example", "/\\elsewhere.example")) {
            signIn("M. Keller", PASSWORD, elsewhere).andExpect(redirectedUrl("/"));
        }
    }

    @Test
    void saysTheSameOfAWrongPasswordAndOfAnUnknownName() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        signIn("M. Keller", "wrong", "/")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("do not belong together")));
        signIn("Nobody", "wrong", "/")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("do not belong together")));
    }

    @Test
    void hasWhoeverTriesInVainWaitLongerAndLonger() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        for (int attempt = 0; attempt < 5; attempt++) {
            signIn("M. Keller", "wrong", "/").andExpect(status().isUnprocessableContent());
        }
        signIn("M. Keller", PASSWORD, "/")
                .andExpect(status().isTooManyRequests())
                .andExpect(header().string("Retry-After", "2"));
        CLOCK.ahead = CLOCK.ahead.plusSeconds(3);
        signIn("M. Keller", "wrong", "/").andExpect(status().isUnprocessableContent());
        signIn("M. Keller", PASSWORD, "/").andExpect(header().string("Retry-After", "4"));
        CLOCK.ahead = CLOCK.ahead.plusSeconds(5);
        signIn("M. Keller", PASSWORD, "/").andExpect(redirectedUrl("/"));
        signIn("M. Keller", "wrong", "/").andExpect(status().isUnprocessableContent());
    }

    /** Fifty teachers behind one address, some of whom mistype, and the same on the next day. */
    @Test
    void letsAWholeSchoolSignInFromOneNetwork() throws Exception {
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        for (int day = 0; day < 3; day++) {
            for (int mistyped = 0; mistyped < 200; mistyped++) {
                assertThat(waits.begin(SignInWaits.Key.network("192.0.2.7"))).as("day %d, try %d", day, mistyped).isEmpty();
            }
            signIn(teacher.name(), PASSWORD, "/", "192.0.2.7").andExpect(redirectedUrl("/"));
            CLOCK.ahead = CLOCK.ahead.plusHours(14);
        }
    }

    /** One password tried on every account in turn: the accounts' own waits never begin, the network's do. */
    @Test
    void hasANetworkWaitThatTriesManyAccounts() throws Exception {
        for (int tried = 0; tried <= 300; tried++) {
            assertThat(waits.begin(SignInWaits.Key.network("192.0.2.7"))).as("try %d", tried).isEmpty();
        }
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        signIn(teacher.name(), PASSWORD, "/", "192.0.2.7")
                .andExpect(status().isTooManyRequests())
                .andExpect(header().string("Retry-After", "2"));
        signIn(teacher.name(), PASSWORD, "/", "192.0.2.8").andExpect(redirectedUrl("/"));
    }

    /** OWASP ASVS 4.0.3, 2.2.1: no more than 100 tries in vain an hour on one account. */
    @Test
    void letsFewTriesThroughWithinAnHour() {
        SignInWaits.Key key = SignInWaits.Key.account("somebody");
        int tries = 0;
        for (Duration gone = Duration.ZERO; gone.toHours() < 1; gone = gone.plus(key.waitAfter(tries))) {
            tries++;
        }
        assertThat(tries).isLessThan(30);
    }

    @Test
    void makesTheFirstAdministratorByALinkThatOpensOnce() throws Exception {
        String token = links.makeForFirstAdministrator();
        pages.perform(get("/set-password/" + token))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Make the first administrator")));
        set(token, "Ada Root", "short", "short").andExpect(status().isUnprocessableContent());
        set(token, "Ada Root", "password12345", "password12345")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("easily guessed")));
        Cookie session = set(token, "Ada Root", PASSWORD, PASSWORD)
                .andExpect(redirectedUrl("/"))
                .andReturn()
                .getResponse()
                .getCookie("SESSION");
        pages.perform(get("/accounts").cookie(session)).andExpect(status().isOk());
        pages.perform(get("/class-sets").cookie(session)).andExpect(status().isForbidden());
        set(token, "Another", PASSWORD, PASSWORD).andExpect(status().isNotFound());
        assertThat(database.sql("select count(*) from audit_entries where subject like ?")
                        .param("%" + token + "%")
                        .query(Integer.class)
                        .single())
                .isZero();
    }

    /** OWASP ASVS 4.0.3 (from memory), 2.1.2 and 2.1.3: 128 letters and no more, none of them cut off. */
    @Test
    void takesLongPasswordsWhole() throws Exception {
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        String longest = "gable lantern mosaic thirty ".repeat(5).substring(0, Passwords.LONGEST);
        String token = links.make(teacher.id());
        set(token, "", longest + "x", longest + "x").andExpect(status().isUnprocessableContent());
        set(token, "", longest, longest).andExpect(redirectedUrl("/"));
        signIn("M. Keller", longest.substring(0, Passwords.LONGEST - 1), "/").andExpect(status().isUnprocessableContent());
        signIn("M. Keller", longest, "/").andExpect(redirectedUrl("/"));
    }

    @Test
    void letsNoLinkOpenThatHasRunOutOrWasReplaced() throws Exception {
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        String replaced = links.make(teacher.id());
        String token = links.make(teacher.id());
        pages.perform(get("/set-password/" + replaced)).andExpect(status().isNotFound());
        pages.perform(get("/set-password/" + token)).andExpect(status().isOk());
        CLOCK.ahead = OneTimeLinks.LASTS.plusMinutes(1);
        pages.perform(get("/set-password/" + token))
                .andExpect(status().isNotFound())
                .andExpect(content().string(containsString("has run out")));
    }

    @Test
    void hasTheAdministratorMakeAccountsAndGiveLinks() throws Exception {
        withPassword.add("Ada Root", Role.ADMINISTRATOR);
        Cookie administrator = session("Ada Root");
        pages.perform(post("/accounts").cookie(administrator).param("name", "Ada Root").param("role", "teacher"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("taken")));
        String page = pages.perform(
                        post("/accounts").cookie(administrator).param("name", "B. Lind").param("role", "teacher", "moderator"))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(accounts.named("b. lind").orElseThrow().roles()).containsExactly(Role.TEACHER, Role.MODERATOR);
        Matcher link = Pattern.compile("/set-password/([\\w-]{43})").matcher(page);
        assertThat(link.find()).isTrue();
        set(link.group(1), "", PASSWORD, PASSWORD).andExpect(redirectedUrl("/"));
        signIn("B. Lind", PASSWORD, "/").andExpect(redirectedUrl("/"));
    }

    @Test
    void putsABlockedAccountOutAtOnceAndKeepsTheLastAdministrator() throws Exception {
        Account root = withPassword.add("Ada Root", Role.ADMINISTRATOR);
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        Cookie administrator = session("Ada Root");
        Cookie keller = session("M. Keller");
        pages.perform(get("/class-sets").cookie(keller)).andExpect(status().isOk());
        pages.perform(post("/accounts/" + teacher.id() + "/blocked").cookie(administrator).param("blocked", "true"))
                .andExpect(redirectedUrl("/accounts/" + teacher.id()));
        pages.perform(get("/class-sets").cookie(keller).accept("text/html"))
                .andExpect(header().string("Location", startsWith("/sign-in")));
        signIn("M. Keller", PASSWORD, "/").andExpect(status().isUnprocessableContent());
        pages.perform(post("/accounts/" + root.id() + "/blocked").cookie(administrator).param("blocked", "true"))
                .andExpect(status().isUnprocessableContent());
        pages.perform(post("/accounts/" + root.id() + "/roles").cookie(administrator).param("role", "teacher"))
                .andExpect(status().isUnprocessableContent());
        pages.perform(get("/accounts/" + teacher.id()).cookie(administrator)).andExpect(status().isOk());
    }

    @Test
    void endsOtherSessionsWhenThePasswordChanges() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        Cookie here = session("M. Keller");
        Cookie elsewhere = session("M. Keller");
        String other = "gable lantern mosaic thirty";
        pages.perform(post("/account/password").cookie(here).param("present", "wrong").param("password", other).param("again", other))
                .andExpect(status().isUnprocessableContent());
        Cookie renewed = pages.perform(
                        post("/account/password").cookie(here).param("present", PASSWORD).param("password", other).param("again", other))
                .andExpect(redirectedUrl("/account"))
                .andReturn()
                .getResponse()
                .getCookie("SESSION");
        pages.perform(get("/account").cookie(renewed)).andExpect(status().isOk());
        pages.perform(get("/account").cookie(elsewhere).accept("text/html"))
                .andExpect(header().string("Location", startsWith("/sign-in")));
        pages.perform(post("/sign-out").cookie(renewed)).andExpect(redirectedUrl("/sign-in"));
        pages.perform(get("/account").cookie(renewed).accept("text/html"))
                .andExpect(header().string("Location", startsWith("/sign-in")));
    }

    @Test
    void asksForThePasswordAgainAfterTwelveHours() throws Exception {
        withPassword.add("M. Keller", Role.TEACHER);
        Cookie session = session("M. Keller");
        CLOCK.ahead = Duration.ofHours(13);
        pages.perform(get("/class-sets").cookie(session).accept("text/html"))
                .andExpect(header().string("Location", startsWith("/sign-in")));
    }

    @Test
    void limitsHowOftenOneNetworkSendsCodes() throws Exception {
        for (int time = 0; time < 5; time++) {
            pages.perform(post("/check").param("code", "zzz").with(from("2001:db8:1:2::" + time)))
                    .andExpect(status().isUnprocessableContent());
        }
        pages.perform(post("/check").param("code", "zzz").with(from("2001:db8:1:2:ffff::1")))
                .andExpect(status().isTooManyRequests())
                .andExpect(header().exists("Retry-After"))
                .andExpect(content().string(containsString("That was very often")));
        pages.perform(post("/check").param("code", "zzz").with(from("2001:db8:1:3::1")))
                .andExpect(status().isUnprocessableContent());
        pages.perform(get("/check").with(from("2001:db8:1:2::1"))).andExpect(status().isOk());
    }

    private static RequestPostProcessor from(String address) {
        return request -> {
            request.setRemoteAddr(address);
            return request;
        };
    }

    /** Argon2id by the OWASP Password Storage Cheat Sheet (from memory): 7 MiB, five passes, one lane. */
    @Test
    void keepsPasswordsAsArgon2Only() {
        Account teacher = withPassword.add("M. Keller", Role.TEACHER);
        String hash = accounts.passwordHash(teacher.id()).orElseThrow();
        assertThat(hash).startsWith("{argon2}$argon2id$v=19$m=7168,t=5,p=1$").doesNotContain(PASSWORD);
        assertThat(new Argon2PasswordEncoder(1, 1, 1, 1, 1).matches(PASSWORD, hash.substring("{argon2}".length()))).isTrue();
    }

    @Test
    void hashesAnewWhatWasHashedWithOtherParameters() throws Exception {
        Account teacher = withPassword.add("M. Bauer", Role.TEACHER);
        accounts.setPasswordHash(teacher.id(), "{argon2}" + new Argon2PasswordEncoder(16, 32, 1, 19 * 1024, 2).encode(PASSWORD));

        signIn("M. Bauer", PASSWORD, "/").andExpect(redirectedUrl("/"));

        assertThat(accounts.passwordHash(teacher.id()).orElseThrow()).startsWith("{argon2}$argon2id$v=19$m=7168,t=5,p=1$");
        signIn("M. Bauer", PASSWORD, "/").andExpect(redirectedUrl("/"));
    }

    private Cookie session(String name) throws Exception {
        return signIn(name, PASSWORD, "/").andExpect(redirectedUrl("/")).andReturn().getResponse().getCookie("SESSION");
    }

    private ResultActions signIn(String name, String password, String next) throws Exception {
        return signIn(name, password, next, "127.0.0.1");
    }

    private ResultActions signIn(String name, String password, String next, String address) throws Exception {
        return pages.perform(post("/sign-in")
                .param("name", name)
                .param("password", password)
                .param("next", next)
                .with(from(address)));
    }

    private ResultActions set(String token, String name, String password, String again) throws Exception {
        return pages.perform(post("/set-password")
                .param("token", token)
                .param("name", name)
                .param("password", password)
                .param("again", again));
    }
}
