package wallplate.operations;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import wallplate.Needed;

/** The packed program's own list of what it is made of, in the format of CycloneDX (ECMA-424). */
class ComponentsIT {

    private static final Path JAR = Path.of("target/wallplate.jar");
    private static final String LIST = "META-INF/sbom/application.cdx.json";
    /** A part of Spring Boot that its packing puts in, of the version of all others. */
    private static final String ADDED_BY_PACKING = "spring-boot-jarmode-tools-";

    private static final Pattern CLASSIFIER = Pattern.compile("[?&]classifier=([^&]+)");

    /** By their identifiers in the SPDX list; the last three have none, and are a permissive licence each. */
    private static final Set<String> ACCEPTED = Set.of(
            "Apache-2.0",
            "MIT",
            "MIT-0",
            "BSD-2-Clause",
            "BSD-3-Clause",
            "0BSD",
            "CC0-1.0",
            "EPL-2.0",
            "MPL-2.0",
            "Bouncy Castle Licence",
            "JJ2000",
            "BSD 3-clause License w/nuclear disclaimer");

    private static List<JsonNode> components = List.of();
    private static Set<String> libraries = Set.of();

    @BeforeAll
    static void readsTheList() throws IOException {
        Needed.holds(Files.isRegularFile(JAR), "no " + JAR + ": this check runs after packaging");
        try (JarFile jar = new JarFile(JAR.toFile())) {
            libraries = jar.stream()
                    .map(entry -> Path.of(entry.getName()))
                    .filter(entry -> entry.startsWith("BOOT-INF/lib") && entry.toString().endsWith(".jar"))
                    .map(entry -> entry.getFileName().toString())
                    .collect(Collectors.toCollection(TreeSet::new));
            Needed.holds(
                    jar.getEntry(LIST) != null,
                    "no list of components in " + JAR + ": it was built without the network, and the list needs it");
            try (InputStream list = jar.getInputStream(jar.getEntry(LIST))) {
                JsonNode read = JsonMapper.shared().readTree(list);
                assertThat(read.path("bomFormat").asString()).isEqualTo("CycloneDX");
                components = StreamSupport.stream(read.path("components").spliterator(), false).toList();
            }
        }
    }

    @Test
    void namesEveryLibraryThatTravelsInTheJar() {
        Set<String> listed = components.stream().map(ComponentsIT::file).collect(Collectors.toCollection(TreeSet::new));
        assertThat(libraries).hasSizeGreaterThan(50).allSatisfy(library -> assertThat(
                        listed.contains(library) || library.startsWith(ADDED_BY_PACKING))
                .as(library)
                .isTrue());
    }

    @Test
    void everyComponentIsAReleaseUnderALicenceThatFits() {
        assertThat(components).isNotEmpty().allSatisfy(component -> {
            assertThat(component.path("version").asString()).isNotEmpty().doesNotContain("SNAPSHOT");
            assertThat(licences(component)).as("licences of %s", file(component)).containsAnyElementsOf(ACCEPTED);
        });
    }

    private static String file(JsonNode component) {
        Matcher classifier = CLASSIFIER.matcher(component.path("purl").asString());
        return component.path("name").asString() + "-" + component.path("version").asString()
                + (classifier.find() ? "-" + classifier.group(1) : "") + ".jar";
    }

    private static Set<String> licences(JsonNode component) {
        return StreamSupport.stream(component.path("licenses").spliterator(), false)
                .map(one -> one.path("license"))
                .map(one -> one.has("id") ? one.path("id").asString() : one.path("name").asString())
                .collect(Collectors.toSet());
    }
}
