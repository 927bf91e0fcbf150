package wallplate.jobs;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.core.env.Environment;

/** What one process of the program does. */
public enum Role {
    /** Shows pages and reads sheets: the program on one machine. */
    ALL,
    /** Shows pages; sheets are read by workers. */
    WEB,
    /** Reads sheets and shows no page. */
    WORKER;

    /** The setting that names the role. */
    public static final String SETTING = "wallplate.role";

    public boolean readsSheets() {
        return this != WEB;
    }

    public boolean showsPages() {
        return this != WORKER;
    }

    /**
     * The role in the settings, {@link #ALL} where none is named.
     *
     * @throws IllegalArgumentException where there is no such role
     */
    public static Role of(Environment settings) {
        String word = settings.getProperty(SETTING, "all");
        return Arrays.stream(values())
                .filter(role -> role.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("%s is one of %s, not %s"
                        .formatted(
                                SETTING,
                                Arrays.stream(values()).map(Role::word).collect(Collectors.joining(", ")),
                                word)));
    }

    private String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
