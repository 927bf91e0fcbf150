package wallplate.web.page;

import java.security.Principal;
import org.jspecify.annotations.Nullable;

/** Who acts on a page. */
public final class Person {

    private static final String NOBODY_SIGNED_IN = "teacher";

    private Person() {}

    /** The name of the signed-in person; "teacher" while nobody has to sign in. */
    public static String name(@Nullable Principal person) {
        return person == null ? NOBODY_SIGNED_IN : person.getName();
    }
}
