package wallplate.tables;

import java.util.List;

/** What became of a list that was to be read. */
public sealed interface TableReading {

    /** Its rows without the blank ones. */
    record Read(List<Row> rows) implements TableReading {
        public Read {
            rows = List.copyOf(rows);
        }
    }

    /** Nothing of it is used. */
    record Refused(List<LineFault> faults) implements TableReading {
        public Refused {
            faults = List.copyOf(faults);
        }
    }
}
