package wallplate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every text is there in every language, with the same places to be filled in. */
class BundlesTest {

    private static final Path FOLDER = Path.of("src/main/resources/messages");
    private static final List<String> LANGUAGES = List.of("de");
    private static final Pattern PLACE = Pattern.compile("\\{([\\w-]+)[,}]");

    /** English sentences of slips come from the solver; other languages word them in the bundle. */
    private static final Pattern ONLY_TRANSLATED = Pattern.compile("slip(-name)?\\..*");

    /** A part without a text of its own is called by its name in the task file, which is English. */
    private static final Pattern NAMED_BY_THE_TASK = Pattern.compile("part\\..*");

    /** One noun, in the number and with the capital that a language needs. */
    private static final Set<String> SUPPORTS = Set.of("support", "supports", "Support", "Supports");

    /** Texts that the pages fill with numbered places. */
    private static final Set<String> OF_PAGES = Set.of("pages", "accounts", "guideline", "feedback");

    static Stream<String> bundles() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> !name.contains("_"))
                    .map(name -> name.replace(".properties", ""))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @Test
    void looksAtEveryBundle() throws IOException {
        assertThat(bundles()).contains("pages", "accounts", "guideline", "feedback", "marking", "report");
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void hasEveryTextInEveryLanguage(String bundle) throws IOException {
        Set<String> english = keys(read(bundle, ""));
        for (String language : LANGUAGES) {
            Set<String> translated = keys(read(bundle, "_" + language));
            assertThat(translated).as("%s in %s", bundle, language).containsAll(english);
            translated.removeAll(english);
            assertThat(translated)
                    .as("texts of %s that only %s has", bundle, language)
                    .allMatch(key -> ONLY_TRANSLATED.matcher(key).matches()
                            || NAMED_BY_THE_TASK.matcher(key).matches());
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void fillsTheSamePlacesInEveryLanguage(String bundle) throws IOException {
        Properties english = read(bundle, "");
        for (String language : LANGUAGES) {
            Properties translated = read(bundle, "_" + language);
            for (String key : keys(english)) {
                assertThat(places(translated.getProperty(key, "")))
                        .as("%s of %s in %s", key, bundle, language)
                        .isEqualTo(places(english.getProperty(key)));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everyTextOfAPageCanBeFilled(String bundle) throws IOException {
        if (!OF_PAGES.contains(bundle)) {
            return;
        }
        for (String ending : List.of("", "_de")) {
            Properties texts = read(bundle, ending);
            for (String key : keys(texts)) {
                String filled = new MessageFormat(texts.getProperty(key), Locale.GERMAN).format(new Object[] {1, 2, 3});
                assertThat(filled).as(key + ending).doesNotContain("{").doesNotContain("''");
                long apostrophes = texts.getProperty(key).replace("''", "").chars().filter(one -> one == '\'').count();
                assertThat(apostrophes).as("single apostrophes in %s%s", key, ending).isZero();
            }
        }
    }

    private static Set<String> places(String text) {
        return PLACE.matcher(text)
                .results()
                .map((MatchResult found) -> SUPPORTS.contains(found.group(1)) ? "supports" : found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> keys(Properties texts) {
        return new TreeSet<>(texts.stringPropertyNames());
    }

    private static Properties read(String bundle, String ending) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(FOLDER.resolve(bundle + ending + ".properties"), StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }
}
