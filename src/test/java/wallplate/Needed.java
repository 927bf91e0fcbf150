package wallplate;

import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** What a test needs of the machine or the build: without it the test is left out with a message, and fails where {@code CI=true}. */
public final class Needed {

    private Needed() {}

    /** @param missing what is missing, as a sentence that also says what would bring it */
    public static void holds(boolean isThere, String missing) {
        if (isThere) {
            return;
        }
        if ("true".equals(System.getenv("CI"))) {
            Assertions.fail(missing);
        }
        Assumptions.abort(missing);
    }
}
