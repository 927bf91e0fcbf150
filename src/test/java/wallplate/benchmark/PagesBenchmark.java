package wallplate.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.boot.webmvc.test.autoconfigure.MockMvcPrint;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.assessment.AssessedSheet;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.web.DrawnSheets;
import wallplate.web.KeptSheets;

/**
 * How long the server takes for each page of a set of 200 sheets: {@code mvn -Dtest=PagesBenchmark test}.
 *
 * <p>Each page is asked for again and again; said are the median, the 95th percentile, and the 95th percentile of the
 * processor's time alone, which other work on the machine does not lengthen. That time is held to 100 ms. Nothing of an
 * answer is printed, which would take longer than most answers and is no work of the server.
 */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:benchmark;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/benchmark",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc(print = MockMvcPrint.NONE)
@Import(KeptSheets.class)
class PagesBenchmark {

    private static final int SHEETS = 200;
    private static final int DIFFERENT = 25;
    private static final int WARMING = Integer.getInteger("wallplate.warming", 30);
    private static final int TIMES = Integer.getInteger("wallplate.times", 40);
    private static final double MOST_MS = 100;

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private KeptSheets kept;

    private record Times(String page, double median, double p95, double cpuP95) {

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%-18s median %6.1f ms   p95 %6.1f ms   processor p95 %6.1f ms", page, median, p95, cpuP95);
        }
    }

    @Test
    void everyPageOfASetOfTwoHundredSheets() throws Exception {
        Map<String, String> addresses = addresses(aSet());
        List<Times> all = new ArrayList<>();
        for (Map.Entry<String, String> page : addresses.entrySet()) {
            all.add(measured(page.getKey(), page.getValue()));
        }
        all.forEach(System.out::println);
        assertThat(all).allSatisfy(times -> assertThat(times.cpuP95()).as(times.page()).isLessThan(MOST_MS));
    }

    private Map<String, String> addresses(ClassSet set) {
        List<SheetEntry> entries = sheets.of(set.id());
        SheetEntry sheet = entries.get(100);
        String criterion = sheets.criteria(set.id()).get(3).id();
        String picture = sheet.pagePicture().orElseThrow();
        Map<String, String> addresses = new LinkedHashMap<>();
        addresses.put("today", "/");
        addresses.put("class sets", "/class-sets");
        addresses.put("class set", "/class-sets/" + set.id());
        addresses.put("standing", "/class-sets/" + set.id() + "/standing");
        addresses.put("learners", "/class-sets/" + set.id() + "/learners");
        addresses.put("sheet", "/sheets/" + sheet.id());
        addresses.put("lines", "/sheets/" + sheet.id() + "/lines/" + criterion);
        addresses.put("across", "/class-sets/" + set.id() + "/across?criterion=" + criterion);
        addresses.put("teach again", "/class-sets/" + set.id() + "/teach-again");
        addresses.put("items", "/class-sets/" + set.id() + "/items");
        addresses.put("moderation", "/class-sets/" + set.id() + "/moderation");
        addresses.put("tasks", "/tasks");
        addresses.put("picture part", "/pictures/" + picture + "/part.png?left=700&top=500&width=640&height=480");
        addresses.put("picture tile", "/pictures/" + picture + "/tiles/2-1.png");
        return addresses;
    }

    private Times measured(String page, String address) throws Exception {
        var threads = ManagementFactory.getThreadMXBean();
        double[] wall = new double[TIMES];
        double[] cpu = new double[TIMES];
        for (int time = -WARMING; time < TIMES; time++) {
            long cpuFrom = threads.getCurrentThreadCpuTime();
            long from = System.nanoTime();
            int status = pages.perform(get(address)).andReturn().getResponse().getStatus();
            assertThat(status).as(page).isEqualTo(200);
            if (time >= 0) {
                wall[time] = (System.nanoTime() - from) / 1e6;
                cpu[time] = (threads.getCurrentThreadCpuTime() - cpuFrom) / 1e6;
            }
        }
        return new Times(page, percentile(wall, 0.5), percentile(wall, 0.95), percentile(cpu, 0.95));
    }

    private static double percentile(double[] values, double part) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.ceil(part * sorted.length) - 1];
    }

    private ClassSet aSet() {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        List<ClassListEntry> learners = new ArrayList<>();
        for (int number = 1; number <= SHEETS; number++) {
            learners.add(new ClassListEntry("Learner " + number, Integer.toString(1000 + number)));
        }
        ClassSet set = classSets.add("Two hundred sheets", "all classes", learners, task, false);
        List<AssessedSheet.Read> drawn = IntStream.rangeClosed(1, DIFFERENT)
                .mapToObj(seed -> DrawnSheets.aSheet(task.task(), "sheet.png", seed))
                .toList();
        for (int number = 0; number < SHEETS; number++) {
            kept.read(set, "sheet-%03d.png".formatted(number + 1), drawn.get(number % DIFFERENT));
        }
        return set;
    }
}
