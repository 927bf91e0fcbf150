package wallplate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Mark;
import wallplate.marking.Verdict;

/**
 * The mark sheet of a set as comma-separated values (RFC 4180): one line a sheet, one column a criterion.
 *
 * <p>A mark that is left to the teacher is a question mark. A text that a spreadsheet would take for a formula is led
 * by an apostrophe.
 */
public final class MarkSheetFile {

    private static final List<String> FACTS =
            List.of("name", "scan", "page", "status", "awarded", "available", "undecided", "guideline", "reason");

    private final Set<String> criteria = new LinkedHashSet<>();
    private final List<Line> lines = new ArrayList<>();

    /**
     * One sheet's line.
     *
     * @param facts in the order of {@link #FACTS}
     * @param marks what was given, by criterion
     */
    private record Line(List<String> facts, Map<String, String> marks) {}

    /** Adds a sheet under the name of its result file; the picture of its page is not kept. */
    public void add(String name, AssessedSheet sheet) {
        if (sheet instanceof AssessedSheet.Read read) {
            read.marked().marks().forEach(mark -> criteria.add(mark.criterion()));
            lines.add(new Line(
                    List.of(
                            name,
                            sheet.scan(),
                            String.valueOf(sheet.page()),
                            "read",
                            Numbers.text(read.marked().awarded()),
                            Numbers.text(read.marked().available()),
                            String.valueOf(read.marked().undecided()),
                            read.marked().guideline(),
                            ""),
                    read.marked().marks().stream()
                            .collect(Collectors.toMap(
                                    Mark::criterion, MarkSheetFile::given, (a, b) -> a, LinkedHashMap::new))));
        } else if (sheet instanceof AssessedSheet.Unreadable unreadable) {
            lines.add(new Line(
                    List.of(
                            name,
                            sheet.scan(),
                            String.valueOf(sheet.page()),
                            "unreadable",
                            "",
                            "",
                            "",
                            "",
                            unreadable.reason()),
                    Map.of()));
        }
    }

    private static String given(Mark mark) {
        return mark.verdict() == Verdict.UNDECIDED ? "?" : Numbers.text(mark.awarded());
    }

    /** The whole file, lines ended as the standard has it. */
    public String write() {
        StringBuilder text = new StringBuilder();
        List<String> head = new ArrayList<>(FACTS);
        head.addAll(criteria);
        append(text, head);
        for (Line line : lines) {
            List<String> cells = new ArrayList<>(line.facts());
            criteria.forEach(criterion -> cells.add(line.marks().getOrDefault(criterion, "")));
            append(text, cells);
        }
        return text.toString();
    }

    private static void append(StringBuilder text, List<String> cells) {
        text.append(cells.stream().map(MarkSheetFile::cell).collect(Collectors.joining(",")))
                .append("\r\n");
    }

    private static String cell(String value) {
        String safe = looksLikeFormula(value) ? "'" + value : value;
        boolean plain = safe.chars().noneMatch(one -> one == ',' || one == '"' || one == '\n' || one == '\r');
        return plain ? safe : '"' + safe.replace("\"", "\"\"") + '"';
    }

    private static boolean looksLikeFormula(String value) {
        return !value.isEmpty() && "=+-@\t\r".indexOf(value.charAt(0)) >= 0;
    }
}
