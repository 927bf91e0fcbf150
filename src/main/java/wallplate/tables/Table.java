package wallplate.tables;

import java.util.List;

/** A list that is written: what its columns are called, and its rows. */
public record Table(String name, List<String> heading, List<List<Cell>> rows) {

    public Table {
        heading = List.copyOf(heading);
        rows = rows.stream().map(List::copyOf).toList();
    }
}
