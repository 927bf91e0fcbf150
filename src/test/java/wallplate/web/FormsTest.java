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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Verdict;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.MarkEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.report.PagePicture;

/** What a person may get wrong on a page: a clear answer, nothing lost. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:forms;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/forms",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
@Import(KeptSheets.class)
class FormsTest {

    @Autowired
    private MockMvc pages;

    @Autowired
    private Tasks tasks;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private ScanFiles files;

    @Autowired
    private Sheets sheets;

    @Autowired
    private ScanStore store;

    @Autowired
    private KeptSheets keptSheets;

    private KeptTask task;
    private ClassSet classSet;

    @BeforeEach
    void aTaskAndAClassSet() {
        task = tasks.add(DrawnSheets.aTask());
        classSet = classSets.add("Set", "11B", List.of(new ClassListEntry("Ada", "")), task, false);
    }

    @Test
    void asksForTheClassAndKeepsTheListThatWasTyped() throws Exception {
        pages.perform(multipart("/class-sets")
                        .param("task", Long.toString(task.id()))
                        .param("className", " ")
                        .param("classList", "Ada Nkosi"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("Give the class a name"), containsString("Ada Nkosi"))));
    }

    @Test
    void noticesEmptyFilesFilesThatAreHereAndFilesThatAreNoScans() throws Exception {
        String scan = "BM a picture of its own for set " + classSet.id();
        pages.perform(multipart("/class-sets/" + classSet.id() + "/scans").file(file("scans", "one.bmp", scan)))
                .andExpect(redirectedUrl("/class-sets/" + classSet.id()))
                .andExpect(flash().attribute("done", containsString("1 file was taken in")));

        pages.perform(multipart("/class-sets/" + classSet.id() + "/scans")
                        .file(file("scans", "../../again.bmp", scan))
                        .file(file("scans", "empty.png", ""))
                        .file(file("scans", "letter.png", "dear teacher")))
                .andExpect(flash().attribute(
                        "wrong",
                        allOf(
                                containsString("not taken twice: again.bmp."),
                                containsString("left out: empty.png."),
                                containsString("Not taken, letter.png: This file holds text"))));
        assertThat(files.of(classSet.id())).hasSize(1);
    }

    @Test
    void takesAFileInPartsAndSaysFromWhereToGoOn() throws Exception {
        String scan = "BM a picture that comes in parts for set " + classSet.id();
        String upload = "%032x".formatted(classSet.id());
        part(upload, scan, 0, 30).andExpect(jsonPath("$.received").value(30)).andExpect(jsonPath("$.state").value("more"));
        part(upload, scan, 0, 30).andExpect(jsonPath("$.received").value(30));
        part(upload, scan, 35, 40).andExpect(jsonPath("$.received").value(30));
        pages.perform(get("/class-sets/" + classSet.id() + "/scans/parts").param("upload", upload))
                .andExpect(jsonPath("$.received").value(30));
        assertThat(files.of(classSet.id())).isEmpty();

        part(upload, scan, 30, scan.length()).andExpect(jsonPath("$.state").value("taken"));

        assertThat(files.of(classSet.id())).extracting(file -> file.sizeBytes()).containsExactly((long) scan.length());
        pages.perform(get("/class-sets/" + classSet.id() + "/scans/parts").param("upload", upload))
                .andExpect(jsonPath("$.state").value("taken"));
        part("a".repeat(32), scan, 0, scan.length()).andExpect(jsonPath("$.state").value("same"));
    }

    @Test
    void saysAtTheFirstPartWhatIsWrongWithAFile() throws Exception {
        part("b".repeat(32), "dear teacher", 0, 12)
                .andExpect(status().isUnsupportedMediaType())
                .andExpect(jsonPath("$.said").value(containsString("holds text")));
        pages.perform(multipart("/class-sets/" + classSet.id() + "/scans/parts")
                        .file(file("part", "big.pdf", "%PDF-1.4"))
                        .param("upload", "c".repeat(32))
                        .param("name", "big.pdf")
                        .param("size", "300000000")
                        .param("offset", "0"))
                .andExpect(status().isContentTooLarge())
                .andExpect(jsonPath("$.said").value(containsString("up to 200 MB")));
        pages.perform(get("/class-sets/" + classSet.id() + "/scans/parts").param("upload", "../../etc"))
                .andExpect(status().isNotFound());
    }

    private ResultActions part(String upload, String scan, int from, int to) throws Exception {
        return pages.perform(multipart("/class-sets/" + classSet.id() + "/scans/parts")
                .file(file("part", "part", scan.substring(from, to)))
                .param("upload", upload)
                .param("name", "folder/one.bmp")
                .param("size", Integer.toString(scan.length()))
                .param("offset", Integer.toString(from)));
    }

    @Test
    void givesASheetToTheLearnerTypedAndSaysWhatDoesNotFit() throws Exception {
        ClassSet set = classSets.add(
                "Set",
                "11B",
                List.of(
                        new ClassListEntry("Ada Nkosi", "101"),
                        new ClassListEntry("Adam Bell", "102"),
                        new ClassListEntry("Cem Aydin", "")),
                task,
                false);
        long first = sheetOf(set, "first");
        long second = sheetOf(set, "second");
        String address = "/class-sets/" + set.id() + "/sheets/" + first + "/learner";

        pages.perform(post(address).param("learner", "ada").header("HX-Request", "true"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(
                        containsString("fits 2 learners: Ada Nkosi (101), Adam Bell (102)"),
                        containsString("value=\"ada\""))));
        pages.perform(post(address).param("learner", "nobody like this"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Nobody in the class list is called")));
        pages.perform(post(address).param("learner", "aydin")).andExpect(redirectedUrl("/class-sets/" + set.id() + "#sheet-" + first));

        assertThat(sheets.of(set.id())).extracting(SheetEntry::label).containsExactly("Cem Aydin", "Ada Nkosi");
        pages.perform(post("/class-sets/" + set.id() + "/learners")
                        .param("learner-" + first, "102")
                        .param("learner-" + second, "Adam Bell (102)"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Stands at sheet 1 already")));
        pages.perform(post("/class-sets/" + set.id() + "/learners")
                        .param("learner-" + first, "102")
                        .param("learner-" + second, ""))
                .andExpect(flash().attribute("done", "2 sheets have other learners now."));
        assertThat(sheets.of(set.id())).extracting(SheetEntry::label).containsExactly("Adam Bell", "second.png");
    }

    @Test
    void showsTwoSheetsOfOneLearnerAndLearnersWithout() throws Exception {
        ClassSet set = classSets.add(
                "Set", "11B", List.of(new ClassListEntry("Ada Nkosi", ""), new ClassListEntry("Bo Lind", "")), task, false);
        sheetOf(set, "ada nkosi 1");
        sheetOf(set, "ada nkosi 2");
        sheets.of(set.id()).forEach(sheet -> sheets.refuse(sheet.id(), "no bar", "{}"));

        pages.perform(get("/class-sets/" + set.id()))
                .andExpect(content().string(allOf(
                        containsString("Two sheets say <strong>Ada Nkosi</strong>"),
                        containsString("Without a sheet: <span>Bo Lind</span>"))));
    }

    private long sheetOf(ClassSet set, String name) {
        String hash = "%064x".formatted(Math.abs(name.hashCode()));
        return sheets.page(files.add(set.id(), name + ".png", hash, 9).orElseThrow().id(), 1).id();
    }

    @Test
    void sendsPicturesInTilesThatTheBrowserKeeps() throws Exception {
        byte[] page = PagePicture.full(DrawnSheets.aSheet(task.task(), "a.png", 1).levelPage().ink());
        String name = store.put(new ByteArrayInputStream(page)).name();
        String tile = "/pictures/" + name + "/tiles/2-1.png";

        String tag = pages.perform(get(tile))
                .andExpect(header().string("Cache-Control", containsString("immutable")))
                .andExpect(content().contentType(MediaType.IMAGE_PNG))
                .andReturn()
                .getResponse()
                .getHeader("ETag");

        pages.perform(get(tile).header("If-None-Match", tag)).andExpect(status().isNotModified());
        pages.perform(get("/pictures/" + name + "/tiles/6-0.png")).andExpect(status().isNotFound());
        pages.perform(get("/pictures/" + "0".repeat(64) + "/tiles/0-0.png"))
                .andExpect(status().isNotFound())
                .andExpect(content().string(allOf(containsString("no longer kept"), containsString("What you typed"))));
    }

    @Test
    void saysThatNoFileWasChosen() throws Exception {
        pages.perform(multipart("/class-sets/" + classSet.id() + "/scans"))
                .andExpect(flash().attribute("wrong", "No file was chosen."));
    }

    @Test
    void namesEveryFaultOfATaskFileAndKeepsItsText() throws Exception {
        String faulty = DrawnSheets.aTaskFile()
                .replace("pitch: 24", "pitch: 90")
                .replace("overhang: 460", "overhang: -4")
                .replace("\"1:20\"", "1:20");

        pages.perform(multipart("/tasks/import").param("text", faulty))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(
                                containsString("<li>pitch: "),
                                containsString("<li>rafter.overhang: "),
                                containsString("<li>scale: "),
                                containsString("id: lookout-eaves"))));
    }

    /** The form says the words that stand at its fields, and not the keys of a task file. */
    @Test
    void namesAFaultAsItsFieldIsNamed() throws Exception {
        pages.perform(post("/tasks/preview")
                        .param("detail", "eaves-section")
                        .param("scale", "1:20")
                        .param("eaves", "left")
                        .param("sheet.size", "A9")
                        .param("sheet.orientation", "landscape")
                        .param("sheet.reference-bar", "100")
                        .param("pitch", "26")
                        .param("rafter.overhang", "abc"))
                .andExpect(content()
                        .string(allOf(
                                containsString("<li>Rafter, overhang: found abc; accepted: "),
                                containsString("<li>Paper: found A9; accepted: "),
                                not(containsString("rafter.overhang")))));
    }

    @Test
    void worksOutSizesTakenFromAPlan() throws Exception {
        // Common practice, no source: 104 mm on a 1:50 plan are 5200 mm, drawn 260 mm long at 1:20.
        pages.perform(get("/tasks/" + task.id()).param("plan", "1:50").param("lengths", "104 62,5"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("104 x 50 = 5200 mm; 5200 / 20 = 260 mm"),
                                containsString("62.5 x 50 = 3125 mm; 3125 / 20 = 156.25 mm"),
                                not(containsString("id=\"plan-faults\"")))));
    }

    @Test
    void namesWhatItCannotReadOfAPlanAndKeepsIt() throws Exception {
        pages.perform(get("/tasks/" + task.id()).param("plan", "1-50").param("lengths", "104 wide -3"))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("found “1-50”"),
                                containsString("Found “wide”"),
                                containsString("Found “-3”"),
                                containsString("value=\"104 wide -3\""))));
    }

    @Test
    void showsWhatAKnownSlipWouldMakeOfASize() throws Exception {
        // The lookout's pitch is 24 degrees; read off the other row of the protractor it is 90 - 24 = 66.
        pages.perform(get("/tasks/" + task.id()))
                .andExpect(content().string(allOf(containsString("What learners get wrong"), containsString("66°"))));
    }

    @Test
    void showsAFaultAtItsFieldOfTheTaskForm() throws Exception {
        pages.perform(post("/tasks")
                        .param("detail", "eaves-section")
                        .param("title", "Shed")
                        .param("scale", "1:20")
                        .param("eaves", "left")
                        .param("sheet.size", "A4")
                        .param("sheet.orientation", "landscape")
                        .param("pitch", "ninety"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("href=\"#pitch\""), containsString("value=\"ninety\""))));
    }

    @Test
    void keepsATaskThroughTheFormWithoutLoss() throws Exception {
        pages.perform(get("/tasks/" + task.id() + "/task.yml")).andExpect(content().string(task.yaml()));
    }

    @Test
    void asksForAReasonBeforeAMarkIsChanged() throws Exception {
        SheetEntry sheet = aReadSheet();
        MarkEntry met = sheets.marks(sheet.id()).stream()
                .filter(mark -> mark.verdict() == Verdict.MET)
                .findFirst()
                .orElseThrow();
        String address = "/sheets/" + sheet.id() + "/marks/" + met.criterion();

        pages.perform(post(address).param("verdict", "not-met").param("awarded", "0"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Say in a few words why")));
        pages.perform(post(address).param("verdict", "not-met").param("awarded", "7").param("reason", "x"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Marks found: &quot;7&quot;")));
        pages.perform(post(address).param("verdict", "not-met").param("reason", "rubbed out"))
                .andExpect(redirectedUrl("/sheets/" + sheet.id() + "#" + met.criterion()));
        assertThat(sheets.marks(sheet.id())).filteredOn(MarkEntry::isChanged).hasSize(1);
    }

    @Test
    void saysWhatTheGuidelineGaveWhereAMarkWasSetByHand() throws Exception {
        SheetEntry sheet = keptSheets.read(classSet, "a.png", aSheetWithSomethingOpen());
        pages.perform(get("/class-sets/" + classSet.id()))
                .andExpect(content().string(containsString("1 of them still needs you.")));

        for (Verdict verdict : List.of(Verdict.UNDECIDED, Verdict.MET)) {
            MarkEntry mark = sheets.marks(sheet.id()).stream()
                    .filter(one -> one.guidelineVerdict() == verdict)
                    .findFirst()
                    .orElseThrow();
            pages.perform(post("/sheets/" + sheet.id() + "/marks/" + mark.criterion())
                            .param("verdict", "not-met")
                            .param("reason", "looked at it"))
                    .andExpect(status().is3xxRedirection());
        }

        pages.perform(get("/sheets/" + sheet.id()))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(
                        containsString("The guideline left it to the teacher."), containsString("The guideline gave <span>1 (met)."))));
    }

    private AssessedSheet.Read aSheetWithSomethingOpen() {
        return IntStream.rangeClosed(1, 50)
                .mapToObj(seed -> DrawnSheets.aSheet(task.task(), "a.png", seed))
                .filter(sheet -> sheet.marked().marks().stream().anyMatch(mark -> mark.verdict() == Verdict.UNDECIDED))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void givesTheMarkSheetWithTheMarksAsTheyStand() throws Exception {
        SheetEntry sheet = aReadSheet();

        pages.perform(get("/class-sets/" + classSet.id() + "/mark-sheet.csv"))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("name,scan"), containsString("Ada,a.png"))));
        pages.perform(get("/sheets/" + sheet.id() + "/result.json"))
                .andExpect(jsonPath("$.total.awarded").value(sheet.awarded()));
    }

    @Test
    void tellsALearnerWhatIsWrongWithCodeOrPhotograph() throws Exception {
        pages.perform(post("/check").param("code", "zzz")).andExpect(status().isUnprocessableContent());
        pages.perform(multipart("/check/" + task.learnerCode()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose or take a photograph")));
        pages.perform(multipart("/check/" + task.learnerCode()).file(file("photograph", "me.png", "no picture")))
                .andExpect(status().isUnprocessableContent());
        assertThat(sheets.of(classSet.id())).isEmpty();
    }

    @Test
    void answersAnAddressThatLeadsNowhereWithAPlainPage() throws Exception {
        pages.perform(get("/sheets/999999"))
                .andExpect(status().isNotFound())
                .andExpect(content().string(containsString("There is no sheet 999999.")));
        pages.perform(get("/sheets/none")).andExpect(status().isNotFound());
        pages.perform(get("/no/such/page")).andExpect(status().isNotFound());
    }

    /** Content Security Policy Level 3: without 'unsafe-inline', scripts and styles inside a page do not run. */
    @ParameterizedTest
    @ValueSource(strings = {"/", "/tasks", "/tasks/new", "/class-sets", "/class-sets/new", "/check", "/help"})
    void runsNothingInsideAPageAndLoadsNothingFromElsewhere(String address) throws Exception {
        String page = pages.perform(get(address))
                .andExpect(header().string(
                                "Content-Security-Policy",
                                allOf(containsString("default-src 'none'"), not(containsString("unsafe")))))
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);

        assertThat(page).doesNotContainPattern("<script(?![^>]*\\ssrc=)");
        assertThat(page).doesNotContainPattern("\\s(style|on[a-z]+)=\"");
        assertThat(page.replace("http://www.w3.org/2000/svg", "")).doesNotContain("http://", "https://", "src=\"//");
    }

    private SheetEntry aReadSheet() {
        return keptSheets.read(classSet, "a.png", DrawnSheets.aSheet(task.task(), "a.png", 1));
    }

    private static MockMultipartFile file(String field, String name, String content) {
        return new MockMultipartFile(field, name, "application/octet-stream", content.getBytes(StandardCharsets.UTF_8));
    }
}
