package wallplate.records;

import java.util.Map;
import java.util.Optional;

/**
 * A photograph that a learner has checked at home.
 *
 * @param language of the advice, as a BCP 47 tag
 * @param before what the check before this one found, by criterion, as the page carried it along
 * @param content the photograph's name in the scan store; empty once it was read
 * @param screenPicture the level page's name in the scan store; empty until it was read
 * @param found what was found; empty where it was not read, or not yet
 * @param reason why it could not be read
 * @param kept whether it was kept for the learner's class
 */
public record SelfCheckEntry(
        long id,
        long taskId,
        String language,
        Map<String, String> before,
        SheetState state,
        Optional<String> content,
        Optional<String> screenPicture,
        Optional<KeptAssessment> found,
        Optional<String> reason,
        boolean kept) {

    public SelfCheckEntry {
        before = Map.copyOf(before);
    }
}
