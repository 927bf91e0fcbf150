package wallplate.web.page;

import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.OptionalDouble;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;
import wallplate.records.MarkEntry;
import wallplate.solver.Expected;

/** Values in words and figures, as a page shows them in the reader's language. */
@Component("words")
public class Words {

    private static final String TO_A_TENTH = "0.#";
    private static final String TO_A_HUNDREDTH = "0.##";

    private final MessageSource messages;
    private final Clock clock;

    Words(MessageSource messages, Clock clock) {
        this.messages = messages;
        this.clock = clock;
    }

    /** Marks with halves where there are some: 21 or 21.5. */
    public String marks(double marks) {
        return figures(marks, TO_A_HUNDREDTH);
    }

    public String tenth(double value) {
        return figures(value, TO_A_TENTH);
    }

    /** What was asked, such as 45 mm, or 6.25 mm (drawn 6 mm) where rounding is allowed. */
    public String expected(MarkEntry mark) {
        MarkEntry.Reading reading = mark.reading();
        if (reading.expectedWord().isPresent()) {
            return word(reading.expectedWord().get());
        }
        if (reading.expected().isEmpty()) {
            return "";
        }
        double exact = reading.expected().getAsDouble();
        double rounded = reading.expectedRounded().orElse(exact);
        String text = withUnit(exact, reading.unit(), TO_A_HUNDREDTH);
        return exact == rounded
                ? text
                : say("value.drawn", text, withUnit(rounded, reading.unit(), TO_A_HUNDREDTH));
    }

    /** What a task asks for, such as 45 mm; a length that is drawn rounded says so. */
    public String expected(Expected value) {
        if (value instanceof Expected.Length length) {
            String exact = withUnit(length.exactMm(), "mm", TO_A_HUNDREDTH);
            boolean rounded = length.drawnMm() != 0 && length.drawnMm() != length.exactMm();
            return rounded ? say("value.drawn", exact, withUnit(length.drawnMm(), "mm", TO_A_HUNDREDTH)) : exact;
        }
        if (value instanceof Expected.Angle angle) {
            return withUnit(angle.degrees(), "deg", TO_A_HUNDREDTH);
        }
        if (value instanceof Expected.Count count) {
            return Integer.toString(count.number());
        }
        return word(value instanceof Expected.YesNo yesNo ? (yesNo.yes() ? "yes" : "no") : ((Expected.Word) value).word());
    }

    /** What was found, or that nothing was. */
    public String measured(MarkEntry mark) {
        MarkEntry.Reading reading = mark.reading();
        return switch (reading.finding()) {
            case "absent" -> say("value.absent");
            case "uncertain" -> say("value.uncertain");
            case "measured" -> reading.measuredWord()
                    .map(this::word)
                    .orElseGet(() -> withUnit(reading.measured().orElseThrow(), reading.unit(), TO_A_TENTH));
            default -> "";
        };
    }

    /** The tolerance as plus and minus; empty where there is none. */
    public String tolerance(MarkEntry mark) {
        OptionalDouble tolerance = mark.tolerance();
        boolean length = mark.reading().unit().equals("mm") || mark.reading().unit().equals("deg");
        return tolerance.isEmpty() || !length
                ? ""
                : "± " + withUnit(tolerance.getAsDouble(), mark.reading().unit(), TO_A_HUNDREDTH);
    }

    /** The tolerance of what a task asks for; empty where it is no length or angle. */
    public String tolerance(Expected value, double tolerance) {
        if (value instanceof Expected.Length) {
            return "± " + withUnit(tolerance, "mm", TO_A_HUNDREDTH);
        }
        return value instanceof Expected.Angle ? "± " + withUnit(tolerance, "deg", TO_A_HUNDREDTH) : "";
    }

    /** A value to a tenth with its unit. */
    public String value(double value, String unit) {
        return withUnit(value, unit, TO_A_TENTH);
    }

    public String date(Instant instant) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                .withLocale(language())
                .format(instant.atZone(ZoneId.systemDefault()));
    }

    public String dateAndTime(Instant instant) {
        return DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
                .withLocale(language())
                .format(instant.atZone(ZoneId.systemDefault()));
    }

    public String today() {
        return date(clock.instant());
    }

    /** A part's name from its place in the task file: {@code wall-plate} is read as wall plate. */
    public String part(String name) {
        return messages.getMessage("part." + name, null, name.replace('-', ' '), language());
    }

    /** A text of the message bundles. */
    public String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, language());
    }

    /** A text by its key, or the other one where there is none by that key. */
    public String sayOr(String otherwise, String key, Object... arguments) {
        String said = messages.getMessage(key, arguments, otherwise, language());
        return said == null ? otherwise : said;
    }

    private String word(String word) {
        return messages.getMessage("word." + word, null, word, language());
    }

    private String withUnit(double value, String unit, String pattern) {
        return switch (unit) {
            case "mm" -> figures(value, pattern) + " mm";
            case "deg" -> figures(value, pattern) + "°";
            default -> figures(value, pattern);
        };
    }

    private String figures(double value, String pattern) {
        DecimalFormat format = new DecimalFormat(pattern, DecimalFormatSymbols.getInstance(language()));
        // As the solver's working rounds, so that a page does not contradict itself.
        format.setRoundingMode(RoundingMode.HALF_UP);
        String text = format.format(value);
        return text.equals("-0") ? "0" : text;
    }

    /** Dates are written as in Britain wherever English is read: the words of the pages are British too. */
    private static Locale language() {
        Locale language = LocaleContextHolder.getLocale();
        return language.getLanguage().equals("en") ? Locale.UK : language;
    }
}
