package wallplate.web.moderation;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import wallplate.moderation.SampleSize;
import wallplate.moderation.SamplingRule;

/** What a person fills in to draw a sample. */
record DrawForm(
        @Nullable String choice,
        @Nullable String unit,
        @Nullable String size,
        @Nullable String seed,
        @Nullable String moderator) {

    private static final int LONGEST_NAME = 200;
    private static final int MOST_SHEETS = 10_000;

    static DrawForm proposed(long seed) {
        return new DrawForm("top-middle-bottom", "sheets", "6", Long.toString(seed), "");
    }

    /** What is wrong, by field; empty where a sample can be drawn. */
    Map<String, String> faults() {
        Map<String, String> faults = new LinkedHashMap<>();
        if (name().isEmpty() || name().length() > LONGEST_NAME) {
            faults.put("moderator", "Say who marks the sample a second time, in at most 200 letters.");
        }
        int most = isPercent() ? 100 : MOST_SHEETS;
        long number = number(size);
        if (number < 1 || number > most) {
            faults.put("size", "Found: \"%s\"; right would be a whole number from 1 to %d.".formatted(text(size), most));
        }
        if (number(seed) < 0) {
            faults.put("seed", "Found: \"%s\"; right would be a whole number, 0 or more.".formatted(text(seed)));
        }
        return faults;
    }

    SamplingRule rule() {
        int number = (int) number(size);
        return new SamplingRule(
                "at-random".equals(choice) ? SamplingRule.Choice.AT_RANDOM : SamplingRule.Choice.TOP_MIDDLE_BOTTOM,
                isPercent() ? new SampleSize.Percent(number) : new SampleSize.Number(number),
                number(seed));
    }

    String name() {
        return text(moderator);
    }

    private boolean isPercent() {
        return "percent".equals(unit);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    /** The whole number that was typed; -1 where it is none or below 0. */
    private static long number(@Nullable String typed) {
        try {
            return Math.max(-1, Long.parseLong(text(typed)));
        } catch (NumberFormatException notANumber) {
            return -1;
        }
    }
}
