package wallplate.marksheets;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import wallplate.tables.Cell;
import wallplate.tables.Table;

/** Mark sheets as lists for spreadsheets: marks as they count, the percentage, and in words what is no mark. */
public final class MarkSheetTables {

    private MarkSheetTables() {}

    /** One mark sheet, a line a learner. */
    public static Table of(MarkSheet sheet) {
        List<String> heading = new ArrayList<>(List.of("no", "name", "number"));
        sheet.columns().forEach(column -> heading.add(title(sheet, column)));
        heading.addAll(List.of("percent", "remarks"));
        return new Table(
                sheet.heading().title(),
                heading,
                sheet.lines().stream().map(line -> row(sheet, line)).toList());
    }

    private static String title(MarkSheet sheet, Column column) {
        List<BigDecimal> totals = sheet.lines().stream()
                .map(line -> line.entries().get(column.place() - 1))
                .filter(entry -> entry.standing() == Standing.MARKED || entry.standing() == Standing.LATE)
                .map(entry -> plain(entry.available()))
                .distinct()
                .toList();
        String outOf = totals.size() == 1 ? "of " + totals.get(0).toPlainString() + ", " : "";
        return column.title() + " (" + outOf + "weight " + plain(column.weight()).toPlainString() + ")";
    }

    private static List<Cell> row(MarkSheet sheet, Line line) {
        List<Cell> cells = new ArrayList<>(
                List.of(Cell.of(line.number()), Cell.of(line.name()), Cell.of(line.candidateNumber())));
        for (Entry entry : line.entries()) {
            cells.add(cell(sheet.reckoning(), entry));
        }
        cells.add(percent(sheet.result(line)));
        cells.add(Cell.of(remarks(sheet, line)));
        return cells;
    }

    private static Cell cell(Reckoning reckoning, Entry entry) {
        return switch (entry.standing()) {
            case MARKED, LATE -> Cell.of(plain(reckoning.counted(entry)));
            case ABSENT, EXCUSED, OPEN -> Cell.of(entry.standing().word());
        };
    }

    private static Cell percent(Reckoning.Result result) {
        return result.percentage().map(Cell::of).orElseGet(() -> Cell.of(result.isOpen() ? "open" : ""));
    }

    /** What a number alone does not say: late, and put right after the mark sheet was submitted. */
    private static String remarks(MarkSheet sheet, Line line) {
        List<String> remarks = new ArrayList<>();
        for (Column column : sheet.columns()) {
            if (line.entries().get(column.place() - 1).standing() == Standing.LATE) {
                remarks.add("late: " + column.title());
            }
            if (sheet.isCorrected(line, column)) {
                remarks.add("corrected: " + column.title());
            }
        }
        return String.join("; ", remarks);
    }

    /** Every learner of the submitted mark sheets of a term. */
    public static Table ofTerm(String name, List<MarkSheet> sheets) {
        return new Table(
                name,
                List.of("class", "mark sheet", "no", "name", "number", "percent"),
                sheets.stream()
                        .flatMap(sheet -> sheet.lines().stream()
                                .map(line -> List.of(
                                        Cell.of(sheet.heading().className()),
                                        Cell.of(sheet.heading().title()),
                                        Cell.of(line.number()),
                                        Cell.of(line.name()),
                                        Cell.of(line.candidateNumber()),
                                        percent(sheet.result(line)))))
                        .collect(Collectors.toList()));
    }

    /** Marks have at most two decimals, as they are kept; a late sheet's are rounded to that for show only. */
    static BigDecimal plain(BigDecimal marks) {
        BigDecimal number = marks.setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0) : number;
    }
}
