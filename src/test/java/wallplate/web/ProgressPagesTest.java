package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.request;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FileState;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** A class set while its sheets are read: what the page hears of it, stopping and going on. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:progress;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/progress",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(KeptSheets.class)
class ProgressPagesTest {

    private static final Duration PATIENCE = Duration.ofSeconds(30);

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

    @Autowired
    private KeptSheets kept;

    @Autowired
    private JdbcClient database;

    private ClassSet classSet;
    private String page;

    /** Files that wait and that nobody queued look lost: who looks for such when the program starts has to be done with it. */
    @BeforeEach
    void aClassSet() {
        await().atMost(PATIENCE)
                .until(() -> database.sql("select count(*) from scheduled_tasks where task_name = 'find-lost-files' and last_success is not null")
                                .query(Integer.class)
                                .single()
                        == 1);
        classSet = classSets.add("Set", "11B", List.of(), tasks.add(DrawnSheets.aTask()), false);
        page = "/class-sets/" + classSet.id();
    }

    @Test
    void tellsAnOpenPageEachTimeTheStandingChanges() throws Exception {
        List<SheetEntry> waiting = handedIn(3);
        MvcResult stream = pages.perform(get(page + "/progress"))
                .andExpect(request().asyncStarted())
                .andReturn();
        hears(stream, "0/3");

        sheets.beginReading(waiting.get(0).id());
        sheets.refuse(waiting.get(0).id(), "no scan", "{}");
        hears(stream, "1/3");
        sheets.refuse(waiting.get(1).id(), "no scan", "{}");
        sheets.refuse(waiting.get(2).id(), "no scan", "{}");
        hears(stream, "3/3");

        assertThat(stream.getResponse().getContentType()).startsWith("text/event-stream");
    }

    @Test
    void saysHowFarTheReadingIsAndHowLongItWillTake() throws Exception {
        List<SheetEntry> waiting = handedIn(6);
        pages.perform(get(page))
                .andExpect(content().string(containsString("0 of 6 sheets read")))
                .andExpect(content().string(containsString("data-progress=\"" + page + "/progress\"")))
                .andExpect(content().string(not(containsString("left</span>"))));

        for (SheetEntry sheet : waiting.subList(0, 4)) {
            sheets.refuse(sheet.id(), "no scan", "{}");
        }

        pages.perform(get(page + "/standing"))
                .andExpect(content().string(containsString("4 of 6 sheets read")))
                .andExpect(content().string(containsString(", less than a minute left")));
        sheets.refuse(waiting.get(4).id(), "no scan", "{}");
        sheets.refuse(waiting.get(5).id(), "no scan", "{}");
        pages.perform(get(page + "/standing")).andExpect(content().string(not(containsString("data-progress="))));
    }

    @Test
    void stopsTheReadingAndGoesOnWithWhatIsLeft() throws Exception {
        List<SheetEntry> waiting = handedIn(3);
        sheets.refuse(waiting.get(0).id(), "read before", "{}");
        files.begin(files.of(classSet.id()).get(0).id());
        files.finish(files.of(classSet.id()).get(0).id());

        pages.perform(post(page + "/stop")).andExpect(redirectedUrl(page));

        assertThat(files.of(classSet.id()))
                .extracting(ScanFileEntry::state)
                .containsExactly(FileState.DONE, FileState.STOPPED, FileState.STOPPED);
        pages.perform(get(page))
                .andExpect(content().string(containsString("The reading was stopped. What was read so far is kept.")))
                .andExpect(content().string(containsString("action=\"" + page + "/go-on\"")));

        pages.perform(post(page + "/go-on")).andExpect(redirectedUrl(page));

        await().atMost(PATIENCE)
                .until(() -> sheets.of(classSet.id()).stream().allMatch(sheet -> sheet.state().isFinished()));
        assertThat(sheets.find(waiting.get(0).id()).orElseThrow().reason()).contains("read before");
        pages.perform(get(page)).andExpect(status().isOk()).andExpect(content().string(not(containsString("was stopped"))));
    }

    private static void hears(MvcResult stream, String standing) {
        await().atMost(PATIENCE).until(() -> {
            String heard = stream.getResponse().getContentAsString();
            return heard.contains("event:standing") && heard.contains("data:" + standing);
        });
    }

    /** Files that wait, each of one sheet, which nobody queued. */
    private List<SheetEntry> handedIn(int number) {
        List<SheetEntry> waiting = IntStream.rangeClosed(1, number)
                .mapToObj(index -> kept.waiting(classSet, index + ".png"))
                .toList();
        assertThat(waiting).extracting(SheetEntry::state).containsOnly(SheetState.WAITING);
        return waiting;
    }
}
