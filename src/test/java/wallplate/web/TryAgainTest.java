package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** Sheets that were set aside, as a teacher meets them. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:try-again;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/try-again",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class TryAgainTest {

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Test
    void offersToTryAgainWhatWasSetAside() throws Exception {
        ClassSet classSet = classSets.add(
                "Set", "11B", List.of(new ClassListEntry("Ada", "")), tasks.add(DrawnSheets.aTask()), false);
        SheetEntry first = setAside(classSet, 1);
        SheetEntry second = setAside(classSet, 2);
        String page = "/class-sets/" + classSet.id();
        pages.perform(get(page))
                .andExpect(content().string(containsString("The store was full.")))
                .andExpect(content().string(containsString("/sheets/" + first.id() + "/try-again")))
                .andExpect(content().string(containsString("Try all 2 sheets that were set aside again")));
        pages.perform(get("/sheets/" + first.id()))
                .andExpect(content().string(containsString("/sheets/" + first.id() + "/try-again")))
                .andExpect(content().string(not(containsString("Scan it again"))));

        pages.perform(post("/sheets/" + first.id() + "/try-again"))
                .andExpect(redirectedUrl(page))
                .andExpect(flash().attribute("done", "The sheet waits to be read again."));

        assertThat(sheets.find(first.id()).orElseThrow().state()).isNotEqualTo(SheetState.FAILED);
        pages.perform(get(page))
                .andExpect(content().string(containsString("/sheets/" + second.id() + "/try-again")))
                .andExpect(content().string(not(containsString("/sheets/" + first.id() + "/try-again"))));
        pages.perform(post(page + "/try-again")).andExpect(flash().attribute("done", "The sheet waits to be read again."));
    }

    /** The same scan would be refused each time. */
    @Test
    void saysWhatToDoInsteadOfTryingAgainWhereTheScanItselfWasRefused() throws Exception {
        ClassSet classSet = classSets.add(
                "Refused", "11C", List.of(new ClassListEntry("Ben", "")), tasks.add(DrawnSheets.aTask()), false);
        SheetEntry refused = aSheet(classSet, 1);
        sheets.refuse(refused.id(), "This page is blank.", "{}");

        pages.perform(get("/class-sets/" + classSet.id()))
                .andExpect(content().string(containsString("This page is blank.")))
                .andExpect(content().string(not(containsString("/try-again"))));
        pages.perform(get("/sheets/" + refused.id()))
                .andExpect(content().string(containsString("Scan it again and hand the new scan in")))
                .andExpect(content().string(not(containsString("/try-again"))));
    }

    @Test
    void saysThatThereIsNoSuchSheet() throws Exception {
        pages.perform(post("/sheets/987654/try-again")).andExpect(status().isNotFound());
        pages.perform(post("/class-sets/987654/try-again")).andExpect(status().isNotFound());
    }

    private SheetEntry setAside(ClassSet classSet, int number) {
        SheetEntry sheet = aSheet(classSet, number);
        sheets.fail(sheet.id(), "The store was full.");
        return sheet;
    }

    private SheetEntry aSheet(ClassSet classSet, int number) {
        long file = files.add(classSet.id(), number + ".png", "%064x".formatted(classSet.id() * 10 + number), 10)
                .orElseThrow()
                .id();
        return sheets.page(file, 1);
    }
}
