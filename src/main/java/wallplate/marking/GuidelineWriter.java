package wallplate.marking;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.task.PlainNumber;

/** Writes a guideline as the {@code marking} part of a task file. */
final class GuidelineWriter {

    private GuidelineWriter() {}

    static Map<String, Object> write(Guideline guideline) {
        Map<String, Object> marking = new LinkedHashMap<>();
        marking.put("name", guideline.name());
        Tolerances tolerances = guideline.tolerances();
        Map<String, Object> usual = new LinkedHashMap<>();
        usual.put("length", number(tolerances.lengthMm()));
        usual.put("thickness", number(tolerances.thicknessMm()));
        usual.put("angle", number(tolerances.angleDegrees()));
        marking.put("tolerance", usual);
        marking.put("borderline", number(guideline.borderlineDeviations()));
        if (!guideline.groups().isEmpty()) {
            Map<String, Object> groups = new LinkedHashMap<>();
            guideline.groups().forEach(group -> groups.put(group.id(), group(group)));
            marking.put("groups", groups);
        }
        marking.put("criteria", guideline.criteria().stream().map(GuidelineWriter::criterion).toList());
        return marking;
    }

    private static Map<String, Object> group(MarkGroup group) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("title", group.title());
        written.put("maximum", number(group.maximum()));
        return written;
    }

    private static Map<String, Object> criterion(Criterion criterion) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("id", criterion.id());
        criterion.title().ifPresent(title -> written.put("title", title));
        written.put("marks", number(criterion.marks()));
        putSubject(written, criterion.subject());
        criterion.tolerance().ifPresent(tolerance -> written.put("tolerance", tolerance(tolerance)));
        if (!criterion.partMarks().isEmpty()) {
            String limit = criterion.subject() instanceof Subject.SeveralKeys ? "at-least" : "within";
            written.put("part-marks", criterion.partMarks().stream().map(band -> band(band, limit)).toList());
        }
        criterion.group().ifPresent(group -> written.put("group", group));
        criterion.precondition().ifPresent(needed -> written.put("needs", needs(needed)));
        if (!criterion.consistentWorking()) {
            written.put("consistent-working", false);
        }
        return written;
    }

    private static void putSubject(Map<String, Object> written, Subject subject) {
        if (subject instanceof Subject.OneKey one) {
            written.put("measure", one.key());
        } else if (subject instanceof Subject.SeveralKeys several) {
            written.put("measure", List.copyOf(several.keys()));
        } else if (subject instanceof Subject.PartDrawn drawn) {
            written.put("part", drawn.part());
        } else if (subject instanceof Subject.Lines lines) {
            written.put("lines", lines.aspect().word());
            written.put("accepted", accepted(lines.accepted()));
        } else {
            written.put("teacher", ((Subject.TeachersJudgement) subject).note());
        }
    }

    private static Map<String, Object> accepted(LineRange range) {
        return inOrder("from", number(range.from()), "to", number(range.to()));
    }

    private static String tolerance(Tolerance tolerance) {
        return PlainNumber.text(tolerance.value()) + " " + tolerance.unit().word();
    }

    private static Map<String, Object> band(Band band, String limit) {
        return inOrder(limit, number(band.limit()), "marks", number(band.marks()));
    }

    private static Map<String, Object> needs(Precondition needed) {
        return inOrder("key", needed.key(), "at-least", needed.atLeast());
    }

    private static Map<String, Object> inOrder(String first, Object one, String second, Object two) {
        Map<String, Object> written = new LinkedHashMap<>();
        written.put(first, one);
        written.put(second, two);
        return written;
    }

    /** Whole where it is whole, as people write it. */
    private static Number number(double value) {
        return value == Math.rint(value) && Math.abs(value) <= Integer.MAX_VALUE ? (Number) (int) value : (Number) value;
    }
}
