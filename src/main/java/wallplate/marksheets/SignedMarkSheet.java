package wallplate.marksheets;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import wallplate.report.SignedTable;

/** A mark sheet on paper, with lines for those who sign it. */
public final class SignedMarkSheet {

    private static final List<String> SIGNATURES = List.of("Teacher", "Moderator", "Head of department");

    private SignedMarkSheet() {}

    /** Writes the mark sheet as PDF, with every correction and its reason below. */
    public static void write(MarkSheet sheet, OutputStream out) throws IOException {
        List<String> heading = new ArrayList<>(List.of("No", "Name"));
        sheet.columns().forEach(column -> heading.add(column.place() + ""));
        heading.add("%");
        new SignedTable(
                        sheet.heading().title(),
                        facts(sheet.heading()),
                        heading,
                        sheet.lines().stream().map(line -> row(sheet, line)).toList(),
                        notes(sheet),
                        SIGNATURES)
                .write(out);
    }

    private static String facts(Heading heading) {
        String year = heading.schoolYear().isEmpty() ? "" : ", " + heading.schoolYear();
        String standing = heading.submission()
                .map(one -> "submitted by " + one.submittedBy() + " on "
                        + one.submittedAt().atOffset(ZoneOffset.UTC).toLocalDate())
                .orElse("a draft, not submitted");
        return heading.className() + year + ", " + heading.term() + "; " + standing;
    }

    private static List<String> row(MarkSheet sheet, Line line) {
        boolean beside = !line.candidateNumber().isEmpty() && !line.candidateNumber().equals(line.name());
        List<String> cells = new ArrayList<>(List.of(
                Integer.toString(line.number()),
                beside ? line.name() + " (" + line.candidateNumber() + ")" : line.name()));
        for (Column column : sheet.columns()) {
            String mark = sheet.isCorrected(line, column) ? "*" : "";
            cells.add(entry(sheet.reckoning(), line.entries().get(column.place() - 1)) + mark);
        }
        cells.add(sheet.result(line).percentage().map(BigDecimal::toPlainString).orElse("–"));
        return cells;
    }

    private static String entry(Reckoning reckoning, Entry entry) {
        return switch (entry.standing()) {
            case MARKED -> marks(entry.awarded()) + "/" + marks(entry.available());
            case LATE -> marks(reckoning.counted(entry)) + "/" + marks(entry.available()) + " late";
            case ABSENT, EXCUSED, OPEN -> entry.standing().word();
        };
    }

    private static String marks(BigDecimal marks) {
        return MarkSheetTables.plain(marks).toPlainString();
    }

    private static List<String> notes(MarkSheet sheet) {
        List<String> notes = new ArrayList<>();
        for (Column column : sheet.columns()) {
            notes.add(column.place() + ": " + column.title() + ", weight " + marks(column.weight()));
        }
        notes.add("The percentage is 100 times the sum of weight times marks awarded by marks available, divided by the sum of"
                + " the weights; rounded once, to one decimal, halves up. Absent counts as no marks; excused does not count. A"
                + " late sheet loses " + sheet.heading().latePercent() + " % of the marks available, at most all that it has.");
        for (Correction one : sheet.corrections()) {
            notes.add("* No " + one.line() + ", task " + one.place() + ": " + entry(sheet.reckoning(), one.entry()) + ", "
                    + one.correctedBy() + ", " + one.correctedAt().atOffset(ZoneOffset.UTC).toLocalDate() + ": "
                    + one.reason());
        }
        return notes;
    }
}
