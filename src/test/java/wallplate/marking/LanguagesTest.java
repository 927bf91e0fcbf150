package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;
import static wallplate.marking.Drawn.drawn;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.measure.Finding;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.SlipCatalogue;
import wallplate.solver.Solver;

/** The texts for learners: none is missing in any language, and none fills in other places than the English one. */
class LanguagesTest {

    private static final Pattern PLACE = Pattern.compile("\\{([A-Za-z]+)}");

    @ParameterizedTest
    @ValueSource(strings = {"marking", "report"})
    void hasEveryEnglishTextInGerman(String bundle) throws IOException {
        Properties english = texts(bundle + ".properties");
        Properties german = texts(bundle + "_de.properties");
        Set<String> missing = new TreeSet<>(english.stringPropertyNames());
        missing.removeAll(german.stringPropertyNames());
        assertThat(missing).isEmpty();
        for (String key : english.stringPropertyNames()) {
            assertThat(places(german.getProperty(key))).as(key).isEqualTo(places(english.getProperty(key)));
        }
    }

    @Test
    void hasASentenceInGermanForEveryKnownSlip() throws IOException {
        Properties german = texts("marking_de.properties");
        SlipCatalogue.all().forEach(slip -> {
            assertThat(german.stringPropertyNames()).contains("slip." + slip.id(), "slip-name." + slip.id());
            assertThat(places(german.getProperty("slip." + slip.id())))
                    .as(slip.id())
                    .isSubsetOf("what", "asked", "drawn", "supports");
        });
    }

    @Test
    void namesEveryKeyOfTheDetail() throws IOException {
        Properties english = texts("marking.properties");
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        for (Expected value : asked.values()) {
            assertThat(english).containsKey("title." + value.key());
            assertThat(english)
                    .containsKey("part." + value.key().substring(0, value.key().indexOf('.')));
        }
    }

    @Test
    void writesNumbersTheGermanWay() {
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        MarkedSheet marked = new Marker(Locale.GERMAN)
                .mark(
                        Guideline.defaultFor(asked),
                        asked,
                        drawn().value("gutter.width", 7.41)
                                .absent("fascia.depth")
                                .sheet());
        assertThat(marked.mark("gutter-width").orElseThrow().feedback())
                .contains("7,4 mm")
                .doesNotContain("7.4");
        assertThat(marked.mark("fascia-depth").orElseThrow().feedback())
                .isEqualTo("Das fehlt noch auf deiner Zeichnung. Richtig ist 11,25 mm (oder gerundet 11 mm).");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void writesWhatRoundsToNothingWithoutASign(String language) {
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        Expected width = asked.values().stream()
                .filter(value -> value.key().equals("gutter.width"))
                .findFirst()
                .orElseThrow();
        ValueWords words = ValueWords.in(Locale.forLanguageTag(language));
        assertThat(words.found(width, new Finding.Quantity(-0.04, 0.05))).isEqualTo("0 mm");
        assertThat(words.found(width, new Finding.Quantity(-0.06, 0.05)))
                .isEqualTo(language.equals("de") ? "-0,1 mm" : "-0.1 mm");
    }

    @Test
    void usesEnglishForALanguageThatIsNotThere() {
        ExpectedDrawing asked = Solver.solve(Asked.boathouse());
        MarkedSheet marked = new Marker(Locale.forLanguageTag("tlh"))
                .mark(
                        Guideline.defaultFor(asked),
                        asked,
                        drawn().value("roof.pitch", 26.04).sheet());
        assertThat(marked.mark("roof-pitch").orElseThrow().feedback())
                .isEqualTo("You drew 26\u00b0, and 26\u00b0 is right.");
    }

    /** The places of a text; which number or capital the supports have is the language's own affair. */
    private static Set<String> places(String text) {
        return PLACE.matcher(text)
                .results()
                .map((MatchResult match) -> match.group(1))
                .map(place ->
                        place.equalsIgnoreCase("supports") || place.equalsIgnoreCase("support") ? "supports" : place)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Properties texts(String file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = new InputStreamReader(
                LanguagesTest.class.getResourceAsStream("/messages/" + file), StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }
}
