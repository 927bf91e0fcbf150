package wallplate.marksheets;

import java.util.List;

/**
 * A mark sheet with its lines as they stand, corrections included.
 *
 * @param corrections the first one first
 */
public record MarkSheet(Heading heading, List<Column> columns, List<Line> lines, List<Correction> corrections) {

    public MarkSheet {
        columns = List.copyOf(columns);
        lines = List.copyOf(lines);
        corrections = List.copyOf(corrections);
    }

    public Reckoning reckoning() {
        return new Reckoning(columns.stream().map(Column::weight).toList(), heading.latePercent());
    }

    public Reckoning.Result result(Line line) {
        return reckoning().of(line.entries());
    }

    public boolean isCorrected(Line line, Column column) {
        return corrections.stream().anyMatch(one -> one.line() == line.number() && one.place() == column.place());
    }
}
