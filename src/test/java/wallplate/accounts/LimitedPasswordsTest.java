package wallplate.accounts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.audit.AuditTrail;

/** Passwords for administrators only, beside a provider that is away. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:limited;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/limited",
            "wallplate.demonstration.enabled=false",
            "wallplate.sign-in.provider.issuer=http://localhost:1",
            "wallplate.sign-in.provider.client-id=wallplate",
            "wallplate.sign-in.provider.name=the school",
            "wallplate.sign-in.provider.passwords-for=administrators"
        })
@AutoConfigureMockMvc
@Import(AccountsWithPassword.class)
class LimitedPasswordsTest {

    private static final String PASSWORD = AccountsWithPassword.PASSWORD;

    @Autowired
    private MockMvc pages;

    @Autowired
    private Accounts accounts;

    @Autowired
    private AccountsWithPassword withPassword;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private JdbcClient database;

    @BeforeEach
    void twoAccounts() {
        database.sql("delete from accounts where id <> 0").update();
        database.sql("delete from sign_in_waits").update();
        withPassword.add("M. Keller", Role.ADMINISTRATOR);
        withPassword.add("A. Brandt", Role.TEACHER);
    }

    @Test
    void letsAnAdministratorInWhileTheProviderIsAway() throws Exception {
        assertThat(signIn("M. Keller", PASSWORD).getRedirectedUrl()).isEqualTo("/");
    }

    @Test
    void answersTheRightPasswordOfAnybodyElseLikeAWrongOne() throws Exception {
        MockHttpServletResponse right = signIn("A. Brandt", PASSWORD);
        MockHttpServletResponse wrong = signIn("A. Brandt", "something else entirely");
        assertThat(right.getStatus()).isEqualTo(422);
        assertThat(right.getContentAsString()).contains("not an administrator");
        assertThat(fault(right)).isEqualTo(fault(wrong));
        assertThat(trail.page(Long.MAX_VALUE, "sign-in-refused", 5)).hasSizeGreaterThanOrEqualTo(2);
        assertThat(accounts.named("A. Brandt").orElseThrow().signedInAt()).isEmpty();
    }

    @Test
    void saysSoBeforehandAndShowsTheWayIn() throws Exception {
        assertThat(page("/sign-in")).contains("only administrators sign in here", "/oauth2/authorization/school");
        // Where the provider does not answer, the page is there all the same.
        assertThat(page("/sign-in?provider=left")).contains("You are signed out here").doesNotContain("http://localhost:1");
    }

    private static String fault(MockHttpServletResponse answer) throws Exception {
        return answer.getContentAsString().replaceAll("(?s).*id=\"fault\"[^>]*>([^<]*)<.*", "$1");
    }

    private MockHttpServletResponse signIn(String name, String password) throws Exception {
        return pages.perform(post("/sign-in").param("name", name).param("password", password)).andReturn().getResponse();
    }

    private String page(String address) throws Exception {
        return pages.perform(get(address).accept("text/html")).andReturn().getResponse().getContentAsString();
    }
}
