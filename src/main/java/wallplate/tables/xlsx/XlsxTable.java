package wallplate.tables.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import wallplate.tables.Cell;
import wallplate.tables.LineFault;
import wallplate.tables.Row;
import wallplate.tables.Table;
import wallplate.tables.TableReading;

/** A list as the first sheet of a workbook. */
public final class XlsxTable {

    /** A workbook is a ZIP: what it may grow to when it is unpacked. */
    private static final long MOST_UNPACKED_BYTES = 60_000_000;

    private static final int LONGEST_SHEET_NAME = 31;

    private XlsxTable() {}

    /** Reads the rows of the first sheet, or says why that cannot be done. */
    public static TableReading read(byte[] content) {
        try {
            if (unpackedBytes(content) > MOST_UNPACKED_BYTES) {
                return refused(0, "Unpacked, the workbook is too large for a list.");
            }
            return rows(content);
        } catch (IOException | RuntimeException broken) {
            // The library's own exceptions are unchecked, whatever is wrong with the file.
            return refused(0, "The workbook cannot be read. Keep the list as XLSX or CSV once more and hand it in again.");
        }
    }

    private static long unpackedBytes(byte[] content) throws IOException {
        long unpacked = 0;
        byte[] block = new byte[65_536];
        // By the directory at the end of the file, as the workbook itself is read: streams of entries leave sizes open.
        try (ZipFile zip = ZipFile.builder().setByteArray(content).get()) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                try (InputStream part = zip.getInputStream(entry)) {
                    for (int read = part.read(block); read >= 0; read = part.read(block)) {
                        unpacked += read;
                        if (unpacked > MOST_UNPACKED_BYTES) {
                            return unpacked;
                        }
                    }
                }
            }
        }
        return unpacked;
    }

    private static TableReading rows(byte[] content) throws IOException {
        List<LineFault> faults = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(content));
                Stream<org.dhatim.fastexcel.reader.Row> found = workbook.getFirstSheet().openStream()) {
            found.forEach(row -> {
                Row read = row(row, faults);
                if (!read.isBlank()) {
                    rows.add(read);
                }
            });
        }
        return faults.isEmpty() ? new TableReading.Read(rows) : new TableReading.Refused(faults);
    }

    private static Row row(org.dhatim.fastexcel.reader.Row row, List<LineFault> faults) {
        List<String> cells = new ArrayList<>();
        for (int column = 0; column < row.getCellCount(); column++) {
            var cell = row.getOptionalCell(column).orElse(null);
            if (cell == null) {
                cells.add("");
            } else if (cell.getType() == CellType.ERROR) {
                faults.add(new LineFault(row.getRowNum(), "Column " + (column + 1) + " holds an error instead of a value."));
            } else if (cell.getType() == CellType.NUMBER) {
                cells.add(plain(cell.asNumber()));
            } else {
                // Of a formula, what it last gave.
                cells.add(cell.getType() == CellType.FORMULA ? text(cell.getRawValue()) : text(cell.getText()));
            }
        }
        return new Row(row.getRowNum(), cells);
    }

    private static String text(@org.jspecify.annotations.Nullable String text) {
        return text == null ? "" : text.strip();
    }

    private static String plain(BigDecimal number) {
        BigDecimal plain = number.stripTrailingZeros();
        return (plain.scale() < 0 ? plain.setScale(0) : plain).toPlainString();
    }

    private static TableReading refused(int line, String sentence) {
        return new TableReading.Refused(List.of(new LineFault(line, sentence)));
    }

    /** Writes the list; numbers are numbers, and texts are texts whatever they begin with. */
    public static void write(Table table, OutputStream out) throws IOException {
        Workbook workbook = new Workbook(out, "Wallplate", "1.0");
        Worksheet sheet = workbook.newWorksheet(sheetName(table.name()));
        for (int column = 0; column < table.heading().size(); column++) {
            sheet.value(0, column, table.heading().get(column));
            sheet.style(0, column).bold().set();
        }
        sheet.freezePane(0, 1);
        // The library's own is US letter.
        sheet.paperSize(PaperSize.A4_PAPER);
        for (int row = 0; row < table.rows().size(); row++) {
            List<Cell> cells = table.rows().get(row);
            for (int column = 0; column < cells.size(); column++) {
                write(sheet, row + 1, column, cells.get(column));
            }
        }
        workbook.finish();
    }

    private static void write(Worksheet sheet, int row, int column, Cell cell) {
        if (cell instanceof Cell.Number number) {
            sheet.value(row, column, number.value());
            int decimals = Math.max(0, number.value().scale());
            sheet.style(row, column).format(decimals == 0 ? "0" : "0." + "0".repeat(decimals)).set();
        } else {
            sheet.value(row, column, ((Cell.Text) cell).text());
        }
    }

    /** What no sheet may be called is left out: ECMA-376, part 1, 18.2.19, and what spreadsheet programs refuse. */
    private static String sheetName(String name) {
        String plain = name.replaceAll("[\\\\/*?:\\[\\]']", " ").strip();
        String named = plain.isEmpty() ? "List" : plain;
        return named.length() <= LONGEST_SHEET_NAME ? named : named.substring(0, LONGEST_SHEET_NAME).strip();
    }
}
