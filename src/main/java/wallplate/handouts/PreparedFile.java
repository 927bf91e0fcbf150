package wallplate.handouts;

import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A file that takes seconds to be made, prepared or on its way.
 *
 * @param subject what it is about: the id of a class set, or of a learner's row in a class list, as the kind says
 * @param language of what is in it, as a BCP 47 tag
 * @param done sheets that are in it so far
 * @param state of the set that it shows, as {@link FeedbackFiles#stateOf} tells it; empty until it is ready, and for a learner
 * @param content its name in the scan store; empty until it is ready
 */
public record PreparedFile(
        long id,
        long subject,
        Kind kind,
        String language,
        Standing standing,
        int done,
        int sheets,
        String state,
        Optional<String> content,
        long sizeBytes,
        Instant askedAt,
        Optional<Instant> madeAt) {

    /** What is in the file. */
    public enum Kind {
        /** The feedback of a set: one PDF with a bookmark for each learner. */
        PDF,
        /** The feedback of a set: a PDF for each learner in a ZIP file. */
        ZIP,
        /** Everything that is kept about one learner, a ZIP file. */
        EVERYTHING;

        public boolean isAboutALearner() {
            return this == EVERYTHING;
        }

        /** As addresses and the records have it. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Kind> of(String word) {
            return Arrays.stream(values()).filter(kind -> kind.word().equals(word)).findFirst();
        }
    }

    /** How far it is. */
    public enum Standing {
        WAITING,
        READY,
        /** It was tried several times in vain; it can be asked for again. */
        FAILED;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** @throws IllegalArgumentException for a word that is none */
        public static Standing of(String word) {
            return valueOf(word.toUpperCase(Locale.ROOT));
        }
    }

    public boolean isReady() {
        return standing == Standing.READY;
    }

    public boolean isWaiting() {
        return standing == Standing.WAITING;
    }

    public boolean hasFailed() {
        return standing == Standing.FAILED;
    }

    public Locale locale() {
        return Locale.forLanguageTag(language);
    }
}
