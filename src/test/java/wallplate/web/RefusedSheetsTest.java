package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.SheetOwner;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.MatchedBy;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Sheets that cannot be read: whose they are all the same, and what a person can do about a missing scale. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:refused;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/refused",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class RefusedSheetsTest {

    private static final Path SAMPLES = Path.of("sample-scans");
    private static final double PIXELS_PER_MM = 300 / 25.4;

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    private KeptTask task;
    private ClassSet classSet;

    @BeforeEach
    void aClassSet() throws IOException {
        task = tasks.add(((TaskReading.Accepted) TaskFile.read(Files.readString(SAMPLES.resolve("task.yml")))).task());
        classSet = classSets.add(
                "Set",
                "11B",
                List.of(new ClassListEntry("Ada", ""), new ClassListEntry("Bongani", ""), new ClassListEntry("Chiyo", "")),
                task,
                false);
    }

    /** A sheet that was handed in blank carries its printed code all the same. */
    @Test
    void givesARefusedSheetToTheLearnerWhomItsCodeNames() throws Exception {
        byte[] blank = DrawingSheets.of(task.task()).pdf(List.of(new SheetOwner("L2", "Bongani", "11B", "", 1)));

        SheetEntry sheet = handedIn("blank.pdf", blank);

        assertThat(sheet.state()).isEqualTo(SheetState.UNREADABLE);
        assertThat(sheet.matchedBy()).isEqualTo(MatchedBy.CODE);
        assertThat(sheet.label()).isEqualTo("Bongani");
        pages.perform(get("/sheets/" + sheet.id() + "/scale")).andExpect(status().isNotFound());
    }

    @Test
    void readsASheetWithoutScaleOnceAPersonShowsItsBar() throws Exception {
        SheetEntry refused = handedIn("no-bar.png", withoutBar());
        assertThat(refused.state()).isEqualTo(SheetState.UNREADABLE);
        String reason = refused.reason().orElseThrow();
        assertThat(reason).contains("no reference bar");
        String page = "/sheets/" + refused.id();
        pages.perform(get(page)).andExpect(content().string(containsString("Show both ticks of the bar")));
        pages.perform(get(page + "/scale")).andExpect(status().isOk());

        pages.perform(post(page + "/scale")
                        .param("leftX", "30")
                        .param("leftY", "20")
                        .param("rightX", "130")
                        .param("rightY", "20"))
                .andExpect(redirectedUrl(page));

        SheetEntry read = sheets.find(refused.id()).orElseThrow();
        assertThat(read.state()).isEqualTo(SheetState.READ);
        assertThat(read.reason()).isEmpty();
        assertThat(read.available()).isGreaterThan(30);
        assertThat(sheets.marks(read.id()).stream().filter(mark -> mark.reading().measured().isPresent()))
                .as("values measured in the millimetres that were shown")
                .hasSizeGreaterThan(15);
        pages.perform(get(page))
                .andExpect(content().string(containsString("Both ticks of the bar shown")))
                .andExpect(content().string(not(containsString("could not be read"))));

        pages.perform(post(page + "/scale/restore")).andExpect(redirectedUrl(page));

        SheetEntry again = sheets.find(refused.id()).orElseThrow();
        assertThat(again.state()).isEqualTo(SheetState.UNREADABLE);
        assertThat(again.reason()).contains(reason);
        assertThat(again.available()).isZero();
        assertThat(sheets.marks(again.id())).isEmpty();
        pages.perform(get(page + "/scale")).andExpect(status().isOk());
        pages.perform(get("/class-sets/" + classSet.id())).andExpect(status().isOk());
    }

    private SheetEntry handedIn(String name, byte[] content) throws Exception {
        pages.perform(multipart("/class-sets/" + classSet.id() + "/scans")
                        .file(new MockMultipartFile("scans", name, "application/octet-stream", content)))
                .andExpect(status().is3xxRedirection());
        await().atMost(Duration.ofSeconds(60)).until(() -> {
            List<SheetEntry> all = sheets.of(classSet.id());
            return !all.isEmpty() && all.get(0).state().isFinished();
        });
        return sheets.of(classSet.id()).get(0);
    }

    /** A sample scan cut inside the paper's edges, with its bar painted over. */
    private static byte[] withoutBar() throws IOException {
        BufferedImage whole = ImageIO.read(SAMPLES.resolve("01-amara.jpg").toFile());
        int rim = (int) (7 * PIXELS_PER_MM);
        BufferedImage scan = whole.getSubimage(rim, rim, whole.getWidth() - 2 * rim, whole.getHeight() - 2 * rim);
        int low = (int) (45 * PIXELS_PER_MM);
        Graphics2D paper = scan.createGraphics();
        paper.setColor(new Color(scan.getRGB(40, scan.getHeight() / 2)));
        paper.fillRect(0, scan.getHeight() - low, scan.getWidth(), low);
        paper.dispose();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(scan, "png", png);
        return png.toByteArray();
    }
}
