package wallplate.classes;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A school year as schools write it: {@code 2026} where it is a calendar year, {@code 2026/27} where it spans two. */
public record SchoolYear(String label) implements Comparable<SchoolYear> {

    private static final Pattern FORM = Pattern.compile("((?:19|20)\\d\\d)(?:\\s*[/-]\\s*(?:20)?(\\d\\d))?");

    public SchoolYear {
        if (!FORM.matcher(label).matches()) {
            throw new IllegalArgumentException("a school year is 2026 or 2026/27, not " + label);
        }
    }

    /** The year that a person typed; empty where it is none or its second half does not follow the first. */
    public static Optional<SchoolYear> of(String typed) {
        Matcher matcher = FORM.matcher(typed.strip());
        if (!matcher.matches()) {
            return Optional.empty();
        }
        int first = Integer.parseInt(matcher.group(1));
        if (matcher.group(2) == null) {
            return Optional.of(new SchoolYear(matcher.group(1)));
        }
        boolean follows = (first + 1) % 100 == Integer.parseInt(matcher.group(2));
        return follows ? Optional.of(new SchoolYear(matcher.group(1) + "/" + matcher.group(2))) : Optional.empty();
    }

    @Override
    public int compareTo(SchoolYear other) {
        return label.compareTo(other.label);
    }
}
