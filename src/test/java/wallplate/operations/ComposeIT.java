package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.FileSystemUtils;
import wallplate.records.PostgresServer;

/**
 * What the files for containers describe, as plain processes: the program is built by the image's own command from what the
 * image is given, and started with the settings, secrets and health checks of each service. Only addresses, ports and folders
 * are other ones. What it does not see: the base images, the user of the containers, and the network between them.
 *
 * <p>Building takes minutes, so it is asked for: {@code -Dwallplate.compose=true}.
 */
@EnabledIfSystemProperty(named = "wallplate.compose", matches = "true")
class ComposeIT {

    private static final Path REPOSITORY = Path.of(System.getProperty("user.home"), ".m2", "repository");

    @TempDir
    private Path folder;

    private final List<Process> processes = new ArrayList<>();

    @AfterEach
    void end() throws InterruptedException {
        processes.forEach(Process::destroy);
        for (Process process : processes) {
            assertThat(process.waitFor(40, TimeUnit.SECONDS)).as("ends when it is told to").isTrue();
        }
    }

    @Test
    void buildsAndRunsWhatIsDescribed() throws Exception {
        ComposeFile compose = ComposeFile.read("docker-compose.yml");
        ImageFile image = ImageFile.read();
        Path program = built(image);
        Path secrets = Files.createDirectory(folder.resolve("secrets"));
        String address = PostgresServer.make("compose");
        Files.writeString(secrets.resolve("spring.datasource.password"), PostgresServer.password());

        int port = ProgramProcess.freePort();
        for (String service : List.of("web", "worker")) {
            Map<String, String> environment = new LinkedHashMap<>(compose.environment(service));
            int health = ProgramProcess.freePort();
            String described = environment.get("MANAGEMENT_SERVER_PORT");
            environment.put("MANAGEMENT_SERVER_PORT", Integer.toString(health));
            environment.put("SPRING_CONFIG_IMPORT", environment.get("SPRING_CONFIG_IMPORT").replace("/run/secrets", secrets.toString()));
            environment.put("SPRING_DATASOURCE_URL", address);
            environment.put("SPRING_DATASOURCE_USERNAME", PostgresServer.user());
            environment.put("WALLPLATE_SCANS", folder.resolve("scans").toString());
            environment.put("SERVER_PORT", Integer.toString(port));
            environment.put("JAVA_TOOL_OPTIONS", image.javaOptions());
            processes.add(started(service, program, environment));
            awaitHealthy(compose, service, described, health);
        }

        assertThat(HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/check")).build(),
                                HttpResponse.BodyHandlers.ofString())
                        .statusCode())
                .isEqualTo(200);
    }

    private Path built(ImageFile image) throws Exception {
        Path source = Files.createDirectory(folder.resolve("source"));
        for (String one : image.sources()) {
            FileSystemUtils.copyRecursively(Path.of(one), source.resolve(one));
        }
        List<String> command = new ArrayList<>(image.build());
        // The image fetches what it needs; here it is in the machine's own repository.
        command.replaceAll(word -> word.startsWith("-Dmaven.repo.local=") ? "-Dmaven.repo.local=" + REPOSITORY : word);
        command.add("--offline");
        Path log = Path.of("target", "processes", "compose-build.log");
        Files.createDirectories(log.getParent());
        Process build = new ProcessBuilder(command)
                .directory(source.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        assertThat(build.waitFor(8, TimeUnit.MINUTES)).isTrue();
        assertThat(build.exitValue()).as(Files.readString(log)).isZero();
        assertThat(source.resolve(image.built())).exists();
        return source.resolve(image.built());
    }

    private Process started(String service, Path program, Map<String, String> environment) throws IOException {
        Path home = Files.createDirectory(folder.resolve("home-" + service));
        ProcessBuilder builder = new ProcessBuilder("java", "-jar", program.toString())
                .directory(home.toFile())
                .redirectErrorStream(true)
                .redirectOutput(Path.of("target", "processes", "compose-" + service + ".log").toFile());
        builder.environment().putAll(environment);
        return builder.start();
    }

    /** Asks as the file describes it, at the port that stands in for the described one. */
    private static void awaitHealthy(ComposeFile compose, String service, String describedPort, int port) throws Exception {
        List<String> described = ComposeFile.list(ComposeFile.map(compose.services().get(service), "healthcheck"), "test");
        List<String> asked = new ArrayList<>(described.subList(1, described.size()));
        asked.replaceAll(word -> word.replace(":" + describedPort + "/", ":" + port + "/"));
        Instant latest = Instant.now().plus(Duration.ofSeconds(150));
        while (new ProcessBuilder(asked).start().waitFor() != 0) {
            assertThat(Instant.now()).as("%s is healthy in time", service).isBefore(latest);
            Thread.sleep(1_000);
        }
    }
}
