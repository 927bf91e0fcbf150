package wallplate.web.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.authentication;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import wallplate.accounts.Account;
import wallplate.accounts.Role;

/** The table of addresses names every page, and what it says of each is what happens. */
@SpringBootTest(
        properties = {
            "spring.datasource.url=jdbc:h2:mem:addresses;MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;DEFAULT_NULL_ORDERING=HIGH",
            "wallplate.scans=target/test-data/addresses",
            "wallplate.demonstration.enabled=false"
        })
@AutoConfigureMockMvc
class AddressesTest {

    /** An address that fits each variable; a record of that number is not there. */
    private static final Map<String, String> VARIABLES = Map.of(
            "name", "a".repeat(64), "column", "0", "row", "0", "code", "ABCDEF", "token", "x", "criterion", "plate");

    @Autowired
    private RequestMappingHandlerMapping mappings;

    @Autowired
    private MockMvc pages;

    static Stream<Rule> rules() {
        return Addresses.RULES.stream();
    }

    @Test
    void everyPageHasARule() {
        assertThat(mapped()).isSubsetOf(ruled());
    }

    @Test
    void everyRuleHasAPage() {
        Set<String> without = ruled();
        without.removeAll(mapped());
        assertThat(without)
                .containsExactlyInAnyOrder(
                        "GET /css/**", "GET /js/**", "GET /fonts/**", "GET /webjars/**", "GET /wallplate.svg", "GET /help/*");
    }

    /** Method and pattern of everything that a controller answers; one without a method answers to all that are used here. */
    private Set<String> mapped() {
        Set<String> mapped = new TreeSet<>();
        mappings.getHandlerMethods().keySet().forEach(mapping -> {
            Set<String> methods = mapping.getMethodsCondition().getMethods().isEmpty()
                    ? Set.of("GET", "POST")
                    : mapping.getMethodsCondition().getMethods().stream().map(Enum::name).collect(Collectors.toSet());
            mapping.getPatternValues().forEach(pattern -> methods.forEach(method -> mapped.add(method + " " + pattern)));
        });
        return mapped;
    }

    private static Set<String> ruled() {
        return rules().map(rule -> rule.method() + " " + rule.pattern()).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void noRuleStandsTwice() {
        assertThat(ruled()).hasSameSizeAs(Addresses.RULES);
    }

    /** A rule further up must not take what another one is about. */
    @ParameterizedTest
    @MethodSource("rules")
    void ruleIsTheOneThatCounts(Rule rule) {
        MockHttpServletRequest request = new MockHttpServletRequest(rule.method().name(), address(rule));
        assertThat(Addresses.ruleFor(request)).contains(rule);
    }

    @Test
    void everyFileThatPagesNeedIsOpen() throws IOException {
        Path root = Path.of("src/main/resources/static");
        try (Stream<Path> files = Files.walk(root)) {
            List<String> addresses = files.filter(Files::isRegularFile)
                    .map(file -> "/" + root.relativize(file).toString().replace('\\', '/'))
                    .toList();
            assertThat(addresses).hasSizeGreaterThan(10).allSatisfy(address -> assertThat(
                            Addresses.ruleFor(new MockHttpServletRequest("GET", address)))
                    .hasValueSatisfying(rule -> assertThat(rule.isOpen()).isTrue()));
        }
    }

    /** What everybody may open is said here once more, so that a slip in the table shows. */
    @Test
    void isOpenToEverybodyOnlyWhereNobodysRecordsAre() {
        assertThat(rules().filter(Rule::isOpen).map(Rule::pattern))
                .allMatch(pattern -> pattern.matches(
                        "/(css|js|fonts|webjars)/\\*\\*|/wallplate.svg|/error|/help(/\\*)?|/language|/(check|feedback)(/.*)?"
                                + "|/sign-(in|out)|/set-password(/\\{token})?"));
    }

    @ParameterizedTest
    @MethodSource("rules")
    void opensToEachRoleWhatTheTableSaysAndNothingElse(Rule rule) throws Exception {
        for (Role role : Role.values()) {
            MvcResult answer = pages.perform(asked(rule).with(authentication(new Acting(account(role))))).andReturn();
            if (rule.isOpen() || rule.roles().contains(role)) {
                assertThat(answer.getResponse().getStatus()).as("%s as %s", rule, role).isNotEqualTo(403);
            } else {
                assertThat(answer.getHandler()).as("%s as %s is not answered", rule, role).isNull();
                assertThat(answer.getResponse().getStatus()).as("%s as %s", rule, role).isEqualTo(403);
                assertThat(answer.getResponse().getContentAsString()).contains("This is not open to you");
            }
        }
    }

    /** Whoever only looks after accounts would find an empty first page. */
    @Test
    void tellsWhoLooksAfterTheAccountsWhatThereIsToDo() throws Exception {
        assertThat(firstPageOf(Role.ADMINISTRATOR)).contains("You look after the accounts");
        assertThat(firstPageOf(Role.TEACHER)).doesNotContain("You look after the accounts");
    }

    private String firstPageOf(Role role) throws Exception {
        return pages.perform(get("/").with(authentication(new Acting(account(role)))))
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    @ParameterizedTest
    @MethodSource("rules")
    void asksVisitorsToSignInWhereTheDemonstrationDoesNotReach(Rule rule) throws Exception {
        MvcResult answer = pages.perform(asked(rule).header("Accept", "text/html")).andReturn();
        boolean reached = rule.allows(Optional.of(Account.demonstration()));
        if (!reached && rule.method().equals(HttpMethod.GET)) {
            assertThat(answer.getResponse().getRedirectedUrl()).contains("next=");
        }
        if (!reached) {
            assertThat(answer.getResponse().getRedirectedUrl()).as("%s", rule).startsWith("/sign-in");
        }
        assertThat(reached)
                .as("%s reaches records, and no accounts", rule)
                .isEqualTo(!rule.pattern().startsWith("/account"));
    }

    @Test
    void answersAnAddressWithoutRuleAsOneWithoutPage() throws Exception {
        MvcResult answer = pages.perform(request(HttpMethod.GET, "/no/such/page")).andReturn();
        assertThat(answer.getResponse().getStatus()).isEqualTo(404);
        assertThat(answer.getHandler()).isNull();
        assertThat(answer.getResponse().getContentAsString()).contains("Nothing is filed here");
    }

    private static MockHttpServletRequestBuilder asked(Rule rule) {
        return request(rule.method(), address(rule));
    }

    /** The pattern with each variable filled; ids are of records that are not there. */
    private static String address(Rule rule) {
        String address = rule.pattern().replace("/**", "/x").replace("/*", "/x");
        for (Map.Entry<String, String> variable : VARIABLES.entrySet()) {
            address = address.replaceAll("\\{" + variable.getKey() + "(:[^/]*?)?}(?=[-/.]|$)", variable.getValue());
        }
        return address.replaceAll("\\{\\w+}", "987654321");
    }

    private static Account account(Role role) {
        return new Account(
                77, role.word(), EnumSet.of(role), false, true, 1, Instant.EPOCH, Optional.empty());
    }
}
