package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import java.io.ByteArrayInputStream;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcPrint;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.jobs.SelfCheckQueue;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/**
 * A day and a half by a clock that is moved on: sheets are read, learners check, files arrive in parts and are broken off, pages are looked at. What
 * the process holds after the last hour is hardly more than a day before: heap after a collection, threads, jobs,
 * learners' checks.
 *
 * <p>Requests are not kept for printing, as tests of pages otherwise do: their lines would grow by four
 * megabytes an hour. It takes some minutes and is asked for: {@code -Dwallplate.soak=true}.
 */
@EnabledIfSystemProperty(named = "wallplate.soak", matches = "true")
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:file:./target/test-data/soak/wallplate;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/soak/scans",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc(print = MockMvcPrint.NONE)
@Import(HandIn.class)
class SoakIT {

    private static final int HOURS = 36;
    /** By then each of the twelve drawings has been looked at, so that caches of pages have what they hold for good, and everything has been compiled. */
    private static final int SETTLED = 12;
    private static final int PAGES_AN_HOUR = 60;
    private static final int RECURRING = 3;
    private static final long HEAP_NOISE_BYTES = 12_000_000;

    /** The queue itself goes by the machine's clock: a day that lies behind it leaves every job due at once. */
    private static final AtomicReference<Instant> NOW =
            new AtomicReference<>(Instant.now().minus(Duration.ofHours(HOURS + 1)));

    @TestConfiguration
    static class Time {

        @Bean
        @Primary
        Clock movedOn() {
            return ((InstantSource) () -> NOW.get()).withZone(ZoneOffset.UTC);
        }
    }

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private HandIn handIn;

    @Autowired
    private SelfCheckQueue selfChecks;

    @Autowired
    private JdbcClient database;

    /** What the process holds. */
    private record Held(long heapBytes, int threads, long jobs, long checks) {}

    @Test
    void holdsNoMoreAfterADayThanAfterAMorning() throws Exception {
        SampleScans scans = SampleScans.read();
        KeptTask task = tasks.add(SampleScans.task());
        ClassSet set = classSets.add("The day's set", "class", List.of(), task, false);
        List<Held> hours = new ArrayList<>();
        for (int hour = 0; hour < HOURS; hour++) {
            hour(scans, task, set, hour);
            hours.add(held());
            System.out.println("hour " + (hour + 1) + ": " + hours.get(hour));
        }
        Held settled = hours.get(SETTLED - 1);
        Held last = hours.get(HOURS - 1);
        assertThat(last.heapBytes()).isLessThan(settled.heapBytes() + HEAP_NOISE_BYTES);
        assertThat(last.threads()).isLessThanOrEqualTo(settled.threads() + 2);
        assertThat(last.jobs()).isEqualTo(settled.jobs());
        assertThat(last.checks()).isLessThanOrEqualTo(2);
    }

    private void hour(SampleScans scans, KeptTask task, ClassSet set, int hour) throws Exception {
        handIn.scan(set, "sheet-" + hour + ".jpg", scans.scan(hour));
        selfChecks.add(task, "en", Map.of(), new ByteArrayInputStream(scans.scan(1000 + hour))).orElseThrow();
        breakAnUploadOff(set, scans.scan(2000 + hour), hour);
        for (int page = 0; page < PAGES_AN_HOUR; page++) {
            pages.perform(get("/class-sets/" + set.id()));
            pages.perform(get("/"));
            pages.perform(get("/check/" + task.learnerCode()));
            NOW.updateAndGet(before -> before.plus(Duration.ofMinutes(1)));
        }
        Instant latest = Instant.now().plusSeconds(240);
        while (waiting() > 0 && Instant.now().isBefore(latest)) {
            Thread.sleep(100);
        }
        assertThat(waiting()).isZero();
        doTheJobsOfTheHour();
        SheetEntry sheet = sheets.of(set.id()).get(hour);
        pages.perform(get("/sheets/" + sheet.id()));
        pages.perform(get("/sheets/" + sheet.id() + "/feedback.pdf"));
        if (sheet.pagePicture().isPresent()) {
            pages.perform(get("/pictures/" + sheet.pagePicture().get() + "/tiles/0-0.png"));
        }
    }

    /** The queue goes by the machine's own clock: its recurring jobs are made due by hand. */
    private void doTheJobsOfTheHour() throws InterruptedException {
        long before = lastSuccesses();
        database.sql(
                        """
                        update scheduled_tasks set execution_time = timestamp with time zone '2020-01-01 00:00:00+00'
                        where task_name in ('forget-self-checks', 'sweep-store', 'find-lost-files') and not picked""")
                .update();
        Instant latest = Instant.now().plusSeconds(20);
        while (lastSuccesses() < before + RECURRING && Instant.now().isBefore(latest)) {
            Thread.sleep(50);
        }
        assertThat(lastSuccesses()).isGreaterThanOrEqualTo(before + RECURRING);
    }

    /** Each run raises the version of its row. */
    private long lastSuccesses() {
        return database.sql(
                        """
                        select sum(version) from scheduled_tasks
                        where task_name in ('forget-self-checks', 'sweep-store', 'find-lost-files') and not picked""")
                .query(Long.class)
                .optional()
                .orElse(0L);
    }

    private void breakAnUploadOff(ClassSet set, byte[] content, int hour) throws Exception {
        pages.perform(multipart("/class-sets/" + set.id() + "/scans/parts")
                .file(new MockMultipartFile("part", "part", null, java.util.Arrays.copyOf(content, 100_000)))
                .param("upload", "%032x".formatted(hour))
                .param("name", "broken-off.jpg")
                .param("size", Integer.toString(content.length))
                .param("offset", "0"));
    }

    private long waiting() {
        return database.sql(
                        """
                        select count(*) from scheduled_tasks where task_name in ('read-file', 'read-sheet', 'read-self-check')""")
                .query(Long.class)
                .single();
    }

    private Held held() throws InterruptedException {
        long heap = Long.MAX_VALUE;
        for (int time = 0; time < 3; time++) {
            System.gc();
            Thread.sleep(100);
            heap = Math.min(heap, Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory());
        }
        return new Held(
                heap,
                Thread.activeCount(),
                database.sql("select count(*) from scheduled_tasks").query(Long.class).single(),
                database.sql("select count(*) from self_checks").query(Long.class).single());
    }
}
