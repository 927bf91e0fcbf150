package wallplate.marking;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import wallplate.measure.Finding;
import wallplate.solver.Expected;

/** Values in words: numbers as the language writes them, with their units. */
public final class ValueWords {

    private static final Pattern ARITHMETIC = Pattern.compile("[-+*/=(). 0-9]+mm");
    private static final Pattern DECIMAL_POINT = Pattern.compile("(?<=\\d)\\.(?=\\d)");

    private final Phrases phrases;

    ValueWords(Phrases phrases) {
        this.phrases = phrases;
    }

    /** Values in the words of a language. */
    public static ValueWords in(Locale language) {
        return new ValueWords(Phrases.of(Wording.BUNDLE, language));
    }

    /** What was asked for; a length that is commonly rounded names both lengths. */
    public String asked(Expected asked) {
        if (asked instanceof Expected.Length length) {
            String exact = mm(length.exactMm(), 2);
            String drawn = mm(length.drawnMm(), 2);
            return exact.equals(drawn) || length.drawnMm() == 0
                    ? exact
                    : phrases.text("value.exact-or-rounded", Map.of("exact", exact, "rounded", drawn));
        }
        if (asked instanceof Expected.Angle angle) {
            return degrees(angle.degrees(), 1);
        }
        if (asked instanceof Expected.Count count) {
            return number(count.number());
        }
        if (asked instanceof Expected.YesNo yesNo) {
            return phrases.text(yesNo.yes() ? "value.yes" : "value.no");
        }
        return word(((Expected.Word) asked).word());
    }

    /** What was measured: lengths and angles to one decimal, and how far off a place without its side. */
    public String found(Expected asked, Finding found) {
        if (found instanceof Finding.Quantity quantity) {
            boolean isPlace = asked instanceof Expected.Length length && length.exactMm() == 0;
            double value = isPlace ? Math.abs(quantity.value()) : quantity.value();
            return asked instanceof Expected.Angle ? degrees(value, 1) : mm(value, 1);
        }
        if (found instanceof Finding.Count count) {
            return number(count.number());
        }
        if (found instanceof Finding.YesNo yesNo) {
            return phrases.text(yesNo.yes() ? "value.yes" : "value.no");
        }
        return found instanceof Finding.Word word ? word(word.word()) : "";
    }

    /**
     * How far a measured length or angle lies from what counts as right: to one decimal, and to two where one would
     * look as if it lay within the tolerance.
     */
    public String difference(Expected asked, Finding found, double tolerance) {
        double size = Deviation.between(asked, found).map(Deviation::size).orElse(0.0);
        int decimals = size > tolerance && Math.rint(size * 10) / 10 <= tolerance ? 2 : 1;
        return asked instanceof Expected.Angle ? degrees(size, decimals) : mm(size, decimals);
    }

    boolean isTooMuch(Expected asked, Finding found) {
        if (!(found instanceof Finding.Quantity quantity)) {
            return false;
        }
        return asked instanceof Expected.Length length
                ? quantity.value() > length.exactMm()
                : quantity.value() > ((Expected.Angle) asked).degrees();
    }

    /** A tolerance in the unit that the value is measured in; a count's has none. */
    public String tolerance(Expected asked, double tolerance) {
        if (asked instanceof Expected.Count) {
            return format(tolerance, 0);
        }
        return asked instanceof Expected.Angle ? degrees(tolerance, 2) : mm(tolerance, 2);
    }

    /**
     * What was asked for with the working that a learner would write, such as {@code 900 / 20 = 45 mm}; in other
     * languages than English only where the working is arithmetic without words.
     */
    String askedWithWorking(Expected asked) {
        String working = DECIMAL_POINT.matcher(working(asked)).replaceAll(phrases.text("value.decimal-sign"));
        boolean english = phrases.language().getLanguage().equals(Locale.ENGLISH.getLanguage());
        if (working.isEmpty() || !(english || ARITHMETIC.matcher(working).matches())) {
            return asked(asked);
        }
        return working.contains("=") ? working : asked(asked) + " (" + working + ")";
    }

    private static String working(Expected asked) {
        return asked instanceof Expected.Length length
                ? length.working()
                : asked instanceof Expected.Angle angle
                        ? angle.working()
                        : asked instanceof Expected.Count count ? count.working() : "";
    }

    public String number(long number) {
        return format(number, 0);
    }

    /** Marks, with a half where there is one. */
    public String marks(double marks) {
        return format(marks, 1);
    }

    /** A number as the language writes it, to so many decimals at most. */
    String decimal(double number, int decimals) {
        return format(number, decimals);
    }

    /** A length on paper. */
    public String millimetres(double length) {
        return mm(length, 2);
    }

    private String word(String word) {
        return phrases.find("word." + word).orElse(word);
    }

    private String mm(double value, int decimals) {
        return format(value, decimals) + " mm";
    }

    private String degrees(double value, int decimals) {
        return format(value, decimals) + "\u00b0";
    }

    private String format(double value, int decimals) {
        NumberFormat format = NumberFormat.getNumberInstance(phrases.language());
        format.setGroupingUsed(false);
        format.setMaximumFractionDigits(decimals);
        // Rounded first, because a decimal has no negative nought: -0.04 mm reads 0 mm, not -0 mm.
        return format.format(new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP));
    }
}
