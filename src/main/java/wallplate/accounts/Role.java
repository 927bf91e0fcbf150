package wallplate.accounts;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What somebody does here; an account may have several. */
public enum Role {
    /** Sets tasks, marks class sets, keeps classes. */
    TEACHER,
    /** Marks samples a second time and sees no set. */
    MODERATOR,
    /** Sees the whole department's sets and submitted mark sheets, and decides on moderations. */
    HEAD,
    /** Looks after accounts and reads the audit trail; sees no set. */
    ADMINISTRATOR;

    /** As it is kept and as forms name it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Role> of(String word) {
        return Arrays.stream(values()).filter(role -> role.word().equals(word)).findFirst();
    }
}
