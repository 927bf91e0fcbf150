package wallplate.tables;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import wallplate.tables.csv.CsvTable;
import wallplate.tables.xlsx.XlsxTable;

/** Lists as files. */
public final class TableFile {

    private static final int MOST_BYTES = 5_000_000;

    private TableFile() {}

    /** Reads a list; whether it is XLSX or CSV is told by its first bytes, not by its name. */
    public static TableReading read(byte[] content) {
        if (content.length > MOST_BYTES) {
            return new TableReading.Refused(List.of(new LineFault(
                    0, "The file has " + content.length / 1_000_000 + " MB; a list may have up to 5 MB.")));
        }
        return content.length > 3 && content[0] == 'P' && content[1] == 'K'
                ? XlsxTable.read(content)
                : CsvTable.read(content);
    }

    /** The list as comma-separated values in UTF-8, with the mark by which spreadsheets know that. */
    public static void writeCsv(Table table, OutputStream out) throws IOException {
        CsvTable.write(table, out);
    }

    /** The list as a workbook with one sheet. */
    public static void writeXlsx(Table table, OutputStream out) throws IOException {
        XlsxTable.write(table, out);
    }
}
