package wallplate.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.lang.annotation.Annotation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import wallplate.accounts.Account;
import wallplate.accounts.Accounts;
import wallplate.accounts.Role;
import wallplate.audit.AuditTrail;
import wallplate.moderation.Moderation;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.HeldConnections;
import wallplate.records.KeptTask;
import wallplate.records.Learner;
import wallplate.records.Tasks;
import wallplate.web.DecidedSets;

/**
 * Walks every address that names a record with everybody who could ask for it: the teacher whose it is, another one, the
 * head of department, the moderator with and without the sample, the administrator, and a visitor.
 */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:ownership;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/ownership",
            "wallplate.demonstration.enabled=false",
            "wallplate.demonstration.open=true"
        })
@AutoConfigureMockMvc
@Import({DecidedSets.class, Departments.class, HeldConnections.class})
class OwnershipTest {

    private static final String NOT_THERE = "There is nothing here that is open to you";

    @Autowired
    private MockMvc pages;

    @Autowired
    private RequestMappingHandlerMapping mappings;

    @Autowired
    private Accounts accounts;

    @Autowired
    private Belongings belongings;

    @Autowired
    private Reach reach;

    @Autowired
    private Departments departments;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private FeedbackCodes codes;

    @Autowired
    private AuditTrail trail;

    @Autowired
    private HeldConnections connections;

    private int number;
    private Account keller;
    private Account brandt;
    private Account head;
    private Account second;
    private Account otherSecond;
    private Account administrator;
    private Map<Kind, String> records;
    private ClassSet set;
    private Moderation sample;
    private KeptTask task;

    @BeforeEach
    void aDepartment() {
        Department made = departments.make();
        number = made.number();
        keller = made.keller();
        brandt = made.brandt();
        head = made.head();
        second = made.second();
        otherSecond = made.otherSecond();
        administrator = made.administrator();
        task = made.task();
        set = made.set();
        sample = made.sample();
        records = made.records();
    }

    @AfterEach
    void noPageTookASecondConnectionWhileItHeldOne() {
        assertThat(connections.takenBesideAnother()).isEmpty();
    }

    /** Rules about records, whoever is in the table of roles. */
    private static List<Rule> rulesAboutRecords() {
        return Addresses.RULES.stream()
                .filter(rule -> !rule.isOpen() && rule.pattern().contains("{") && !rule.pattern().startsWith("/accounts/"))
                .toList();
    }

    @Test
    void everyVariableOfAnAddressNamesARecordOrAPartOfOne() {
        assertThat(rulesAboutRecords()).hasSizeGreaterThan(80).allSatisfy(rule -> {
            Optional<Subject> subject = Subjects.of(rule);
            assertThat(subject).as("%s has a record", rule.pattern()).isPresent();
            Set<String> others = variables(rule.pattern());
            assertThat(others.remove(subject.get().name())).as("%s names it", rule.pattern()).isTrue();
            assertThat(Subjects.PARTS).as("parts of %s", rule.pattern()).containsAll(others);
        });
        assertThat(Addresses.RULES.stream().filter(rule -> rule.isOpen() && rule.pattern().contains("{")))
                .allSatisfy(rule -> assertThat(Set.of("code", "token")).containsAll(variables(rule.pattern())));
    }

    private static Set<String> variables(String pattern) {
        Set<String> names = new TreeSet<>();
        Matcher found = Pattern.compile("\\{([a-zA-Z]\\w*)").matcher(pattern);
        while (found.find()) {
            names.add(found.group(1));
        }
        return names;
    }

    @Test
    void everyPartOfTheTableConcernsAnAddress() {
        List<Subject> all = new ArrayList<>(Subjects.IN_ADDRESSES);
        all.addAll(Subjects.SENT_ALONG);
        assertThat(all).allSatisfy(subject ->
                assertThat(Addresses.RULES.stream().filter(subject::concerns)).as("%s", subject).isNotEmpty());
    }

    /** Numbers that pages take as fields: a new one is either a record's, or stands here as none. */
    @Test
    void everyNumberThatIsSentAlongIsKnown() {
        Set<String> noRecords = Set.of(
                "POST /tasks/{id}/variants seed",
                "GET /audit before",
                "POST /class-sets/{id}/scans/parts size",
                "POST /class-sets/{id}/scans/parts offset",
                // Tasks are everybody's to use; learners only count where they are in the class that the address names.
                "POST /classes/{id}/sets task",
                "GET /class-sets/new task",
                "POST /classes/{id}/move learner",
                // Accounts, looked up among teachers.
                "POST /handover to",
                "POST /classes/{id}/owner to",
                "POST /class-sets/{id}/owner to",
                "POST /tasks/{id}/owner to",
                "POST /mark-sheets/{id}/owner to");
        Set<String> unknown = new TreeSet<>();
        mappings.getHandlerMethods().forEach((mapping, handler) -> Arrays.stream(handler.getMethodParameters())
                .filter(parameter -> parameter.hasParameterAnnotation(RequestParam.class))
                .filter(parameter -> parameter.getGenericParameterType().getTypeName().matches("long|.*java\\.lang\\.Long>?"))
                .forEach(parameter -> {
                    Annotation annotation = parameter.getParameterAnnotation(RequestParam.class);
                    String named = ((RequestParam) annotation).name();
                    String name = named.isEmpty() ? parameter.getParameter().getName() : named;
                    mapping.getPatternValues().forEach(pattern -> mapping.getMethodsCondition().getMethods().forEach(method -> {
                        boolean known = Subjects.SENT_ALONG.stream()
                                .anyMatch(subject -> subject.beginning().equals(pattern) && subject.name().equals(name));
                        if (!known) {
                            unknown.add(method + " " + pattern + " " + name);
                        }
                    }));
                }));
        assertThat(unknown).isSubsetOf(noRecords);
    }

    @Test
    void everythingIsOpenToTheTeacherWhoseItIsAsFarAsTeachersGo() {
        for (Rule rule : rulesAboutRecords()) {
            assertThat(opens(rule, keller, records)).as("%s %s", rule.method(), rule.pattern())
                    .isEqualTo(rule.roles().contains(Role.TEACHER));
        }
    }

    @Test
    void anotherTeacherReachesNothingButTheDepartmentsTasks() throws Exception {
        for (Rule rule : rulesAboutRecords()) {
            boolean isTask = rule.pattern().startsWith("/tasks/{id}")
                    && rule.method().equals(HttpMethod.GET)
                    && !rule.pattern().endsWith("/edit");
            if (isTask) {
                assertThat(opens(rule, brandt, records)).as("%s", rule.pattern()).isTrue();
            } else {
                assertRefused(rule, brandt, rule.roles().contains(Role.TEACHER) ? 404 : 403);
            }
        }
        assertThat(trail.page(Long.MAX_VALUE, "/class-sets/" + set.id() + "/release", 5)).singleElement().satisfies(entry -> {
            assertThat(entry.act()).isEqualTo("reach-refused");
            assertThat(entry.person()).isEqualTo(brandt.name());
        });
        assertThat(classSets.find(set.id()).orElseThrow().releasedAt()).isEmpty();
    }

    @Test
    void theHeadReachesWhatTheTableSaysOfEverybody() throws Exception {
        for (Rule rule : rulesAboutRecords()) {
            if (rule.roles().contains(Role.HEAD)) {
                assertThat(opens(rule, head, records)).as("%s", rule.pattern()).isTrue();
            } else {
                assertRefused(rule, head, 403);
            }
        }
    }

    @Test
    void theModeratorReachesTheSampleThatIsGivenAndItsPictures() throws Exception {
        for (Rule rule : rulesAboutRecords()) {
            boolean isSamples = rule.pattern().startsWith("/pictures/")
                    || rule.pattern().matches("/moderations/\\{id}(/sheets/\\{place}|/hand-in)?");
            if (isSamples) {
                assertThat(opens(rule, second, records)).as("%s", rule.pattern()).isTrue();
                assertRefused(rule, otherSecond, 404);
            } else {
                assertRefused(rule, second, 403);
            }
        }
    }

    @Test
    void theAdministratorReachesNoRecord() throws Exception {
        for (Rule rule : rulesAboutRecords()) {
            assertRefused(rule, administrator, 403);
        }
    }

    @Test
    void aVisitorIsAskedToSignInForEverybodysRecords() throws Exception {
        for (Rule rule : rulesAboutRecords()) {
            MvcResult answer = pages.perform(asked(rule, records).accept("text/html")).andReturn();
            assertThat(answer.getHandler()).as("%s %s", rule.method(), rule.pattern()).isNull();
            assertThat(answer.getResponse().getRedirectedUrl()).as("%s", rule.pattern()).startsWith("/sign-in");
        }
    }

    @Test
    void aVisitorReadsTheDemonstrationAndChangesNothing() throws Exception {
        Map<Kind, String> invented = demonstration();
        int read = 0;
        for (Rule rule : rulesAboutRecords()) {
            Optional<String> id = Subjects.of(rule).map(Subject::kind).map(invented::get);
            if (id.isEmpty()) {
                continue;
            }
            boolean reads = rule.method().equals(HttpMethod.GET)
                    && rule.roles().containsAll(Set.of(Role.TEACHER, Role.HEAD));
            MvcResult answer = pages.perform(asked(rule, invented).accept("text/html", "*/*")).andReturn();
            if (reads) {
                read++;
                assertThat(answer.getHandler()).as("%s", rule.pattern()).isNotNull();
                assertThat(answer.getResponse().getStatus()).as("%s", rule.pattern()).isNotIn(401, 403);
                assertThat(opens(rule, brandt, invented)).as("%s as a teacher", rule.pattern()).isTrue();
            } else {
                assertThat(answer.getHandler()).as("%s %s", rule.method(), rule.pattern()).isNull();
                assertThat(answer.getResponse().getRedirectedUrl()).as("%s", rule.pattern()).startsWith("/sign-in");
                boolean isSharedTask = rule.pattern().startsWith("/tasks/{id}") && rule.method().equals(HttpMethod.GET)
                        && !rule.pattern().endsWith("/edit");
                assertThat(opens(rule, brandt, invented)).as("%s as a teacher", rule.pattern()).isEqualTo(isSharedTask);
            }
        }
        assertThat(read).isGreaterThan(25);
        for (String list : List.of("/", "/today/standing", "/class-sets", "/tasks", "/classes", "/mark-sheets")) {
            String page = pages.perform(get(list)).andExpect(status().isOk()).andReturn().getResponse().getContentAsString();
            assertThat(page).as(list).doesNotContain("/class-sets/" + set.id() + "\"").doesNotContain("11B-" + number);
        }
        assertThat(body(pages.perform(get("/class-sets")))).contains("/class-sets/" + invented.get(Kind.CLASS_SET) + "\"");
        assertThat(body(pages.perform(get("/")))).contains("You are looking around").doesNotContain("/class-sets/new");
        for (String closed : List.of("/audit", "/privacy", "/accounts", "/handover", "/account", "/class-sets/new", "/tasks/new")) {
            assertThat(pages.perform(get(closed).accept("text/html")).andReturn().getResponse().getRedirectedUrl())
                    .as(closed)
                    .startsWith("/sign-in");
        }
    }

    private Map<Kind, String> demonstration() {
        return departments.demonstration(3000 + number);
    }

    @Test
    void listsShowEverybodyTheirOwnShare() throws Exception {
        String setLink = "/class-sets/" + set.id() + "\"";
        String className = "11B-" + number;
        String markSheet = "/mark-sheets/" + records.get(Kind.MARK_SHEET) + "\"";
        for (Account sees : List.of(keller, head)) {
            assertThat(body(as(sees, get("/class-sets")))).contains(setLink);
            assertThat(body(as(sees, get("/classes")))).contains(className);
            assertThat(body(as(sees, get("/mark-sheets")))).contains(markSheet);
            assertThat(body(as(sees, get("/tasks/" + task.id())))).contains("Eaves, 11B");
        }
        assertThat(body(as(brandt, get("/class-sets")))).doesNotContain(setLink);
        assertThat(body(as(brandt, get("/classes")))).doesNotContain(className);
        assertThat(body(as(brandt, get("/mark-sheets")))).doesNotContain(markSheet);
        assertThat(body(as(brandt, get("/tasks/" + task.id())))).doesNotContain("Eaves, 11B");
        assertThat(body(as(brandt, get("/")))).doesNotContain("/class-sets/" + set.id());
        assertThat(body(as(second, get("/")))).contains("/moderations/" + sample.id()).doesNotContain("/class-sets/");
        assertThat(body(as(otherSecond, get("/")))).doesNotContain("/moderations/" + sample.id());
    }

    @Test
    void whatATeacherMakesIsTheTeachersOwn() throws Exception {
        String made = location(as(brandt, post("/class-sets")
                .param("task", Long.toString(task.id()))
                .param("className", "10A")
                .param("classListText", "Bo")));
        assertThat(made).startsWith("/class-sets/");
        assertOwn(Kind.CLASS_SET, made);
        String schoolClass = location(as(brandt, post("/classes").param("name", "10A-" + number).param("year", "2026/27")));
        assertOwn(Kind.CLASS, schoolClass);
        String ofClass = location(as(brandt, post(schoolClass + "/sets").param("task", Long.toString(task.id()))));
        assertOwn(Kind.CLASS_SET, ofClass);
        String classId = schoolClass.substring(schoolClass.lastIndexOf('/') + 1);
        String sheet = location(as(brandt, post("/mark-sheets")
                .param("class", classId)
                .param("term", "Term 1")
                .param("weight-" + ofClass.substring(ofClass.lastIndexOf('/') + 1), "1")));
        assertOwn(Kind.MARK_SHEET, sheet);
        String copy = location(as(brandt, post("/tasks/import").param("text", task.yaml())));
        assertOwn(Kind.TASK, copy);
        // A record of others named by a field is as closed as one that is named by the address.
        as(brandt, get("/mark-sheets/new").param("class", Long.toString(set.classId()))).andExpect(status().isNotFound());
        as(brandt, get("/tasks/" + task.id() + "/sheets.pdf").param("classSet", Long.toString(set.id())))
                .andExpect(status().isNotFound());
        as(brandt, post(schoolClass + "/move").param("everybody", "true").param("to", records.get(Kind.CLASS)))
                .andExpect(status().isNotFound());
    }

    private void assertOwn(Kind kind, String address) {
        String id = address.substring(address.lastIndexOf('/') + 1);
        assertThat(belongings.find(kind, id).orElseThrow().owners()).as(address).containsExactly(brandt.id());
    }

    @Test
    void theHeadHandsAClassOverAndWithItItsSets() throws Exception {
        long schoolClass = Long.parseLong(records.get(Kind.CLASS));
        ClassSet ofClass = classSets.addFor(schoolClass, "Eaves of the class", task);
        belongings.give(Kind.CLASS_SET, ofClass.id(), keller.id());
        as(keller, post("/classes/" + schoolClass + "/owner").param("to", Long.toString(brandt.id())))
                .andExpect(status().isForbidden());
        as(head, post("/classes/" + schoolClass + "/owner").param("to", Long.toString(second.id())))
                .andExpect(redirectedUrl("/classes/" + schoolClass));
        assertThat(belongings.find(Kind.CLASS, Long.toString(schoolClass)).orElseThrow().owners()).containsExactly(keller.id());

        as(head, post("/classes/" + schoolClass + "/owner").param("to", Long.toString(brandt.id())))
                .andExpect(redirectedUrl("/classes/" + schoolClass));

        as(brandt, get("/classes/" + schoolClass)).andExpect(status().isOk());
        as(brandt, get("/class-sets/" + ofClass.id())).andExpect(status().isOk());
        as(keller, get("/classes/" + schoolClass)).andExpect(status().isNotFound());
        as(keller, get("/class-sets/" + ofClass.id())).andExpect(status().isNotFound());
        assertThat(trail.page(Long.MAX_VALUE, "handed-over", 1).get(0)).satisfies(entry -> {
            assertThat(entry.act()).isEqualTo("handed-over " + brandt.id());
            assertThat(entry.person()).isEqualTo(head.name());
        });
    }

    @Test
    void theHeadHandsOverEverythingAndWhatIsNobodys() throws Exception {
        as(head, post("/handover").param("from", Long.toString(keller.id())).param("to", Long.toString(brandt.id())))
                .andExpect(redirectedUrl("/handover"));
        as(brandt, get("/class-sets/" + set.id())).andExpect(status().isOk());
        as(brandt, get("/learners/" + records.get(Kind.LEARNER))).andExpect(status().isOk());
        as(keller, get("/class-sets/" + set.id())).andExpect(status().isNotFound());

        ClassSet nobodys = departments.aSet(task, 5000 + number);
        as(keller, get("/class-sets/" + nobodys.id())).andExpect(status().isNotFound());
        as(head, get("/class-sets/" + nobodys.id())).andExpect(status().isOk());
        assertThat(body(as(head, get("/handover")))).contains("nobody", brandt.name()).doesNotContain(keller.name() + "</td>");
        as(head, post("/handover").param("from", "nobody").param("to", Long.toString(keller.id())))
                .andExpect(redirectedUrl("/handover"));
        as(keller, get("/class-sets/" + nobodys.id())).andExpect(status().isOk());
        as(head, post("/handover").param("from", "nobody").param("to", "")).andExpect(status().isUnprocessableContent());
    }

    @Test
    void firstMarksAreHiddenFromAHeadWhoIsToMarkTheSampleAgain() throws Exception {
        Account both = accounts.add("Head and second " + number, EnumSet.of(Role.HEAD, Role.MODERATOR)).orElseThrow();
        belongings.giveSample(sample.id(), both.id());
        List<String> withFirstMarks = List.of(
                "/class-sets/" + set.id(),
                "/class-sets/" + set.id() + "/mark-sheet.csv",
                "/sheets/" + records.get(Kind.SHEET),
                "/mark-sheets/" + records.get(Kind.MARK_SHEET),
                "/learners/" + records.get(Kind.LEARNER) + "/growth");
        for (String page : withFirstMarks) {
            as(both, get(page)).andExpect(status().isNotFound());
        }
        as(both, get("/moderations/" + sample.id() + "/sheets/1")).andExpect(status().isOk());
        decided.markAndHandIn(sample, 1);
        for (String page : withFirstMarks) {
            as(both, get(page)).andExpect(status().isOk());
        }
    }

    @Test
    void aSampleIsGivenToAnotherModeratorWhoDoesNotHaveTheSet() throws Exception {
        as(keller, post("/moderations/" + sample.id() + "/moderator").param("moderator", otherSecond.name()))
                .andExpect(redirectedUrl("/moderations/" + sample.id()));
        as(otherSecond, get("/moderations/" + sample.id())).andExpect(status().isOk());
        as(second, get("/moderations/" + sample.id())).andExpect(status().isNotFound());
        accounts.setRoles(keller.id(), EnumSet.of(Role.TEACHER, Role.MODERATOR));
        assertThat(body(as(accounts.find(keller.id()).orElseThrow(), get("/class-sets/" + set.id() + "/moderation"))))
                .contains(second.name())
                .doesNotContain("<option value=\"" + keller.name());
        as(keller, post("/class-sets/" + set.id() + "/moderation")
                        .param("choice", "at-random")
                        .param("unit", "sheets")
                        .param("size", "2")
                        .param("seed", "1")
                        .param("moderator", keller.name()))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void aLearnersCodeOpensTheOneSheetAndNothingElse() throws Exception {
        Map<Long, String> made = codes.make(set.id());
        classSets.release(set.id());
        String code = made.get(Long.parseLong(records.get(Kind.SHEET)));
        pages.perform(get("/feedback/" + code)).andExpect(status().isOk());
        for (Rule rule : rulesAboutRecords()) {
            MvcResult answer = pages.perform(asked(rule, records).accept("text/html").param("code", code)).andReturn();
            assertThat(answer.getHandler()).as("%s", rule.pattern()).isNull();
        }
        pages.perform(get("/feedback/" + "Z".repeat(code.length()))).andExpect(status().is4xxClientError());
    }

    private boolean opens(Rule rule, Account who, Map<Kind, String> ids) {
        MockHttpServletRequest request = new MockHttpServletRequest(rule.method().name(), address(rule, ids));
        assertThat(Addresses.ruleFor(request)).contains(rule);
        return rule.allows(Optional.of(who)) && reach.opens(rule, who, request);
    }

    private void assertRefused(Rule rule, Account who, int status) throws Exception {
        MvcResult answer = as(who, asked(rule, records)).andReturn();
        assertThat(answer.getHandler()).as("%s %s as %s", rule.method(), rule.pattern(), who.name()).isNull();
        assertThat(answer.getResponse().getStatus()).as("%s %s as %s", rule.method(), rule.pattern(), who.name()).isEqualTo(status);
        if (status == 404) {
            assertThat(answer.getResponse().getContentAsString()).contains(NOT_THERE);
        }
    }

    private ResultActions as(Account who, MockHttpServletRequestBuilder request) throws Exception {
        return pages.perform(request.with(authentication(new Acting(who))));
    }

    private static String body(ResultActions answer) throws Exception {
        return answer.andReturn().getResponse().getContentAsString();
    }

    private static String location(ResultActions answer) throws Exception {
        String address = answer.andReturn().getResponse().getRedirectedUrl();
        assertThat(address).as("an address to go on to").isNotNull();
        return address;
    }

    private static MockHttpServletRequestBuilder asked(Rule rule, Map<Kind, String> ids) {
        return request(rule.method(), address(rule, ids));
    }

    /** The address of a rule about the records at hand. */
    private static String address(Rule rule, Map<Kind, String> ids) {
        Subject subject = Subjects.of(rule).orElseThrow();
        return rule.pattern()
                .replaceAll("\\{" + subject.name() + "(:\\[0-9a-f]\\{64})?}", ids.getOrDefault(subject.kind(), "1"))
                .replaceAll("\\{(column|row):\\\\d}", "0")
                .replace("{criterion}", "plate")
                .replace("{part}", "plate")
                .replaceAll("\\{\\w+}", "1");
    }
}
