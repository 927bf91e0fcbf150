package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.ModelAnswer;
import wallplate.jobs.SelfCheckQueue;
import wallplate.records.ClassSet;
import wallplate.records.KeptTask;
import wallplate.records.PostgresServer;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.web.DrawnSheets;

/**
 * Workers as processes of their own on PostgreSQL, with a heap of 900 MB each: what a large sheet takes, what one gives back that is told to
 * end, and with {@code -Dwallplate.scaling=true} on a machine that is otherwise quiet, what a second one brings.
 *
 * <p>It starts several programs one after another and is asked for: {@code -Dwallplate.workers=true}.
 */
@EnabledIfSystemProperty(named = "wallplate.workers", matches = "true")
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.NONE)
@Import(HandIn.class)
class WorkersIT {

    private static final int SHEETS = Integer.getInteger("wallplate.scaling.sheets", 60);
    private static final int WARMING = 30;
    private static final double LEAST_GAIN = 0.6;
    private static final Map<String, String> SETTINGS = new LinkedHashMap<>();

    @Autowired
    private Tasks tasks;

    @Autowired
    private Sheets sheets;

    @Autowired
    private HandIn handIn;

    @Autowired
    private SelfCheckQueue selfChecks;

    @Autowired
    private JdbcClient database;

    private final List<ProgramProcess> workers = new ArrayList<>();
    private int number;

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        String address = PostgresServer.make("workers");
        SETTINGS.put("spring.datasource.url", address);
        SETTINGS.put("spring.datasource.username", PostgresServer.user());
        SETTINGS.put("spring.datasource.password", PostgresServer.password());
        SETTINGS.put("wallplate.scans", "target/test-data/workers");
        SETTINGS.forEach((key, value) -> properties.add(key, () -> value));
        properties.add("wallplate.role", () -> "web");
        properties.add("management.server.port", () -> "-1");
    }

    @AfterEach
    void endWorkers() {
        workers.forEach(ProgramProcess::kill);
    }

    @Test
    void readsSheetsOfA3AtSixHundredDotsAnInchWithinAGigabyteOfHeap() throws Exception {
        DrawingTask task = onA3();
        byte[] scan = scanned(ModelAnswer.of(Solver.solve(task)).with(DrawingOptions.FULL.withDimensions(false)).pdf());
        ClassSet set = handedIn(task, different(scan, 4));
        start("large", Map.of("db-scheduler.threads", "2"));

        long most = 0;
        Instant latest = Instant.now().plusSeconds(180);
        while (finished(set) < 4 && Instant.now().isBefore(latest)) {
            most = Math.max(most, heapBytes());
            Thread.sleep(200);
        }

        System.out.printf("A3 at 600 dpi, two at once: heap in use at most %d MB of 900 MB%n", most / 1_000_000);
        assertThat(sheets.of(set.id())).extracting(SheetEntry::state).containsOnly(SheetState.READ);
        assertThat(most).isPositive().isLessThan(1_000_000_000);
        assertThat(workers.get(0).log()).doesNotContain("OutOfMemoryError");
    }

    @Test
    void givesBackWhatItHasNotFinishedWhenItIsToldToEnd() throws Exception {
        DrawingTask task = onA3();
        byte[] scan = scanned(ModelAnswer.of(Solver.solve(task)).with(DrawingOptions.FULL.withDimensions(false)).pdf());
        ClassSet set = handedIn(task, different(scan, 3));
        ProgramProcess worker = start("ending", Map.of("db-scheduler.threads", "2", "db-scheduler.shutdown-max-wait", "10ms"));
        Instant latest = Instant.now().plusSeconds(60);
        while (inState(set, SheetState.READING) == 0 && Instant.now().isBefore(latest)) {
            Thread.sleep(20);
        }

        assertThat(worker.end(Duration.ofSeconds(40))).isTrue();

        assertThat(inState(set, SheetState.READING)).as(worker.log()).isZero();
        assertThat(inState(set, SheetState.WAITING)).isPositive();
        assertThat(attempts(set)).as("attempts of the set's waiting sheets").containsOnly("0");
        assertThat(count("select count(*) from scheduled_tasks where picked")).isZero();
        assertThat(worker.log()).contains("handed");

        start("after", Map.of());
        awaitFinished(set, 3);
        assertThat(sheets.of(set.id())).extracting(SheetEntry::state).containsOnly(SheetState.READ);
    }

    /** A learner waits for it, the pile does not. */
    @Test
    void readsALearnersPhotographBeforeTheRestOfAPile() throws Exception {
        SampleScans samples = SampleScans.read();
        KeptTask task = tasks.add(SampleScans.task());
        ClassSet set = handedIn(task.task(), scans(samples, 10));
        start("fair", Map.of("db-scheduler.threads", "1"));
        awaitFinished(set, 1);

        String token = selfChecks
                .add(task, "en", Map.of(), new ByteArrayInputStream(samples.scan(900)))
                .orElseThrow();
        Instant latest = Instant.now().plusSeconds(60);
        while (count("select count(*) from self_checks where state in ('waiting', 'reading')") > 0
                && Instant.now().isBefore(latest)) {
            Thread.sleep(20);
        }

        assertThat(token).isNotEmpty();
        assertThat(finished(set)).as("sheets of the pile that were read before it").isLessThan(6);
        assertThat(count("select count(*) from self_checks where state = 'read' and content_hash is null")).isEqualTo(1);
        awaitFinished(set, 10);
    }

    /** On a machine with two cores that has nothing else to do. */
    @Test
    @EnabledIfSystemProperty(named = "wallplate.scaling", matches = "true")
    void readsASetInSixTenthsOfTheTimeWithASecondWorker() throws Exception {
        SampleScans samples = SampleScans.read();
        DrawingTask task = SampleScans.task();
        Map<String, String> oneThread = Map.of("db-scheduler.threads", "1", "db-scheduler.polling-interval", "200ms");
        start("first", oneThread);
        awaitFinished(handedIn(task, scans(samples, WARMING)), WARMING);
        double alone = secondsFor(handedIn(task, scans(samples, SHEETS)));
        start("second", oneThread);
        Thread.sleep(15_000);
        awaitFinished(handedIn(task, scans(samples, 2 * WARMING)), 2 * WARMING);
        double together = secondsFor(handedIn(task, scans(samples, SHEETS)));

        System.out.printf(
                "%d sheets: one worker %.1f s, two workers %.1f s, ratio %.2f%n", SHEETS, alone, together, together / alone);
        assertThat(together / alone).isLessThanOrEqualTo(LEAST_GAIN);
    }

    private double secondsFor(ClassSet set) throws InterruptedException {
        awaitFinished(set, SHEETS);
        return count("""
                        select cast(1000 * extract(epoch from (max(assessed_at) - (select min(received_at) from scan_files where class_set_id = %d))) as bigint)
                        from sheets where class_set_id = %d""".formatted(set.id(), set.id()))
                / 1000.0;
    }

    private List<byte[]> scans(SampleScans samples, int many) {
        number += many;
        return samples.scans(number - many, many);
    }

    /** The same picture, each time in other bytes. */
    private List<byte[]> different(byte[] jpeg, int many) {
        number += many;
        return IntStream.range(number - many, number)
                .mapToObj(one -> SampleScans.numbered(jpeg, one))
                .toList();
    }

    private static DrawingTask onA3() {
        String yaml = DrawnSheets.aTaskFile().replace("size: A4", "size: A3").replace("scale: \"1:20\"", "scale: \"1:10\"");
        return ((TaskReading.Accepted) TaskFile.read(yaml)).task();
    }

    /** The drawing as a scanner gives it: 600 dots an inch of grey, as a JPEG. */
    private static byte[] scanned(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage picture = new PDFRenderer(document).renderImageWithDPI(0, 600, ImageType.GRAY);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(picture, "jpg", out);
            return out.toByteArray();
        }
    }

    private ClassSet handedIn(DrawingTask task, List<byte[]> content) throws IOException {
        return handIn.set("Set " + ++number, tasks.add(task), content);
    }

    private ProgramProcess start(String name, Map<String, String> more) throws IOException, InterruptedException {
        Map<String, String> settings = new LinkedHashMap<>(SETTINGS);
        settings.putAll(more);
        ProgramProcess worker = ProgramProcess.start("worker-" + name, "worker", settings);
        workers.add(worker);
        Instant latest = Instant.now().plusSeconds(90);
        while (!worker.isReady() && worker.isAlive() && Instant.now().isBefore(latest)) {
            Thread.sleep(200);
        }
        return worker;
    }

    private long heapBytes() throws IOException, InterruptedException {
        return (long) workers.get(0)
                .watch("/actuator/prometheus")
                .body()
                .lines()
                .filter(line -> line.startsWith("jvm_memory_used_bytes{") && line.contains("area=\"heap\""))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1)))
                .sum();
    }

    private long finished(ClassSet set) {
        return handIn.finished(set);
    }

    private List<String> attempts(ClassSet set) {
        return database.sql("select attempts from sheets where class_set_id = ? and state = 'waiting' order by id")
                .param(set.id())
                .query(String.class)
                .list();
    }

    private long inState(ClassSet set, SheetState state) {
        return sheets.of(set.id()).stream().filter(sheet -> sheet.state() == state).count();
    }

    private void awaitFinished(ClassSet set, int least) throws InterruptedException {
        Instant latest = Instant.now().plusSeconds(60 + 5L * least);
        while (finished(set) < least && Instant.now().isBefore(latest)) {
            Thread.sleep(100);
        }
        assertThat(finished(set)).isGreaterThanOrEqualTo(least);
    }

    private long count(String query) {
        return database.sql(query).query(Long.class).single();
    }
}
