package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.analysis.FollowUpGroup;
import wallplate.marking.Verdict;
import wallplate.ownership.Share;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.MarkEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** What to teach again: how values lie, who missed what, and exercises for groups. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:teach-again;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/teach-again",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(DecidedSets.class)
class TeachAgainTest {

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private DecidedSets decided;

    private static long seed = 1;
    private ClassSet classSet;
    private String page;

    @BeforeEach
    void aSet() {
        classSet = decided.aSet(tasks.add(DrawnSheets.aTask()), 8, seed++);
        page = "/class-sets/" + classSet.id() + "/teach-again";
    }

    @Test
    void countsHowManyMetEachCriterion() throws Exception {
        MarkEntry missed = sheets.marksOfSet(classSet.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.NOT_MET)
                .findFirst()
                .orElseThrow();
        long number = sheets.marksOfSet(classSet.id(), missed.criterion()).stream()
                .filter(mark -> mark.verdict() == Verdict.NOT_MET)
                .count();

        String html = pages.perform(get(page)).andReturn().getResponse().getContentAsString();

        Matcher row = Pattern.compile(
                        "#lesson-" + missed.criterion() + "\".*?<td class=\"number\">(\\d+)</td>"
                                + "<td class=\"number\">(\\d+)</td><td class=\"number\">(\\d+)</td>",
                        Pattern.DOTALL)
                .matcher(html);
        assertThat(row.find()).isTrue();
        assertThat(Long.parseLong(row.group(3))).isEqualTo(number);
    }

    @Test
    void putsASignOfEachVerdictAtEachMeasuredValue() throws Exception {
        List<MarkEntry> marks = sheets.marksOfSet(classSet.id(), "fascia-depth");
        decided.change(marks.get(0), Verdict.NOT_MET, 0);

        String html = pages.perform(get(page)).andReturn().getResponse().getContentAsString();
        String lesson = html.substring(html.indexOf("id=\"lesson-fascia-depth\""));
        lesson = lesson.substring(0, lesson.indexOf("</section>"));

        long measured = marks.stream().filter(mark -> mark.reading().measured().isPresent()).count();
        Matcher paths = Pattern.compile("class=\"sign [a-z-]+\" d=\"([^\"]+)\"").matcher(lesson);
        long signs = paths.results().mapToLong(path -> path.group(1).chars().filter(each -> each == 'M').count()).sum();
        assertThat(signs).isEqualTo(measured);
        Matcher counts = Pattern.compile("<td class=\"number\">(\\d+)</td><td class=\"number\">\\d+</td></tr>").matcher(lesson);
        assertThat(counts.results().mapToLong(count -> Long.parseLong(count.group(1))).sum()).isEqualTo(measured);
    }

    @Test
    void makesAnExerciseForAGroupAndPrintsItsSheets() throws Exception {
        FollowUpGroup group = FollowUpGroup.of(sheets.of(classSet.id()), sheets.marksOfSet(classSet.id()))
                .get(0);
        String ofGroup = page + "/" + group.part();
        pages.perform(get(ofGroup + "/sheets.pdf")).andExpect(status().isNotFound());

        pages.perform(post(ofGroup)).andExpect(redirectedUrl(page + "#group-" + group.part()));
        pages.perform(post(ofGroup)).andExpect(status().is3xxRedirection());

        List<ClassSet> made = classSets.ofClass(classSet.classId(), Share.everything());
        assertThat(made).hasSize(2);
        assertThat(made.get(0).task().id()).isEqualTo(classSet.task().id() + "-again-" + group.part());
        assertThat(made.get(0).task().sizes()).isNotEqualTo(classSet.task().sizes());
        pages.perform(get(page))
                .andExpect(content().string(containsString(ofGroup + "/sheets.pdf")))
                .andExpect(content().string(not(containsString("action=\"" + ofGroup + "\""))));

        byte[] pdf = pages.perform(get(ofGroup + "/sheets.pdf"))
                .andExpect(content().contentType("application/pdf"))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(group.members().size());
            String text = new PDFTextStripper().getText(document);
            assertThat(text).contains("Look at this time:");
            group.members().forEach(member -> assertThat(text).contains(member.sheet().label()));
        }
    }

    @Test
    void saysThatAGroupIsGone() throws Exception {
        pages.perform(post(page + "/chimney")).andExpect(status().isNotFound());
    }
}
