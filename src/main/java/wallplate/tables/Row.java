package wallplate.tables;

import java.util.List;

/**
 * One row of a list that was read.
 *
 * @param line where it begins in the file, from 1
 * @param cells without blanks at their ends; a number stands as a spreadsheet shows it, without decimals that are 0
 */
public record Row(int line, List<String> cells) {

    public Row {
        cells = List.copyOf(cells);
    }

    /** The cell of a column, from 0; empty where the row is shorter. */
    public String cell(int column) {
        return column < 0 || column >= cells.size() ? "" : cells.get(column);
    }

    public boolean isBlank() {
        return cells.stream().allMatch(String::isEmpty);
    }
}
