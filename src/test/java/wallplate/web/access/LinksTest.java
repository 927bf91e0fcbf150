package wallplate.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
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
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.util.UriComponentsBuilder;
import wallplate.accounts.Account;
import wallplate.ownership.Belongings;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.HeldConnections;
import wallplate.records.Sheets;
import wallplate.web.DecidedSets;

/**
 * Nobody is shown a link or a form that would be refused: each kind of person walks from page to page, and whatever a page offers is
 * held against the tables that refuse.
 */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:links;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/links",
            "wallplate.demonstration.enabled=false",
            "wallplate.demonstration.open=true"
        })
@AutoConfigureMockMvc
@Import({DecidedSets.class, Departments.class, HeldConnections.class})
class LinksTest {

    /** Where an address is told to the browser. */
    private static final List<String> ASKING = List.of("href", "src", "hx-get", "data-full", "data-previous", "data-next", "data-progress");

    private static final List<String> SENDING = List.of("hx-post");

    /** Pages of one kind that are looked at; more of them offer the same. */
    private static final int OF_ONE_KIND = 3;

    /** What leads whoever has no account to the page to sign in, which is where such a link should lead. */
    private static final Set<String> LEADS_TO_SIGN_IN = Set.of("/");

    @Autowired
    private MockMvc pages;

    @Autowired
    private Departments departments;

    @Autowired
    private DecidedSets decided;

    @Autowired
    private Belongings belongings;

    @Autowired
    private ClassSets classSets;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Reach reach;

    @Autowired
    private HeldConnections connections;

    private Department department;
    private final List<String> beginnings = new ArrayList<>();

    private record Offer(HttpMethod method, String address) {}

    /** What a walk saw, by the patterns of addresses, and what of it would be refused. */
    private record Walk(Set<String> pages, Set<String> offers, Set<String> refused) {}

    @AfterEach
    void noPageTookASecondConnectionWhileItHeldOne() {
        assertThat(connections.takenBesideAnother()).isEmpty();
    }

    /** Sets, samples and mark sheets in each state that changes what a page offers. */
    @BeforeEach
    void aDepartmentWithRecordsInEveryState() throws Exception {
        department = departments.make();
        Account keller = department.keller();
        decided.markLikeTheFirst(department.sample(), 1, 0);

        ClassSet released = departments.aSet(department.task(), 10_000 + department.number());
        belongings.give(Kind.CLASS_SET, released.id(), keller.id());
        var compared = decided.drawn(released, 3);
        belongings.giveSample(compared.id(), department.second().id());
        decided.markAndHandIn(compared, 1);
        classSets.release(released.id());
        long submitted = departments.aMarkSheet(released, keller);
        as(keller, post("/mark-sheets/" + submitted + "/submit"));

        ClassSet troubled = departments.aSet(department.task(), 20_000 + department.number());
        belongings.give(Kind.CLASS_SET, troubled.id(), keller.id());
        sheets.fail(sheets.of(troubled.id()).get(0).id(), "the program ended while it was read");
        sheets.refuse(sheets.of(troubled.id()).get(1).id(), "no bar and no edge of the paper", "{}");

        Map<Kind, String> invented = departments.demonstration(30_000 + department.number());
        beginnings.clear();
        beginnings.addAll(List.of(
                "/",
                "/help",
                "/sign-in",
                "/no/such/page",
                "/class-sets/" + released.id(),
                "/class-sets/" + troubled.id(),
                "/class-sets/" + invented.get(Kind.CLASS_SET),
                "/sheets/" + sheets.of(troubled.id()).get(0).id(),
                "/sheets/" + sheets.of(troubled.id()).get(1).id(),
                "/sheets/" + invented.get(Kind.SHEET),
                "/tasks/" + invented.get(Kind.TASK),
                "/moderations/" + compared.id(),
                "/moderations/" + department.sample().id(),
                "/mark-sheets/" + submitted,
                "/mark-sheets/" + department.records().get(Kind.MARK_SHEET),
                "/learners/" + department.records().get(Kind.LEARNER),
                "/classes/" + department.records().get(Kind.CLASS)));
    }

    @Test
    void aTeacherIsOfferedWhatIsOpen() throws Exception {
        Walk walk = walk(Optional.of(department.keller()));
        assertThat(walk.offers())
                .contains("POST /class-sets/{id}/release", "POST /sheets/{id}/marks/{criterion}", "POST /mark-sheets/{id}/submit",
                        "POST /classes/{id}/move", "POST /tasks/{id}/guideline", "POST /learners/{id}", "GET /tasks/{id}/edit");
        assertThat(walk.pages()).hasSizeGreaterThan(30);
    }

    @Test
    void anotherTeacherIsOfferedWhatIsOpen() throws Exception {
        Walk walk = walk(Optional.of(department.brandt()));
        assertThat(walk.offers())
                .contains("GET /tasks/{id}/copy", "GET /class-sets/new")
                .doesNotContain("GET /tasks/{id}/edit", "POST /tasks/{id}/guideline", "POST /class-sets/{id}/release");
    }

    @Test
    void theHeadIsOfferedWhatIsOpen() throws Exception {
        Walk walk = walk(Optional.of(department.head()));
        assertThat(walk.offers())
                .contains("POST /moderations/{id}/decision", "POST /class-sets/{id}/owner", "POST /mark-sheets/{id}/corrections", "GET /sheets/{id}/feedback.pdf")
                .doesNotContain("POST /class-sets/{id}/release", "GET /class-sets/new", "POST /sheets/{id}/marks/{criterion}");
        assertThat(walk.pages()).hasSizeGreaterThan(25);
    }

    @Test
    void aModeratorIsOfferedWhatIsOpen() throws Exception {
        Walk walk = walk(Optional.of(department.second()));
        assertThat(walk.offers()).contains("POST /moderations/{id}/sheets/{place}").doesNotContain("GET /class-sets/{id}", "GET /sheets/{id}");
    }

    @Test
    void anAdministratorIsOfferedWhatIsOpen() throws Exception {
        assertThat(walk(Optional.of(department.administrator())).offers()).contains("POST /accounts/{id}/blocked", "GET /audit");
    }

    @Test
    void aVisitorIsOfferedWhatIsOpen() throws Exception {
        Walk walk = walk(Optional.empty());
        assertThat(walk.offers()).contains("GET /sheets/{id}", "GET /sheets/{id}/feedback.pdf").doesNotContain("POST /class-sets/{id}/release");
        Set<String> posts = new TreeSet<>(walk.offers());
        posts.removeIf(offer -> !offer.startsWith("POST"));
        assertThat(posts).containsOnly("POST /sign-in", "POST /language", "POST /check", "POST /check/{code}", "POST /feedback");
    }

    private Walk walk(Optional<Account> who) throws Exception {
        Deque<String> ahead = new ArrayDeque<>(beginnings);
        Map<String, Integer> looked = new HashMap<>();
        Set<String> seen = new HashSet<>();
        Walk walk = new Walk(new TreeSet<>(), new TreeSet<>(), new TreeSet<>());
        while (!ahead.isEmpty()) {
            String address = ahead.poll();
            if (!seen.add(address)) {
                continue;
            }
            Optional<Rule> rule = rule(HttpMethod.GET, address);
            String kind = rule.map(Rule::pattern).orElse("");
            boolean isBeginning = beginnings.contains(address);
            if (kind.matches(".*\\.\\w+|/(css|js|fonts|webjars)/.*")) {
                // A file, which offers nothing.
                continue;
            }
            if (!isBeginning && looked.merge(kind, 1, Integer::sum) > OF_ONE_KIND) {
                continue;
            }
            MvcResult answer = as(who, get(URI.create(address)).accept("text/html", "*/*"));
            String type = String.valueOf(answer.getResponse().getContentType());
            if (!type.startsWith("text/html")) {
                continue;
            }
            walk.pages().add(kind);
            for (Offer offer : offers(answer.getResponse().getContentAsString())) {
                Optional<Rule> offered = rule(offer.method(), offer.address());
                assertThat(offered).as("%s on %s leads somewhere", offer, address).isPresent();
                if (!isOpen(offered.get(), who, offer) && !LEADS_TO_SIGN_IN.contains(offer.address())) {
                    walk.refused().add(offer + " on " + address);
                }
                walk.offers().add(offer.method() + " " + offered.get().pattern());
                if (offer.method().equals(HttpMethod.GET)) {
                    ahead.add(offer.address());
                }
            }
        }
        assertThat(walk.refused()).as("offered to %s, and refused", who.map(Account::name).orElse("a visitor")).isEmpty();
        return walk;
    }

    private boolean isOpen(Rule rule, Optional<Account> who, Offer offer) {
        Account asking = who.orElse(Account.lookingAround());
        return rule.isOpen() || rule.allows(Optional.of(asking)) && reach.opens(rule, asking, request(offer.method(), offer.address()));
    }

    private static List<Offer> offers(String page) {
        Document html = Jsoup.parse(page);
        List<Offer> offers = new ArrayList<>();
        for (String attribute : ASKING) {
            html.select("[" + attribute + "]").forEach(element -> add(offers, HttpMethod.GET, element.attr(attribute)));
        }
        for (String attribute : SENDING) {
            html.select("[" + attribute + "]").forEach(element -> add(offers, HttpMethod.POST, element.attr(attribute)));
        }
        for (Element form : html.select("form")) {
            HttpMethod method = form.attr("method").equalsIgnoreCase("post") ? HttpMethod.POST : HttpMethod.GET;
            add(offers, method, form.attr("action"));
            form.select("[formaction]").forEach(button -> add(offers, method, button.attr("formaction")));
        }
        return offers;
    }

    private static void add(List<Offer> offers, HttpMethod method, String address) {
        String path = address.replaceFirst("#.*$", "");
        if (path.startsWith("/")) {
            offers.add(new Offer(method, path));
        } else {
            assertThat(address).as("an address of this program").matches("(#.*|data:.*)?");
        }
    }

    private static Optional<Rule> rule(HttpMethod method, String address) {
        return Addresses.ruleFor(request(method, address));
    }

    private static MockHttpServletRequest request(HttpMethod method, String address) {
        var parts = UriComponentsBuilder.fromUriString(address).build();
        MockHttpServletRequest request = new MockHttpServletRequest(method.name(), parts.getPath());
        parts.getQueryParams().forEach((name, values) -> values.forEach(value -> request.addParameter(name, value == null ? "" : value)));
        return request;
    }

    private MvcResult as(Account who, MockHttpServletRequestBuilder request) throws Exception {
        return as(Optional.of(who), request);
    }

    private MvcResult as(Optional<Account> who, MockHttpServletRequestBuilder request) throws Exception {
        if (who.isPresent()) {
            request.with(authentication(new Acting(who.get())));
        }
        return pages.perform(request).andReturn();
    }
}
