package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Verdict;
import wallplate.records.ClassSet;
import wallplate.records.KeptTask;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.remarking.GuidelineVersions;
import wallplate.solver.Solver;

/** The guideline's form and the pages on which a set is marked again, as a browser without scripts uses them. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:guideline;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/guideline",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class GuidelinePagesTest {

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private Sheets sheets;

    @Autowired
    private GuidelineVersions versions;

    @Autowired
    private DecidedSets decidedSets;

    private KeptTask task;

    @BeforeEach
    void aTask() {
        task = tasks.add(DrawnSheets.aTask());
    }

    @Test
    void keepsAnUnchangedFormAsTheSameVersion() throws Exception {
        String before = guideline().version();

        pages.perform(filled(form())).andExpect(redirectedUrl(page()));

        assertThat(guideline().version()).isEqualTo(before);
    }

    @Test
    void keepsEverythingThatCanBeFilledIn() throws Exception {
        Map<String, String> form = form();
        form.put("name", "2026-2");
        form.put("tolerance.length", "1,5");
        form.put("borderline", "1");
        form.put("groups[1].id", "purlins");
        form.put("groups[1].title", "Purlins");
        form.put("groups[1].maximum", "2.5");
        form.put("criteria[1].title", "The slope of the roof");
        form.put("criteria[1].marks", "2");
        form.put("criteria[1].tolerance", "0,5");
        form.put("criteria[1].unit", "degrees");
        form.put("criteria[1].limit-1", "2");
        form.put("criteria[1].band-1", "1");
        form.remove("criteria[1].carried");
        form.put("criteria[2].group", "purlins");
        form.put("criteria[2].needs", "support.count");
        form.put("criteria[2].at-least", "2");
        form.put("criteria[3].remove", "yes");
        int all = guideline().criteria().size();

        pages.perform(filled(form)).andExpect(redirectedUrl(page()));

        Map<String, Object> kept = tasks.find(task.id()).orElseThrow().task().marking();
        assertThat(kept).containsEntry("name", "2026-2").containsEntry("borderline", 1);
        assertThat(kept.get("tolerance")).isEqualTo(Map.of("length", 1.5, "thickness", 0.5, "angle", 1));
        assertThat(kept.get("groups")).isEqualTo(Map.of("purlins", Map.of("title", "Purlins", "maximum", 2.5)));
        List<?> criteria = (List<?>) kept.get("criteria");
        assertThat(criteria).hasSize(all - 1);
        assertThat(criteria.get(0))
                .isEqualTo(Map.of(
                        "id", guideline().criteria().get(0).id(),
                        "title", "The slope of the roof",
                        "marks", 2,
                        "measure", "roof.pitch",
                        "tolerance", "0.5 degrees",
                        "part-marks", List.of(Map.of("within", 2, "marks", 1)),
                        "consistent-working", false));
        assertThat(((Map<?, ?>) criteria.get(1)).get("needs")).isEqualTo(Map.of("key", "support.count", "at-least", 2));
        assertThat(versions.of(task.id())).hasSize(2);
        assertThat(versions.of(task.id()).get(0).version()).startsWith("2026-2-");
    }

    @Test
    void namesEveryFaultAtItsFieldAndKeepsWhatWasTyped() throws Exception {
        Map<String, String> form = form();
        form.put("tolerance.angle", "steep");
        form.put("groups[1].id", "purlins");
        form.put("groups[1].maximum", "2.3");
        form.put("criteria[1].marks", "0.3");
        form.put("criteria[2].tolerance", "1");
        form.put("criteria[2].unit", "degrees");
        form.put("criteria[4].group", "nobody");
        String before = guideline().version();

        pages.perform(filled(form))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("href=\"#tolerance-angle\""),
                                containsString("href=\"#groups-1-maximum\""),
                                containsString("href=\"#criteria-1-marks\""),
                                containsString("href=\"#criteria-2-tolerance\""),
                                containsString("href=\"#criteria-4-group\""),
                                containsString("value=\"steep\""),
                                containsString("5 things have to be put right"))));

        assertThat(guideline().version()).isEqualTo(before);
        assertThat(versions.of(task.id())).isEmpty();
    }

    @Test
    void everyFaultPointsAtAFieldOfThePage() throws Exception {
        Map<String, String> form = form();
        form.put("borderline", "9");
        form.put("groups[1].title", "No word");
        form.put("groups[1].maximum", "1");
        form.put("criteria[1].looks-at", "");
        form.put("criteria[2].looks-at", "several");
        form.put("criteria[2].keys.roof.pitch", "yes");
        form.put("criteria[2].keys.chimney.width", "yes");
        form.put("criteria[3].looks-at", "teacher");
        form.put("criteria[4].limit-1", "much");
        form.put("criteria[5].id", "Two Words");
        form.put("criteria[6].needs", "roof.pitch");

        String answer = pages.perform(filled(form))
                .andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();

        List<String> pointedAt =
                Pattern.compile("<li><a href=\"#([^\"]+)\"").matcher(answer).results().map(one -> one.group(1)).toList();
        assertThat(pointedAt).hasSizeGreaterThan(8);
        assertThat(pointedAt).allSatisfy(anchor -> assertThat(answer).contains("id=\"" + anchor + "\""));
    }

    @Test
    void addsACriterionWithoutLosingWhatWasTyped() throws Exception {
        Map<String, String> form = form();
        form.put("name", "half done");
        int rows = guideline().criteria().size();

        form.put("add", "true");

        pages.perform(filled(form, page() + "/criterion"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("value=\"half done\""),
                                containsString("name=\"criteria[%d].looks-at\"".formatted(rows + 1)))));
    }

    /** Every criterion's fields at once made a page of 350 kB. */
    @Test
    void isALightPageWhoseCriteriaAreFetchedAsTheyAreOpened() throws Exception {
        Map<String, String> form = form();
        form.put("criteria[3].title", "As typed just now");
        form.put("fetch", "3");

        assertThat(pages.perform(get(page())).andReturn().getResponse().getContentAsByteArray()).hasSizeLessThan(100_000);
        pages.perform(filled(form, page() + "/criterion"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("id=\"criteria-3-title\""),
                                containsString("value=\"As typed just now\""),
                                not(containsString("<html")),
                                not(containsString("criteria-4-title")))));
        pages.perform(get(page()).param("fetch", "999")).andExpect(status().isNotFound());
    }

    @Test
    void opensACriterionWithoutScriptsAndLosesNothing() throws Exception {
        Map<String, String> form = form();
        form.put("name", "half done");
        form.put("open", "2");

        Map<String, String> opened = fields(pages.perform(filled(form, page() + "/criterion"))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("id=\"criteria-2-title\""), not(containsString("id=\"criteria-3-title\"")))))
                .andReturn()
                .getResponse()
                .getContentAsString());

        assertThat(opened).containsEntry("name", "half done").containsAllEntriesOf(criteria(form));
    }

    private static Map<String, String> criteria(Map<String, String> form) {
        return form.entrySet().stream()
                .filter(field -> field.getKey().startsWith("criteria") && !field.getValue().isEmpty())
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    @Test
    void refusesATaskThatNoLongerAsksForWhatItsGuidelineMarks() throws Exception {
        pages.perform(filled(form()));
        Map<String, String> drawn = new LinkedHashMap<>();
        String answer = pages.perform(get("/tasks/" + task.id() + "/edit")).andReturn().getResponse().getContentAsString();
        drawn.putAll(fields(answer));
        drawn.remove("drawn.gutter");

        MockHttpServletRequestBuilder change = post("/tasks/" + task.id());
        drawn.forEach(change::param);
        pages.perform(change)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("gutter.width")));
    }

    @Test
    void showsWhatWouldChangeAndThenMarksTheSetAgain() throws Exception {
        ClassSet classSet = decidedSets.aSet(task, 3, 11);
        MarkEntry byHand = sheets.marksOfSet(classSet.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET && mark.reading().unit().equals("mm"))
                .findFirst()
                .orElseThrow();
        decidedSets.change(byHand, Verdict.NOT_MET, 0);
        Map<String, String> form = form();
        form.put("name", "strict");
        form.put("tolerance.length", "0.1");
        form.put("tolerance.thickness", "0.05");
        pages.perform(filled(form));
        String version = guideline().version();
        String address = "/class-sets/" + classSet.id() + "/guideline";
        List<SheetEntry> before = sheets.of(classSet.id());

        pages.perform(get(address))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(containsString("of 3 sheets would change"), containsString(byHand.title()))));
        assertThat(sheets.of(classSet.id())).isEqualTo(before);

        pages.perform(post(address).param("version", version)).andExpect(redirectedUrl(address));
        pages.perform(get(address))
                .andExpect(content().string(allOf(containsString("marked by " + version), not(containsString("sheets would change")))));
        pages.perform(get("/sheets/%d/result.json".formatted(byHand.sheetId())))
                .andExpect(content().string(containsString("\"guideline\" : \"" + version + "\"")));
    }

    @Test
    void knowsNoVersionThatWasNeverKept() throws Exception {
        ClassSet classSet = decidedSets.aSet(task, 1, 12);

        pages.perform(post("/class-sets/%d/guideline".formatted(classSet.id())).param("version", "invented-00000000"))
                .andExpect(status().isNotFound());
    }

    /** The fields of the page as a browser would send them. */
    private Map<String, String> form() throws Exception {
        return fields(pages.perform(get(page())).andExpect(status().isOk()).andReturn().getResponse().getContentAsString());
    }

    private static Map<String, String> fields(String page) {
        Map<String, String> fields = new LinkedHashMap<>();
        Matcher inputs = Pattern.compile("<input ([^>]*)>").matcher(page);
        while (inputs.find()) {
            String tag = inputs.group(1);
            boolean box = tag.contains("type=\"checkbox\"") || tag.contains("type=\"radio\"");
            if (tag.contains("name=") && (!box || tag.contains("checked"))) {
                fields.put(attribute(tag, "name"), attribute(tag, "value"));
            }
        }
        Matcher selects = Pattern.compile("(?s)<select ([^>]*)>(.*?)</select>").matcher(page);
        while (selects.find()) {
            Matcher chosen = Pattern.compile("<option ([^>]*selected[^>]*)>").matcher(selects.group(2));
            fields.put(attribute(selects.group(1), "name"), chosen.find() ? attribute(chosen.group(1), "value") : "");
        }
        return fields;
    }

    private static String attribute(String tag, String name) {
        Matcher found = Pattern.compile("\\b" + name + "=\"([^\"]*)\"").matcher(tag);
        return found.find() ? found.group(1) : "";
    }

    private MockHttpServletRequestBuilder filled(Map<String, String> form) {
        return filled(form, page());
    }

    private static MockHttpServletRequestBuilder filled(Map<String, String> form, String address) {
        MockHttpServletRequestBuilder request = post(address);
        form.forEach(request::param);
        return request;
    }

    private String page() {
        return "/tasks/" + task.id() + "/guideline";
    }

    private Guideline guideline() {
        return ((GuidelineReading.Accepted)
                        Guideline.read(Solver.solve(tasks.find(task.id()).orElseThrow().task())))
                .guideline();
    }
}
