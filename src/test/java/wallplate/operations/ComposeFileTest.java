package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.core.env.StandardEnvironment;
import org.springframework.core.env.SystemEnvironmentPropertySource;
import tools.jackson.databind.json.JsonMapper;

/**
 * The files that describe containers, held against the JSON schema of the Compose Specification and against the program that
 * they start. Whether an engine runs them is not seen here; {@link ComposeIT} starts the same as plain processes.
 */
class ComposeFileTest {

    private static final String PLAIN = "docker-compose.yml";
    private static final String WITH_STORE = "docker-compose.s3.yml";
    private static final Set<String> OUR_OWN = Set.of("web", "worker");

    /** Every setting that the files give to the program. */
    private static final Set<String> SETTINGS = Set.of(
            "spring.config.import", "spring.datasource.url", "spring.datasource.username", "wallplate.scans", "wallplate.role",
            "management.server.address", "management.server.port", "logging.structured.format.console", "wallplate.store",
            "wallplate.s3.endpoint", "wallplate.s3.bucket", "wallplate.s3.access-key");

    private static List<String> faults(Map<String, Object> file) throws IOException {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2019_09)
                .getSchema(withoutNames(Files.readString(Path.of("src/test/resources/compose/compose-spec.json"))));
        return schema.validate(JsonMapper.builder().build().writeValueAsString(file), InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    /** The schema names its parts by a keyword of an earlier draft than the one that it says it is of; nothing refers to the names. */
    private static String withoutNames(String schema) {
        return schema.replaceAll("\"\\$?id\": \"[^\"]*\",", "");
    }

    @ParameterizedTest
    @ValueSource(strings = {PLAIN, WITH_STORE})
    void isAsTheSpecificationSays(String name) throws IOException {
        assertThat(faults(ComposeFile.read(name).content())).isEmpty();
    }

    /** So that the test before this one is known to look. */
    @Test
    void aSlipInTheFileWouldBeNoticed() throws IOException {
        Map<String, Object> service = new LinkedHashMap<>(ComposeFile.read(PLAIN).services().get("web"));
        service.put("memory_limit", "2g");

        assertThat(faults(Map.of("services", Map.of("web", service))))
                .anySatisfy(fault -> assertThat(fault).contains("memory_limit"));
    }

    @Test
    void namesNothingThatIsNotThere() throws IOException {
        ComposeFile both = ComposeFile.read(PLAIN).with(ComposeFile.read(WITH_STORE));
        both.services().forEach((name, service) -> {
            assertThat(ComposeFile.map(both.content(), "secrets").keySet())
                    .as("secrets of %s", name)
                    .containsAll(ComposeFile.list(service, "secrets"));
            assertThat(ComposeFile.map(both.content(), "volumes").keySet())
                    .as("volumes of %s", name)
                    .containsAll(ComposeFile.list(service, "volumes").stream()
                            .map(volume -> volume.substring(0, volume.indexOf(':')))
                            .toList());
            assertThat(both.services().keySet()).containsAll(ComposeFile.map(service, "depends_on").keySet());
        });
        assertThat(Files.readAllLines(Path.of(".gitignore"))).contains("secrets/");
    }

    /** Waits for a healthy service where that service can tell, has limits and comes back after a failure. */
    @Test
    void everyServiceHasLimitsAndComesBack() throws IOException {
        ComposeFile both = ComposeFile.read(PLAIN).with(ComposeFile.read(WITH_STORE));
        assertThat(both.services()).containsOnlyKeys("database", "store", "web", "worker");
        both.services().forEach((name, service) ->
                assertThat(service).as(name).containsKeys("mem_limit", "cpus").containsEntry("restart", "unless-stopped"));
        assertThat(both.services().get("database")).containsKey("healthcheck");
    }

    @Test
    void givesTheProgramOnlySettingsThatItKnows() throws IOException {
        ComposeFile both = ComposeFile.read(PLAIN).with(ComposeFile.read(WITH_STORE));
        for (String service : OUR_OWN) {
            Map<String, Object> given = new LinkedHashMap<>(both.environment(service));
            StandardEnvironment settings = new StandardEnvironment();
            settings.getPropertySources().addFirst(new SystemEnvironmentPropertySource("compose", given));
            assertThat(SETTINGS.stream().map(settings::getProperty).collect(Collectors.toSet()))
                    .as("what %s is given, by the names that the program asks for", service)
                    .containsExactlyInAnyOrderElementsOf(
                            given.values().stream().map(Object::toString).collect(Collectors.toSet()));
            assertThat(settings.getProperty("wallplate.role")).isEqualTo(service);
        }
    }

    @Test
    void asksForHealthWhereTheProgramTellsIt() throws IOException {
        ComposeFile plain = ComposeFile.read(PLAIN);
        for (String service : OUR_OWN) {
            List<String> asked = ComposeFile.list(ComposeFile.map(plain.services().get(service), "healthcheck"), "test");
            String port = plain.environment(service).get("MANAGEMENT_SERVER_PORT");
            assertThat(asked.get(0)).isEqualTo("CMD");
            assertThat(asked.get(1)).isEqualTo("curl");
            assertThat(asked.get(asked.size() - 1)).isEqualTo("http://127.0.0.1:" + port + "/actuator/health/readiness");
            assertThat(Files.readString(Path.of("Dockerfile"))).contains("install --yes --no-install-recommends curl").contains("EXPOSE 8080 " + port);
        }
    }

    @Test
    void theImageIsBuiltFromWhatIsThere() throws IOException {
        for (String source : ImageFile.read().sources()) {
            assertThat(Path.of(source)).exists();
        }
    }
}
