package wallplate.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.contains;
import static org.mockito.ArgumentMatchers.eq;
import static org.mockito.Mockito.doThrow;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.context.bean.override.mockito.MockitoSpyBean;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.classes.Classes;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanFiles;
import wallplate.records.Tasks;
import wallplate.web.DecidedSets;
import wallplate.web.DrawnSheets;

/** A change and its entry in the trail are kept together or not at all. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:audit-step;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/audit-step",
            "wallplate.demonstration.enabled=false",
            "wallplate.role=all"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class AuditWithTheChangeTest {

    private static final AtomicInteger SEED = new AtomicInteger();

    @MockitoSpyBean
    private AuditTrail trail;

    @Autowired
    private MockMvc pages;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Classes classes;

    @Autowired
    private ScanFiles files;

    @Autowired
    private DataSource source;

    private ClassSet set;
    private SchoolClass schoolClass;

    @BeforeEach
    void aSetAndAClass() {
        int seed = SEED.incrementAndGet();
        set = decided.aSet(tasks.add(DrawnSheets.aTask()), 2, seed);
        schoolClass = classes.add("class " + seed, new SchoolYear("2026/27")).orElseThrow();
    }

    @Test
    void takesAChangeBackWhereItsEntryCannotBeWritten() throws Exception {
        doThrow(new IllegalStateException("no room in the trail")).when(trail).append(any(), contains("release"), any());

        pages.perform(post("/class-sets/" + set.id() + "/release")).andExpect(status().isInternalServerError());

        assertThat(classSets.find(set.id()).orElseThrow().releasedAt()).isEmpty();
    }

    @Test
    void keepsAChangeWithItsEntry() throws Exception {
        pages.perform(post("/class-sets/" + set.id() + "/release")).andExpect(status().is3xxRedirection());

        assertThat(classSets.find(set.id()).orElseThrow().releasedAt()).isPresent();
        assertThat(last().subject()).isEqualTo("/class-sets/" + set.id() + "/release");
    }

    @Test
    void saysHowManyLearnersAListBroughtInFrontOfTheRequest() throws Exception {
        pages.perform(post("/classes/" + schoolClass.id() + "/list").param("list", "Ada Nkosi,1\nBo Lind,2"))
                .andExpect(status().is3xxRedirection());

        assertThat(trail.page(Long.MAX_VALUE, "", 2))
                .extracting(AuditEntry::act)
                .containsExactly("POST /classes/{id}/list", "list-taken 2 0 0");
        assertThat(trail.page(Long.MAX_VALUE, "nkosi", 5)).as("no names in the trail").isEmpty();
        pages.perform(get("/audit"))
                .andExpect(content().string(Matchers.containsString(
                        "took a class list in (2 new, 0 changed, 0 as before): /classes/" + schoolClass.id())));
        pages.perform(get("/audit").locale(java.util.Locale.GERMAN))
                .andExpect(content().string(Matchers.containsString("eine Klassenliste übernommen (2 neu")));
    }

    @Test
    void keepsNothingOfARefusedRequest() throws Exception {
        long before = last().number();

        pages.perform(post("/classes/" + schoolClass.id() + "/list").param("list", "Ada Nkosi,1\n,2"))
                .andExpect(status().isUnprocessableContent());

        assertThat(last().number()).isEqualTo(before);
        assertThat(classes.enrolments(schoolClass.id())).isEmpty();
    }

    @Test
    void keepsEachFileOfAnUploadWithItsEntry() throws Exception {
        byte[] scan = Files.readAllBytes(Path.of("sample-scans/task.yml"));
        byte[] png = new byte[scan.length + 8];
        System.arraycopy(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10}, 0, png, 0, 8);
        MockMultipartFile file = new MockMultipartFile("scans", "one.png", "image/png", png);
        int there = files.of(set.id()).size();
        doThrow(new IllegalStateException("no room in the trail")).when(trail).append(any(), eq("scan-taken"), any());
        pages.perform(multipart("/class-sets/" + set.id() + "/scans").file(file))
                .andExpect(status().isInternalServerError());
        assertThat(files.of(set.id())).hasSize(there);

        org.mockito.Mockito.reset(trail);
        pages.perform(multipart("/class-sets/" + set.id() + "/scans").file(file)).andExpect(status().is3xxRedirection());

        assertThat(files.of(set.id())).hasSize(there + 1);
        assertThat(trail.page(Long.MAX_VALUE, "scan-taken", 1).get(0).subject())
                .isEqualTo("/class-sets/" + set.id() + "/files/" + files.of(set.id()).get(there).id());
    }

    @Test
    void leavesTheChainUnbroken() throws Exception {
        for (int time = 0; time < 3; time++) {
            pages.perform(post("/class-sets/" + set.id() + "/release"));
            pages.perform(post("/class-sets/999/release")).andExpect(status().isNotFound());
        }
        try (var connection = source.getConnection()) {
            assertThat(AuditCheck.of(connection, Optional.empty())).isInstanceOf(AuditCheck.Sound.class);
        } catch (SQLException broken) {
            throw new AssertionError(broken);
        }
    }

    private AuditEntry last() {
        return trail.page(Long.MAX_VALUE, "", 1).stream()
                .findFirst()
                .orElse(new AuditEntry(0, java.time.Instant.EPOCH, "", "", "", "", ""));
    }
}
