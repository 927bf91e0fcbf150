package wallplate.sheet;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whose sheet it is and of which task, as the printed code on the project's own sheets says it.
 *
 * @param taskId the task's id: lower case letters, digits and hyphens
 * @param learner the learner's id in the class list: letters, digits, {@code .}, {@code _} and hyphens; empty on a
 *     sheet printed for anybody
 * @param sheetNumber the sheet's number within the learner's set, from 1
 */
public record SheetCode(String taskId, String learner, int sheetNumber) {

    private static final Pattern PAYLOAD = Pattern.compile("WP1/([a-z0-9-]{1,80})/([A-Za-z0-9._-]{0,40})/([1-9][0-9]{0,3})");

    public SheetCode {
        if (!PAYLOAD.matcher(text(taskId, learner, sheetNumber)).matches()) {
            throw new IllegalArgumentException(
                    "task \"%s\", learner \"%s\", sheet %d cannot be written as a code: ids are letters, digits and hyphens, sheets count from 1 to 9999"
                            .formatted(taskId, learner, sheetNumber));
        }
    }

    /** The text that the code holds, such as {@code WP1/boathouse-eaves/L07/1}. */
    public String payload() {
        return text(taskId, learner, sheetNumber);
    }

    /** The code with this text; empty where the text is another program's. */
    public static Optional<SheetCode> parse(String payload) {
        Matcher matcher = PAYLOAD.matcher(payload);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        return Optional.of(new SheetCode(matcher.group(1), matcher.group(2), Integer.parseInt(matcher.group(3))));
    }

    private static String text(String taskId, String learner, int sheetNumber) {
        return "WP1/" + taskId + "/" + learner + "/" + sheetNumber;
    }
}
