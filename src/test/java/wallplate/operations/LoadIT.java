package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Queue;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import wallplate.accounts.Accounts;
import wallplate.accounts.Passwords;
import wallplate.accounts.Role;
import wallplate.records.KeptTask;
import wallplate.records.PostgresServer;
import wallplate.records.Tasks;

/**
 * 50 teachers hand scans in and 500 learners check their drawings at once against one process that shows pages and reads, on
 * PostgreSQL, over HTTP on this machine's own loopback.
 *
 * <p>Teachers sign in and make a class set; learners have no account. People come within the first twenty seconds and think between their steps; the whole is over after {@link #LASTS}, whatever is
 * still in the queue. Held: nothing but success, the 95th percentile of pages under a second, uploads answered at once, learners'
 * photographs read before the sets. With {@code -Dwallplate.load.learners=…} and {@code …teachers=…} in other numbers.
 *
 * <p>Figures on the clock say something only on a machine that is otherwise quiet, so it is asked for: {@code -Dwallplate.load=true}.
 */
@EnabledIfSystemProperty(named = "wallplate.load", matches = "true")
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {
            "wallplate.scans=target/test-data/load",
            "wallplate.demonstration.enabled=false",
            "wallplate.demonstration.open=false"
        })
class LoadIT {

    private static final int TEACHERS = Integer.getInteger("wallplate.load.teachers", 50);
    private static final int LEARNERS = Integer.getInteger("wallplate.load.learners", 500);
    private static final Duration LASTS = Duration.ofSeconds(75);
    private static final int COME_WITHIN_MS = 20_000;
    private static final int ROUNDS = 3;
    private static final int WARMING = 40;
    private static final double PAGE_P95_MS = 1_000;
    private static final String PASSWORD = "lath and plaster at seven";
    private static final Pattern TOKEN = Pattern.compile("name=\"_csrf\"[^>]*value=\"([^\"]+)\"");

    @LocalServerPort
    private int port;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Accounts accounts;

    @Autowired
    private Passwords passwords;

    @Autowired
    private JdbcClient database;

    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(20))
            .build();
    private final Queue<Answer> answers = new ConcurrentLinkedQueue<>();
    private final Queue<String> faults = new ConcurrentLinkedQueue<>();
    private Instant end = Instant.MAX;

    @DynamicPropertySource
    static void onPostgres(DynamicPropertyRegistry properties) {
        PostgresServer.use(properties, "load");
    }

    private enum Kind {
        PAGE,
        UPLOAD,
        PHOTOGRAPH
    }

    /** @param what the method and the address, numbers and codes left out */
    private record Answer(Kind kind, String what, double ms) {}

    /** One browser: its cookies, and the token of the page that it is on. */
    private final class Visitor {

        private final Random chance;
        private final Map<String, String> cookies = new LinkedHashMap<>();
        private String token = "";

        Visitor(long seed) {
            this.chance = new Random(seed);
        }

        void think(int mostMs) throws InterruptedException {
            Thread.sleep(1 + chance.nextInt(mostMs));
        }

        HttpResponse<String> page(String address) throws IOException, InterruptedException {
            return ask(Kind.PAGE, HttpRequest.newBuilder(at(address)).GET());
        }

        HttpResponse<String> form(String address, String fields) throws IOException, InterruptedException {
            return ask(
                    Kind.PAGE,
                    HttpRequest.newBuilder(at(address))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(HttpRequest.BodyPublishers.ofString("_csrf=" + token + "&" + fields)));
        }

        HttpResponse<String> file(Kind kind, String address, String field, byte[] content)
                throws IOException, InterruptedException {
            ByteArrayOutputStream body = new ByteArrayOutputStream();
            body.writeBytes(("--part\r\nContent-Disposition: form-data; name=\"_csrf\"\r\n\r\n" + token
                            + "\r\n--part\r\nContent-Disposition: form-data; name=\"" + field
                            + "\"; filename=\"sheet.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n")
                    .getBytes(StandardCharsets.UTF_8));
            body.writeBytes(content);
            body.writeBytes("\r\n--part--\r\n".getBytes(StandardCharsets.UTF_8));
            return ask(
                    kind,
                    HttpRequest.newBuilder(at(address))
                            .header("Content-Type", "multipart/form-data; boundary=part")
                            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
        }

        private HttpResponse<String> ask(Kind kind, HttpRequest.Builder request) throws IOException, InterruptedException {
            if (!cookies.isEmpty()) {
                request.header(
                        "Cookie",
                        cookies.entrySet().stream()
                                .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                                .collect(Collectors.joining("; ")));
            }
            long from = System.nanoTime();
            HttpResponse<String> answer = client.send(
                    request.timeout(Duration.ofSeconds(60)).build(), HttpResponse.BodyHandlers.ofString());
            String what = answer.request().method() + " " + answer.uri().getPath().replaceAll("/(\\d+|[A-Z0-9]{6,})(?=/|$)", "/…");
            answers.add(new Answer(kind, what, (System.nanoTime() - from) / 1e6));
            boolean isSentAway = answer.headers().firstValue("Location").filter(to -> to.contains("/sign-in")).isPresent();
            if (isSentAway || answer.statusCode() != 200 && answer.statusCode() != 302) {
                faults.add(answer.statusCode() + " " + answer.request().method() + " " + answer.uri().getPath());
            }
            answer.headers().allValues("Set-Cookie").forEach(cookie ->
                    cookies.put(cookie.substring(0, cookie.indexOf('=')), cookie.substring(cookie.indexOf('=') + 1, cookie.indexOf(';'))));
            Matcher found = TOKEN.matcher(answer.body());
            if (found.find()) {
                token = found.group(1);
            }
            return answer;
        }

        private URI at(String address) {
            return address.startsWith("http") ? URI.create(address) : URI.create("http://127.0.0.1:" + port + address);
        }
    }

    @Test
    void servesTeachersAndLearnersAtOnce() throws Exception {
        SampleScans scans = SampleScans.read();
        KeptTask task = tasks.add(SampleScans.task());
        List<Thread> people = new ArrayList<>();
        CountDownLatch ready = new CountDownLatch(1);
        for (int number = 0; number < TEACHERS; number++) {
            account("teacher " + number);
            int teacher = number;
            people.add(person(ready, teacher, visitor -> teach(visitor, task, scans, teacher)));
        }
        for (int number = 0; number < LEARNERS; number++) {
            int learner = number;
            people.add(person(ready, 10_000 + learner, visitor -> check(visitor, task, scans.scan(100_000 + learner))));
        }
        warm(scans, task);
        end = Instant.now().plus(LASTS);
        ready.countDown();
        for (Thread one : people) {
            one.join();
        }
        report();
    }

    /** A server that has run for a while has compiled its pages; what this takes is not counted. */
    private void warm(SampleScans scans, KeptTask task) throws IOException, InterruptedException {
        account("warming");
        Visitor visitor = new Visitor(-1);
        String set = aSetOf(visitor, "warming", task);
        for (int round = 0; round < WARMING; round++) {
            visitor.page("/");
            visitor.page(set);
            visitor.page(set + "/standing");
            visitor.page("/check");
            visitor.form("/check", "code=" + task.learnerCode());
            visitor.page("/check/" + task.learnerCode());
        }
        for (int scan = 0; scan < 8; scan++) {
            visitor.page(set);
            visitor.file(Kind.UPLOAD, set + "/scans", "scans", scans.scan(500_000 + scan));
        }
        Instant latest = Instant.now().plusSeconds(120);
        while (count("select count(*) from sheets where state in ('waiting', 'reading')") > 0 && Instant.now().isBefore(latest)) {
            Thread.sleep(200);
        }
        answers.clear();
        database.sql("delete from class_sets").update();
    }

    private interface Day {
        void of(Visitor visitor) throws IOException, InterruptedException;
    }

    private Thread person(CountDownLatch ready, long seed, Day day) {
        Thread thread = new Thread(() -> {
            Visitor visitor = new Visitor(seed);
            try {
                ready.await();
                visitor.think(COME_WITHIN_MS);
                day.of(visitor);
            } catch (IOException | InterruptedException broken) {
                faults.add(broken.toString());
            }
        });
        thread.start();
        return thread;
    }

    private void account(String name) {
        passwords.set(accounts.add(name, EnumSet.of(Role.TEACHER)).orElseThrow(), PASSWORD);
    }

    /** Signs somebody in, who then makes a class set; returns the set's page. */
    private static String aSetOf(Visitor visitor, String name, KeptTask task) throws IOException, InterruptedException {
        visitor.page("/sign-in");
        visitor.form("/sign-in", "name=" + encoded(name) + "&password=" + encoded(PASSWORD));
        visitor.page("/class-sets/new");
        return visitor.form("/class-sets", "task=" + task.id() + "&className=" + encoded(name) + "&classList=Learner")
                .headers()
                .firstValue("Location")
                .orElseThrow();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private void teach(Visitor visitor, KeptTask task, SampleScans scans, int teacher) throws IOException, InterruptedException {
        String set = aSetOf(visitor, "teacher " + teacher, task);
        visitor.page("/");
        for (int round = 0; round < ROUNDS; round++) {
            visitor.page(set);
            visitor.think(6_000);
            visitor.file(Kind.UPLOAD, set + "/scans", "scans", scans.scan(ROUNDS * teacher + round));
            visitor.page(set);
            visitor.think(6_000);
            visitor.page(set + "/standing");
        }
    }

    private void check(Visitor visitor, KeptTask task, byte[] photograph) throws IOException, InterruptedException {
        visitor.page("/check");
        visitor.think(4_000);
        visitor.form("/check", "code=" + task.learnerCode());
        visitor.page("/check/" + task.learnerCode());
        visitor.think(8_000);
        String result = visitor.file(Kind.PHOTOGRAPH, "/check/" + task.learnerCode(), "photograph", photograph)
                .headers()
                .firstValue("Location")
                .orElse("");
        if (result.isEmpty()) {
            faults.add("a photograph was not taken");
            return;
        }
        while (Instant.now().isBefore(end)) {
            HttpResponse<String> answer = visitor.page(result);
            if (answer.headers().firstValue("Refresh").isEmpty()) {
                return;
            }
            long seconds = Long.parseLong(answer.headers().firstValue("Refresh").get());
            TimeUnit.SECONDS.sleep(Math.min(seconds, Math.max(0, Duration.between(Instant.now(), end).toSeconds()) + 1));
        }
    }

    private void report() {
        for (Kind kind : Kind.values()) {
            double[] times = answers.stream().filter(one -> one.kind() == kind).mapToDouble(Answer::ms).sorted().toArray();
            System.out.printf(
                    Locale.ROOT,
                    "%-10s %5d   median %6.0f ms   p95 %6.0f ms   most %6.0f ms%n",
                    kind, times.length, percentile(times, 0.5), percentile(times, 0.95), percentile(times, 1));
        }
        answers.stream().collect(Collectors.groupingBy(Answer::what, TreeMap::new, Collectors.toList())).forEach((what, some) -> {
            double[] times = some.stream().mapToDouble(Answer::ms).sorted().toArray();
            System.out.printf(
                    Locale.ROOT,
                    "  %-40s %5d   median %6.0f ms   p95 %6.0f ms   most %6.0f ms%n",
                    what, times.length, percentile(times, 0.5), percentile(times, 0.95), percentile(times, 1));
        });
        long checked = count("select count(*) from self_checks where state not in ('waiting', 'reading')");
        long checks = count("select count(*) from self_checks");
        long read = count("select count(*) from sheets where state not in ('waiting', 'reading')");
        long handedIn = count("select count(*) from scan_files");
        var machine = (com.sun.management.OperatingSystemMXBean) java.lang.management.ManagementFactory.getOperatingSystemMXBean();
        System.out.printf(
                Locale.ROOT,
                "processor time of this process %.0f s since it began; %.1f of %d cores were asked for in the last minute%n",
                machine.getProcessCpuTime() / 1e9, machine.getSystemLoadAverage(), machine.getAvailableProcessors());
        System.out.printf(
                "self-checks %d, of them read %d; scans %d, of their sheets read %d; faults %d%n",
                checks, checked, handedIn, read, faults.size());
        assertThat(faults).isEmpty();
        assertThat(checks).isEqualTo(LEARNERS);
        assertThat(handedIn).isEqualTo((long) ROUNDS * TEACHERS);
        assertThat(checked).isPositive();
        assertThat(count("select count(*) from self_checks where state = 'failed'")).isZero();
        for (Kind kind : Kind.values()) {
            double[] times = answers.stream().filter(one -> one.kind() == kind).mapToDouble(Answer::ms).sorted().toArray();
            assertThat(percentile(times, 0.95)).as(kind.toString()).isLessThan(PAGE_P95_MS);
        }
    }

    private long count(String query) {
        return database.sql(query).query(Long.class).single();
    }

    private static double percentile(double[] sorted, double part) {
        return sorted[(int) Math.ceil(part * sorted.length) - 1];
    }
}
