package wallplate.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.Enrolment;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.ownership.Share;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;

/** The pages of classes and learners: what they show, and what they answer where a person got something wrong. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:class-pages;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/class-pages",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class ClassPagesTest {

    private static final AtomicInteger NUMBER = new AtomicInteger();

    @Autowired
    private MockMvc pages;

    @Autowired
    private Classes classes;

    @Autowired
    private ClassLists lists;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Tasks tasks;

    private SchoolClass schoolClass;
    private String address;

    @BeforeEach
    void aClassOfTwo() {
        schoolClass = classes.add("11-" + NUMBER.incrementAndGet(), new SchoolYear("2026/27")).orElseThrow();
        lists.take(schoolClass, "Ada Nkosi,1041\nBo Lind,1042\n".getBytes(StandardCharsets.UTF_8));
        address = "/classes/" + schoolClass.id();
    }

    @Test
    void makesAClassOrSaysWhatIsWrongWithIt() throws Exception {
        pages.perform(get("/classes")).andExpect(content().string(containsString(schoolClass.name())));
        pages.perform(get("/classes/new")).andExpect(status().isOk());
        pages.perform(post("/classes").param("name", "9C").param("year", "2026/28"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("2026/28"), containsString("value=\"9C\""))));
        pages.perform(post("/classes").param("name", schoolClass.name()).param("year", "2026/27"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("has a class of that name already")));
        pages.perform(get("/classes/999999")).andExpect(status().isNotFound());
    }

    @Test
    void keepsTheTypedListWhereALineIsWrong() throws Exception {
        pages.perform(multipart(address + "/list").param("list", "Cem,1\nDora,1\n"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(
                        containsString("Line 2: The candidate number &quot;1&quot; stands in line 1 too."),
                        containsString("Dora,1"))));
        pages.perform(multipart(address + "/list")
                        .file(new MockMultipartFile(
                                "listFile", "list.csv", "text/csv", "Cem,1043".getBytes(StandardCharsets.UTF_8))))
                .andExpect(flash().attribute("done", containsString("1 added, 0 changed, 0 as before.")));
    }

    @Test
    void handsTheListOut() throws Exception {
        pages.perform(get(address + "/list.csv"))
                .andExpect(header().string("Content-Disposition", containsString(".csv")))
                .andExpect(content().string(containsString("Ada Nkosi,1041")));
        byte[] workbook = pages.perform(get(address + "/list.xlsx"))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        assertThat(new String(workbook, 0, 2, StandardCharsets.US_ASCII)).isEqualTo("PK");
    }

    @Test
    void movesWhoIsTickedAndAsksWhereNobodyIs() throws Exception {
        SchoolClass other = classes.add("12-" + NUMBER.incrementAndGet(), new SchoolYear("2027/28")).orElseThrow();
        Enrolment ada = lists.present(schoolClass.id()).get(0);
        pages.perform(post(address + "/move").param("to", Long.toString(other.id())))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose at least one learner")));
        pages.perform(post(address + "/move").param("learner", Long.toString(ada.id())))
                .andExpect(status().isUnprocessableContent());

        pages.perform(post(address + "/move")
                        .param("learner", Long.toString(ada.id()))
                        .param("to", Long.toString(other.id())))
                .andExpect(redirectedUrl(address));

        pages.perform(get(address)).andExpect(content().string(containsString("Who was here")));
        pages.perform(get("/learners/" + ada.id()))
                .andExpect(content().string(allOf(containsString(schoolClass.name()), containsString(other.name()))));
        pages.perform(post(address + "/move").param("everybody", "true").param("to", "none"))
                .andExpect(redirectedUrl(address));
        assertThat(lists.present(schoolClass.id())).isEmpty();
    }

    @Test
    void makesASetOfAClassWhoseListIsChangedAtTheClass() throws Exception {
        KeptTask task = tasks.add(DrawnSheets.aTask());
        pages.perform(post(address + "/sets")).andExpect(status().isUnprocessableContent());
        pages.perform(post(address + "/sets").param("task", Long.toString(task.id())))
                .andExpect(status().is3xxRedirection());
        long set = classSets.ofClass(schoolClass.id(), Share.everything()).get(0).id();

        pages.perform(get("/class-sets/" + set + "/learners"))
                .andExpect(content().string(allOf(containsString("Change the list of"), not(containsString("Take this list")))));
        pages.perform(post("/class-sets/" + set + "/class-list").param("classList", "Eve"))
                .andExpect(redirectedUrl(address));
        assertThat(lists.present(schoolClass.id())).extracting(Enrolment::name).containsExactly("Ada Nkosi", "Bo Lind");
    }

    @Test
    void goesByNumbersWhereEverybodyHasOne() throws Exception {
        pages.perform(post(address + "/shown").param("numbers", "true")).andExpect(redirectedUrl(address));
        assertThat(classes.find(schoolClass.id()).orElseThrow().numbersShown()).isTrue();

        long ada = lists.present(schoolClass.id()).get(0).id();
        pages.perform(post("/learners/" + ada).param("name", "Ada").param("number", ""))
                .andExpect(status().isUnprocessableContent());
        pages.perform(post("/learners/" + ada).param("name", "Ada").param("number", "1042"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("belongs to Bo Lind")));
        pages.perform(post("/learners/" + ada).param("name", "Ada N.").param("number", "1050"))
                .andExpect(redirectedUrl("/learners/" + ada));
    }
}
