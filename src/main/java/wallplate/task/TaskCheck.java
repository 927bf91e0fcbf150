package wallplate.task;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import wallplate.task.yaml.Entry;

/** Checks one task as it stands in a file or a form and collects every fault on the way. */
final class TaskCheck {

    private static final List<String> COMMON_KEYS =
            List.of("id", "title", "detail", "scale", "eaves", "sheet", "marking");
    private static final Pattern ID = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final String ID_ACCEPTED =
            "lower case words of letters and digits joined by hyphens, such as boathouse-eaves";
    private static final int LONGEST_ID = 60;
    private static final int LONGEST_TITLE = 120;
    private static final Pattern SCALE = Pattern.compile("1\\s*:\\s*(\\d{1,6}(\\.\\d{1,6})?)");
    private static final String SCALE_ACCEPTED = "a reduction in quotes, such as \"1:20\", from 1:1 to 1:1000";
    private static final double LARGEST_DENOMINATOR = 1000;

    private final EntryReader reader;
    private final @Nullable Map<String, Object> keptMarking;

    private TaskCheck(EntryReader reader, @Nullable Map<String, Object> keptMarking) {
        this.reader = reader;
        this.keptMarking = keptMarking;
    }

    /** A task as a file has it, with the faults that its text has already shown. */
    static TaskReading ofFile(Entry.Group top, List<Fault> faultsSoFar) {
        return new TaskCheck(new EntryReader(top, faultsSoFar), null).result();
    }

    /** A task as a form has it, with the marking guideline that it already has. */
    static TaskReading ofForm(Entry.Group top, Map<String, Object> marking) {
        return new TaskCheck(new EntryReader(top, List.of()), marking).result();
    }

    private TaskReading result() {
        Optional<String> id = id();
        Optional<String> title = reader.line("title", LONGEST_TITLE, "what stands over the drawing");
        Optional<DetailSchema> detail = detail();
        Optional<Scale> scale = scale();
        Optional<EavesSide> eaves = reader.word("eaves", List.of("left", "right"))
                .map(word -> EavesSide.valueOf(word.toUpperCase(Locale.ROOT)));
        Sizes sizes = detail.map(schema -> new SizesCheck(reader, schema, COMMON_KEYS).sizes())
                .orElseGet(() -> Sizes.of(Map.of()));
        Optional<SheetFormat> sheet = new SheetCheck(reader).sheet();
        Map<String, Object> marking = keptMarking != null ? keptMarking : new MarkingCheck(reader).marking();
        if (!reader.faults().isEmpty()) {
            return new TaskReading.Refused(reader.faults());
        }
        return new TaskReading.Accepted(new DrawingTask(
                id.orElseThrow(),
                title.orElseThrow(),
                detail.orElseThrow().id(),
                scale.orElseThrow(),
                eaves.orElseThrow(),
                sizes,
                sheet.orElseThrow(),
                marking));
    }

    private Optional<String> id() {
        return reader.line("id", LONGEST_ID, ID_ACCEPTED).filter(id -> {
            boolean sound = ID.matcher(id).matches();
            if (!sound) {
                reader.fault("id", id, ID_ACCEPTED);
            }
            return sound;
        });
    }

    private Optional<DetailSchema> detail() {
        List<String> known = Details.all().stream().map(DetailSchema::id).toList();
        return reader.word("detail", known).flatMap(Details::find);
    }

    private Optional<Scale> scale() {
        return reader.scalar("scale", SCALE_ACCEPTED).flatMap(this::scale);
    }

    private Optional<Scale> scale(Entry.Scalar typed) {
        Matcher matcher = SCALE.matcher(typed.text().strip());
        if (!matcher.matches()) {
            reader.fault("scale", typed.shown(), SCALE_ACCEPTED);
            return Optional.empty();
        }
        double denominator = Double.parseDouble(matcher.group(1));
        if (!typed.quoted() && typed.kind() != Entry.Kind.TEXT) {
            reader.fault(
                    "scale",
                    "%s without quotes, which YAML 1.1 reads as the number %s"
                            .formatted(typed.shown(), sexagesimal(denominator)),
                    "the same in quotes: \"" + typed.shown() + "\"");
            return Optional.empty();
        }
        if (denominator < 1 || denominator > LARGEST_DENOMINATOR) {
            reader.fault("scale", typed.shown(), SCALE_ACCEPTED);
            return Optional.empty();
        }
        return Optional.of(new Scale(denominator));
    }

    /** YAML 1.1 takes numbers below sixty joined by a colon as base sixty: 1:20 is 1 x 60 + 20, but 1:100 is text. */
    private static String sexagesimal(double denominator) {
        return PlainNumber.text(60 + denominator);
    }
}
