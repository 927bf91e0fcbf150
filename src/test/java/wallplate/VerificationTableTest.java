package wallplate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What {@code docs/asvs.md} names as evidence is there: a class or test that was renamed or taken away fails here. */
class VerificationTableTest {

    private static final Path TABLE = Path.of("docs/asvs.md");

    /** Names in the table that are neither classes nor methods of this program: headers of HTTP and what the JDK brings along. */
    private static final Set<String> OF_OTHERS = Set.of("Host", "Origin", "SecureRandom", "nosniff", "autocomplete");

    private static final Set<String> STATES = Set.of("held", "held in part", "there", "not met", "not met in part", "does not apply");

    private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");

    /** A class, with its package below this program's before it and a method behind it where they are said. */
    private static final Pattern CLASS = Pattern.compile("(?:[a-z]+\\.)*([A-Z]\\w+)(?:\\.(\\w+))?");

    /** A test by its method alone; all have several words. */
    private static final Pattern METHOD = Pattern.compile("[a-z]+(?:[A-Z][a-z0-9]*)+");

    private static final Pattern TEST = Pattern.compile("\\w+(?:Test|IT)(?:\\.\\w+)?");

    private record Line(String sections, String state, String evidence) {}

    private static List<Line> lines() throws IOException {
        return Files.readAllLines(TABLE).stream()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| section") && !line.startsWith("| ---"))
                .map(line -> Arrays.stream(line.split("\\|")).map(String::strip).toList())
                .map(cells -> new Line(cells.get(1), cells.get(3), cells.get(4)))
                .toList();
    }

    private static Map<String, String> sources() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("src"))) {
            return files.filter(file -> file.toString().endsWith(".java") && !file.endsWith("package-info.java"))
                    .collect(Collectors.toMap(
                            file -> file.getFileName().toString().replaceFirst("\\.java$", ""), VerificationTableTest::read, String::concat));
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> quoted(String text) {
        return QUOTED.matcher(text).results().map(found -> found.group(1)).toList();
    }

    private static boolean isTest(String name, Map<String, String> sources) {
        return TEST.matcher(name).matches() || METHOD.matcher(name).matches() && isTestMethod(name, sources);
    }

    private static boolean isTestMethod(String name, Map<String, String> sources) {
        return sources.values().stream().anyMatch(source -> source.contains("    void " + name + "("));
    }

    @Test
    void everyClassAndTestThatIsNamedIsThere() throws IOException {
        Map<String, String> sources = sources();
        List<String> names = quoted(Files.readString(TABLE)).stream()
                .filter(name -> !OF_OTHERS.contains(name))
                .toList();
        assertThat(names).hasSizeGreaterThan(50);
        for (String name : names) {
            CLASS.matcher(name).results().filter(found -> found.group().equals(name)).forEach(found -> isThere(found, sources));
            if (METHOD.matcher(name).matches()) {
                assertThat(isTestMethod(name, sources)).as(name).isTrue();
            }
        }
    }

    private static void isThere(MatchResult named, Map<String, String> sources) {
        assertThat(sources).as(named.group()).containsKey(named.group(1));
        if (named.group(2) != null) {
            assertThat(sources.get(named.group(1))).as(named.group()).contains(" " + named.group(2) + "(");
        }
    }

    @Test
    void everyLineThatIsHeldNamesATest() throws IOException {
        Map<String, String> sources = sources();
        assertThat(lines()).hasSizeGreaterThan(60).allSatisfy(line -> {
            assertThat(STATES).as(line.sections()).contains(line.state());
            if (line.state().startsWith("held")) {
                assertThat(quoted(line.evidence())).as(line.sections()).anyMatch(name -> isTest(name, sources));
            }
        });
    }
}
