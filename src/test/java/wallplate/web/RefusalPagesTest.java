package wallplate.web;

import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** What a reader sees where the program refuses: words, in the language of the page where it did. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:refusals;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/refusals",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class RefusalPagesTest {

    @Autowired
    private MockMvc pages;

    @ParameterizedTest
    @CsvSource({
        "400, This cannot be done",
        "405, This cannot be done",
        "403, This is not open to you",
        "413, That is too much at once",
        "422, Something is missing",
        "500, The program failed here",
        "503, This cannot be done"
    })
    void saysInWordsWhatIsRefused(int status, String title) throws Exception {
        pages.perform(refused(status, "/mark-sheets/new"))
                .andExpect(status().is(status))
                .andExpect(content().string(allOf(containsString("<h1>" + title + "</h1>"), not(containsString("??")))));
    }

    @Test
    void saysSoInTheLanguageOfThePage() throws Exception {
        pages.perform(refused(400, "/check/ABCDEF").cookie(new Cookie("language", "de")))
                .andExpect(content().string(allOf(
                        containsString("Das geht nicht"),
                        containsString("Zurück, wo ich war"),
                        containsString("name=\"back\" value=\"/check/ABCDEF\""))));
    }

    @Test
    void leavesNoEnglishOnAGermanPageThatIsNotThere() throws Exception {
        pages.perform(get("/check/ABCDEF").cookie(new Cookie("language", "de")))
                .andExpect(status().isNotFound())
                .andExpect(content().string(allOf(
                        containsString("Keine Aufgabe hat dieses Kennwort"),
                        containsString("Mit dem Browser geht es dorthin zurück"),
                        not(containsString("What you typed")))));
    }

    /** As the server does it, where a page has refused a request to another address. */
    private static MockHttpServletRequestBuilder refused(int status, String address) {
        return get("/error")
                .accept(MediaType.TEXT_HTML)
                .requestAttr(RequestDispatcher.ERROR_STATUS_CODE, status)
                .requestAttr(RequestDispatcher.ERROR_REQUEST_URI, address);
    }
}
