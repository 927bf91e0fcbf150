package wallplate.backup;

/** A backup cannot be written or taken back, and why; nothing was changed. */
public final class BackupRefused extends RuntimeException {

    private static final long serialVersionUID = 1;

    BackupRefused(String sentence) {
        super(sentence);
    }

    BackupRefused(String sentence, Throwable cause) {
        super(sentence, cause);
    }
}
