package wallplate.web.page;

import java.security.Principal;
import org.jspecify.annotations.Nullable;

/** Who acts on a page. */
public final class Person {

    private static final String NOBODY = "visitor";

    private Person() {}

    /** The name of the account that acts: of whoever is signed in, or the demonstration's; "visitor" on pages that are open to everybody. */
    public static String name(@Nullable Principal person) {
        return person == null ? NOBODY : person.getName();
    }
}
