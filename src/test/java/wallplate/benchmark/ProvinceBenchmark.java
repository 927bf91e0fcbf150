package wallplate.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.asyncDispatch;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcPrint;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.util.FileSystemUtils;
import wallplate.accounts.Role;
import wallplate.handouts.PreparedFile;
import wallplate.handouts.PreparedFile.Kind;
import wallplate.handouts.PreparedFiles;
import wallplate.jobs.HandoutQueue;
import wallplate.records.PostgresServer;
import wallplate.web.access.SignedIn;
import wallplate.web.access.TableOfAddresses;

/**
 * How long every page and export takes over a province's records: {@code mvn -Dtest=ProvinceBenchmark test}, on PostgreSQL;
 * with {@code -Dwallplate.database=h2} on H2 in a file.
 *
 * <p>The list of pages is the application's own table of addresses: a page that is neither measured nor named as left out fails. Pages
 * are asked for by somebody who has every role, and lists once more by a teacher whose a few of the records are; looking up who that is is not in the figures. Each page has 500 ms at the 95th percentile, of processor time and on the clock. Time that PostgreSQL takes is seen on the clock only.
 */
@SpringBootTest(
        properties = {
            "wallplate.scans=target/test-data/province",
            "wallplate.demonstration.enabled=false",
            "wallplate.retention.keep.scans=P10Y",
            "wallplate.retention.keep.class-sets=P10Y"
        })
@AutoConfigureMockMvc(print = MockMvcPrint.NONE)
@Import(ProvinceData.class)
class ProvinceBenchmark {

    private static final int WARMING = Integer.getInteger("wallplate.warming", 10);
    private static final int TIMES = Integer.getInteger("wallplate.times", 20);
    private static final double MOST_MS = 500;
    private static final long LONGEST_MS = 120_000;

    /** Of whoever asks for the pages: all roles, so that every page is open. */
    private static final long ACCOUNT = ProvinceData.FIRST_ID;

    /** Asked for by a teacher with no other role, so that lists are narrowed to what is his or hers. */
    private static final String OWN = " (one teacher's)";

    /** What is sent when something else was asked for in vain. */
    private static final Set<String> LEFT_OUT = Set.of("/error");

    /** Stays open by its nature: measured is the time to its first event. */
    private static final String STREAM = "/class-sets/{id}/progress";

    @Autowired
    private MockMvc pages;

    @Autowired
    private ProvinceData data;

    @Autowired
    private HandoutQueue queue;

    @Autowired
    private PreparedFiles files;

    @Autowired
    private JdbcTemplate database;

    private record Times(String page, double median, double p95, double cpuP95, int bytes) {

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%-45s median %7.1f ms   p95 %7.1f ms   processor p95 %7.1f ms %9d bytes",
                    page, median, p95, cpuP95, bytes);
        }
    }

    @DynamicPropertySource
    static void database(DynamicPropertyRegistry properties) throws IOException {
        if (System.getProperty("wallplate.database", "postgres").equals("h2")) {
            FileSystemUtils.deleteRecursively(Path.of("target/test-data/province-h2"));
            properties.add(
                    "spring.datasource.url",
                    () -> "jdbc:h2:file:./target/test-data/province-h2/wallplate;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH");
        } else {
            PostgresServer.use(properties, "province");
        }
    }

    @Test
    void everyPageAndExportOverAProvince() throws Exception {
        ProvinceData.Places places = data.fill();
        System.out.printf(
                "learners %d, class sets %d, sheets %d, marked criteria %d%n",
                count("learners"), count("class_sets"), count("sheets"), count("marks"));
        prepare(places.setId(), Kind.PDF);
        prepare(places.setId(), Kind.ZIP);
        prepare(places.learner(), Kind.EVERYTHING);
        Map<String, String> measured = addresses(places);
        assertThat(TableOfAddresses.asked()).as("every address is measured or named as left out").isEqualTo(both(measured.keySet()));
        List<Times> all = new ArrayList<>();
        for (Map.Entry<String, String> page : measured.entrySet()) {
            all.add(measured(page.getKey(), page.getValue()));
            System.out.println(all.get(all.size() - 1));
        }
        assertThat(all).allSatisfy(times -> {
            assertThat(times.cpuP95()).as(times.page()).isLessThan(MOST_MS);
            assertThat(times.p95()).as(times.page()).isLessThan(MOST_MS);
        });
    }

    /** Files that are prepared beforehand are measured as they are saved; how long the preparing takes is said. */
    private void prepare(long subject, Kind kind) {
        long from = System.nanoTime();
        queue.prepare(subject, kind, Locale.ENGLISH);
        await().atMost(Duration.ofMillis(LONGEST_MS)).until(() -> files.find(subject, kind, Locale.ENGLISH)
                .filter(PreparedFile::isReady)
                .isPresent());
        System.out.printf(Locale.ROOT, "preparing %s: %.1f s%n", kind, (System.nanoTime() - from) / 1e9);
    }

    /** Without what stands behind an address in brackets, where it is asked for in several ways. */
    private static Set<String> both(Set<String> measured) {
        Set<String> both = new TreeSet<>(LEFT_OUT);
        measured.forEach(page -> both.add(page.replaceFirst(" \\(.*\\)$", "")));
        return both;
    }

    private long count(String table) {
        return database.queryForObject("select count(*) from " + table, Long.class);
    }

    private static Map<String, String> addresses(ProvinceData.Places at) {
        Map<String, String> pages = new LinkedHashMap<>();
        for (String pattern : List.of("/", "/today/standing", "/help", "/audit", "/privacy", "/class-sets", "/class-sets/new", "/classes",
                "/classes/new", "/mark-sheets", "/tasks", "/tasks/new", "/tasks/import", "/check", "/feedback",
                "/sign-in", "/account", "/accounts", "/accounts/new", "/handover", "/wallplate.svg")) {
            pages.put(pattern, pattern);
        }
        for (String pattern : List.of("/", "/today/standing", "/class-sets", "/classes", "/mark-sheets")) {
            pages.put(pattern + OWN, pattern);
        }
        pages.put("/class-sets/{id}" + OWN, "/class-sets/" + at.setId());
        pages.put("/tasks/{id}" + OWN, "/tasks/" + at.taskId());
        pages.put("/learners/{id}" + OWN, "/learners/" + at.learner());
        pages.put("/css/**", "/css/wallplate.css");
        pages.put("/js/**", "/js/viewer.js");
        pages.put("/fonts/**", "/fonts/barlow-latin-400-normal.woff2");
        pages.put("/webjars/**", "/webjars/htmx.org/2.0.8/dist/htmx.min.js");
        pages.put("/help/*", "/help/feedback.png");
        pages.put("/accounts/{id}", "/accounts/" + at.account());
        pages.put("/set-password/{token}", "/set-password/" + at.passwordLink());
        pages.put("/audit (seldom words)", "/audit?containing=sheets/777/");
        pages.put("/audit (words that nobody wrote)", "/audit?containing=zzz");
        for (String last : List.of("", "/standing", "/learners", "/check", "/teach-again", "/items", "/moderation", "/guideline",
                "/feedback-codes", "/feedback-files", "/feedback.pdf", "/feedback.zip", "/mark-sheet.csv")) {
            pages.put("/class-sets/{id}" + last, "/class-sets/" + at.setId() + last);
        }
        pages.put(STREAM, "/class-sets/" + at.setId() + "/progress");
        pages.put("/class-sets/{id}/scans/parts", "/class-sets/" + at.setId() + "/scans/parts?upload=" + "a".repeat(32));
        pages.put(
                "/class-sets/{id}/teach-again/{part}/sheets.pdf",
                "/class-sets/" + at.setId() + "/teach-again/" + at.practised() + "/sheets.pdf");
        pages.put("/class-sets/{id}/across", "/class-sets/" + at.setId() + "/across?criterion=" + at.criterion());
        for (String last : List.of("", "/list.csv", "/list.xlsx")) {
            pages.put("/classes/{id}" + last, "/classes/" + at.classId() + last);
        }
        for (String last : List.of("", "/growth", "/erase", "/everything", "/everything.zip")) {
            pages.put("/learners/{id}" + last, "/learners/" + at.learner() + last);
        }
        pages.put("/mark-sheets/new", "/mark-sheets/new?class=" + at.classId());
        pages.put("/mark-sheets/{id}", "/mark-sheets/" + at.draft());
        for (String ending : List.of("csv", "xlsx", "pdf")) {
            pages.put("/mark-sheets/{id}/mark-sheet." + ending, "/mark-sheets/" + at.submitted() + "/mark-sheet." + ending);
        }
        for (String ending : List.of("csv", "xlsx")) {
            pages.put(
                    "/mark-sheets/term." + ending,
                    "/mark-sheets/term." + ending + "?year=" + at.schoolYear() + "&term=" + at.term());
        }
        pages.put("/moderations/{id}", "/moderations/" + at.moderation());
        pages.put("/moderations/{id}/sheets/{place}", "/moderations/" + at.moderation() + "/sheets/7");
        for (String last : List.of("", "/edit", "/copy", "/guide", "/guideline", "/guideline/usual", "/task.yml", "/model-answer.svg",
                "/model-answer.pdf", "/model-answer.dxf", "/guide.pdf")) {
            pages.put("/tasks/{id}" + last, "/tasks/" + at.taskId() + last);
        }
        pages.put("/tasks/{id}/sheets.pdf", "/tasks/" + at.taskId() + "/sheets.pdf?classSet=" + at.setId());
        for (String last : List.of("", "/result.json", "/feedback.pdf", "/scale")) {
            pages.put("/sheets/{id}" + last, "/sheets/" + at.sheetId() + last);
        }
        String lines = "/lines/{criterion}";
        pages.put("/sheets/{id}" + lines, "/sheets/" + at.sheetId() + "/lines/" + at.criterion());
        pages.put("/sheets/{id}" + lines + "/choices", "/sheets/" + at.sheetId() + "/lines/" + at.criterion() + "/choices");
        for (String last : List.of("", "/guide")) {
            pages.put("/check/{code}" + last, "/check/" + at.learnerCode() + last);
        }
        pages.put("/check/{code}/results/{token}", "/check/" + at.learnerCode() + "/results/" + at.checkToken());
        for (String last : List.of("", "/page.png", "/screen.png", "/feedback.pdf")) {
            pages.put("/feedback/{code}" + last, "/feedback/" + at.code() + last);
        }
        String picture = "/pictures/{name:[0-9a-f]{64}}";
        pages.put(picture + ".png", "/pictures/" + at.picture() + ".png");
        pages.put(picture + "/tiles/{column:\\d}-{row:\\d}.png", "/pictures/" + at.picture() + "/tiles/2-1.png");
        pages.put(picture + "/part.png", "/pictures/" + at.picture() + "/part.png?left=700&top=500&width=640&height=480");
        return pages;
    }

    private Times measured(String page, String address) throws Exception {
        var threads = ManagementFactory.getThreadMXBean();
        Role[] roles = page.endsWith(OWN) ? new Role[] {Role.TEACHER} : Role.values();
        double[] wall = new double[TIMES];
        double[] cpu = new double[TIMES];
        int bytes = 0;
        for (int time = -WARMING; time < TIMES; time++) {
            long cpuFrom = threads.getCurrentThreadCpuTime();
            long from = System.nanoTime();
            MvcResult result = pages.perform(get(address).with(SignedIn.as(ACCOUNT, roles))).andReturn();
            if (result.getRequest().isAsyncStarted() && !page.equals(STREAM)) {
                result.getAsyncResult(LONGEST_MS);
                result = pages.perform(asyncDispatch(result)).andReturn();
            }
            assertThat(result.getResponse().getStatus()).as(page + " " + address).isIn(200, 302);
            bytes = result.getResponse().getContentAsByteArray().length;
            if (time >= 0) {
                wall[time] = (System.nanoTime() - from) / 1e6;
                cpu[time] = (threads.getCurrentThreadCpuTime() - cpuFrom) / 1e6;
            }
        }
        return new Times(page, percentile(wall, 0.5), percentile(wall, 0.95), percentile(cpu, 0.95), bytes);
    }

    private static double percentile(double[] values, double part) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.ceil(part * sorted.length) - 1];
    }
}
