package wallplate.web.access;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.springframework.http.HttpMethod;

/** The application's own table of addresses, for tests that look at all of them. */
public final class TableOfAddresses {

    private TableOfAddresses() {}

    /** The pattern of everything that can be asked for, pages, pictures and files alike. */
    public static Set<String> asked() {
        return Addresses.RULES.stream()
                .filter(rule -> rule.method().equals(HttpMethod.GET))
                .map(Rule::pattern)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
