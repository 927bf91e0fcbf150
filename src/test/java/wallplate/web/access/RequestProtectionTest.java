package wallplate.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.cookie;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.test.web.servlet.setup.SecurityMockMvcConfigurers;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.context.WebApplicationContext;

/** Requests that no page of this application sent are turned away; every answer tells the browser what it may do. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:protection;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/protection",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class RequestProtectionTest {

    private static final Path TEMPLATES = Path.of("src/main/resources/templates");

    @Autowired
    private WebApplicationContext application;

    /** As a browser does it: the token comes from the page and from its cookie, not from the test library. */
    private MockMvc pages;

    @BeforeEach
    void withoutTheTokensOfTheTestLibrary() {
        pages = MockMvcBuilders.webAppContextSetup(application)
                .apply(SecurityMockMvcConfigurers.springSecurity())
                .build();
    }

    @Test
    void turnsAwayAFormWithoutItsToken() throws Exception {
        pages.perform(post("/check").param("code", "zzz"))
                .andExpect(status().isForbidden())
                .andExpect(content().string(containsString("too old to be sent")));
        pages.perform(withToken(post("/check").param("code", "zzz")).header("X-XSRF-TOKEN", "another"))
                .andExpect(status().isForbidden());
    }

    @Test
    void takesTheTokenOfThePageInAFieldOrInAHeader() throws Exception {
        MvcResult page = pages.perform(get("/check"))
                .andExpect(cookie().httpOnly("XSRF-TOKEN", true))
                .andExpect(cookie().attribute("XSRF-TOKEN", "SameSite", "Strict"))
                .andReturn();
        String html = page.getResponse().getContentAsString();

        pages.perform(withToken(post("/check").param("code", "zzz"))).andExpect(status().isUnprocessableContent());
        pages.perform(post("/check")
                        .cookie(page.getResponse().getCookie("XSRF-TOKEN"))
                        .param("code", "zzz")
                        .header(
                                found("name=\"csrf\"[^>]* data-header=\"([^\"]+)\"", html),
                                found("name=\"csrf\"[^>]* content=\"([^\"]+)\"", html)))
                .andExpect(status().isUnprocessableContent());
    }

    /** W3C Fetch Metadata Request Headers, Sec-Fetch-Site. */
    @Test
    void turnsAwayWhatAnotherSiteSendsEvenWithAToken() throws Exception {
        pages.perform(withToken(post("/check").param("code", "zzz")).header("Sec-Fetch-Site", "cross-site"))
                .andExpect(status().isForbidden());
        pages.perform(withToken(post("/check").param("code", "zzz")).header("Sec-Fetch-Site", "same-origin"))
                .andExpect(status().isUnprocessableContent());
        pages.perform(get("/check").header("Sec-Fetch-Site", "cross-site")).andExpect(status().isOk());
    }

    /** The headers and values that the OWASP Secure Headers Project recommends (from memory); HSTS only where there is TLS. */
    @Test
    void tellsTheBrowserWhatItMayDo() throws Exception {
        pages.perform(get("/tasks"))
                .andExpect(header().string("Content-Security-Policy", not(containsString("unsafe"))))
                .andExpect(header().string("Content-Security-Policy", containsString("frame-ancestors 'none'")))
                .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                .andExpect(header().string("X-Frame-Options", "DENY"))
                .andExpect(header().string("Referrer-Policy", "same-origin"))
                .andExpect(header().string("Permissions-Policy", containsString("camera=()")))
                .andExpect(header().string("Cross-Origin-Opener-Policy", "same-origin"))
                .andExpect(header().string("Cross-Origin-Resource-Policy", "same-origin"))
                .andExpect(header().string("Cache-Control", containsString("no-store")))
                .andExpect(header().doesNotExist("Strict-Transport-Security"));
        pages.perform(get("/tasks").secure(true))
                .andExpect(header().string(
                        "Strict-Transport-Security", allOf(containsString("max-age=31536000"), containsString("includeSubDomains"))));
    }

    /** {@code th:action} puts the token into a form; a plain {@code action} would leave it out. */
    @Test
    void everyFormThatChangesSomethingIsGivenItsToken() throws IOException {
        Pattern form = Pattern.compile("<form\\b(?:[^>\"]|\"[^\"]*\")*>");
        try (Stream<Path> templates = Files.walk(TEMPLATES)) {
            List<String> forms = templates.filter(file -> file.toString().endsWith(".html"))
                    .flatMap(file -> form.matcher(read(file)).results().map(found -> file + ": " + found.group()))
                    .filter(found -> found.contains("method=\"post\""))
                    .toList();
            assertThat(forms).hasSizeGreaterThan(10).allMatch(found -> found.contains("th:action=\""));
        }
    }

    private MockHttpServletRequestBuilder withToken(MockHttpServletRequestBuilder request) throws Exception {
        MockHttpServletResponse page = pages.perform(get("/check")).andReturn().getResponse();
        return request.cookie(page.getCookie("XSRF-TOKEN"))
                .param("_csrf", found("name=\"_csrf\" value=\"([^\"]+)\"", page.getContentAsString()));
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException gone) {
            throw new java.io.UncheckedIOException(gone);
        }
    }

    private static String found(String pattern, String text) {
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        assertThat(matcher.find()).as(pattern).isTrue();
        return matcher.group(1);
    }
}
