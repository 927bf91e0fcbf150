package wallplate.operations;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/** The program as a process of its own, with the settings of one role; its log lies beside the other results of the tests. */
final class ProgramProcess {

    private static final Path LOGS = Path.of("target", "processes");
    private static final HttpClient CLIENT =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();

    private final String name;
    private final Process process;
    private final int watchingPort;

    private ProgramProcess(String name, Process process, int watchingPort) {
        this.name = name;
        this.process = process;
        this.watchingPort = watchingPort;
    }

    static ProgramProcess start(String name, String role, Map<String, String> settings) throws IOException {
        Files.createDirectories(LOGS);
        int port = freePort();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx900m",
                "-XX:+UseParallelGC",
                "-XX:TieredStopAtLevel=" + (role.equals("worker") ? 4 : 1),
                "-cp",
                classPath(),
                "wallplate.Wallplate",
                "--wallplate.role=" + role,
                "--management.server.port=" + port));
        settings.forEach((key, value) -> command.add("--" + key + "=" + value));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(LOGS.resolve(name + ".log").toFile())
                .start();
        return new ProgramProcess(name, process, port);
    }

    /** The program without its tests, whose components would otherwise be found as well. */
    private static String classPath() {
        String all = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Arrays.stream(all.split(File.pathSeparator))
                .filter(entry -> !entry.contains("test-classes"))
                .collect(Collectors.joining(File.pathSeparator));
    }

    static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    /** SIGKILL: no chance to say good-bye. */
    void kill() {
        process.destroyForcibly();
        await();
    }

    /** SIGTERM, and true where the process ends by itself within that time. */
    boolean end(Duration within) throws InterruptedException {
        process.destroy();
        boolean ended = process.waitFor(within.toMillis(), TimeUnit.MILLISECONDS);
        if (!ended) {
            kill();
        }
        return ended;
    }

    boolean isAlive() {
        return process.isAlive();
    }

    String log() throws IOException {
        return Files.readString(LOGS.resolve(name + ".log"));
    }

    /** What the port for health and metrics answers: status and body. */
    HttpResponse<String> watch(String path) throws IOException, InterruptedException {
        URI address = URI.create("http://127.0.0.1:" + watchingPort + path);
        return CLIENT.send(
                HttpRequest.newBuilder(address).timeout(Duration.ofSeconds(20)).build(),
                HttpResponse.BodyHandlers.ofString());
    }

    boolean isReady() throws InterruptedException {
        try {
            return watch("/actuator/health/readiness").statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private void await() {
        try {
            process.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new UncheckedIOException(new IOException("stopped while " + name + " was ending", stopped));
        }
    }
}
