package wallplate.web.page;

import java.util.Locale;

/** Titles as names of files. */
public final class FileName {

    private FileName() {}

    /** Letters and figures of a title in small letters, parted by hyphens; never empty. */
    public static String of(String title) {
        String name = title.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{N}]+", "-")
                .replaceAll("^-|-$", "");
        return name.isEmpty() ? "sheet" : name;
    }
}
