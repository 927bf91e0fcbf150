package wallplate.tables.csv;

import java.io.IOException;
import java.io.OutputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import wallplate.tables.Cell;
import wallplate.tables.LineFault;
import wallplate.tables.Row;
import wallplate.tables.Table;
import wallplate.tables.TableReading;

/** A list as RFC 4180 has it; read also with semicolons or tabs between the cells, as spreadsheets write them. */
public final class CsvTable {

    private static final char BYTE_ORDER_MARK = '\uFEFF';
    /** What makes a spreadsheet take a text for a formula: OWASP, CSV Injection. */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private CsvTable() {}

    /** Reads every row, or names the line at which the text is no list. */
    public static TableReading read(byte[] content) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer bytes = ByteBuffer.wrap(content);
        CharBuffer letters = CharBuffer.allocate(content.length + 1);
        CoderResult result = decoder.decode(bytes, letters, true);
        if (result.isError()) {
            return refused(
                    lineAt(content, bytes.position()),
                    "It holds letters that are not UTF-8. Keep the list as \"CSV UTF-8\" and hand it in again.");
        }
        String text = letters.flip().toString();
        return rows(text.isEmpty() || text.charAt(0) != BYTE_ORDER_MARK ? text : text.substring(1));
    }

    private static TableReading rows(String text) {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator(text))
                .setIgnoreEmptyLines(false)
                .setIgnoreSurroundingSpaces(true)
                .get();
        List<Row> rows = new ArrayList<>();
        int line = 1;
        try (CSVParser parser = CSVParser.parse(new StringReader(text), format)) {
            Iterator<CSVRecord> records = parser.iterator();
            while (records.hasNext()) {
                Row row = new Row(line, records.next().stream().map(CsvTable::unescaped).toList());
                if (!row.isBlank()) {
                    rows.add(row);
                }
                line = (int) parser.getCurrentLineNumber() + 1;
            }
        } catch (IOException | UncheckedIOException broken) {
            return refused(line, "A quotation mark is opened and not closed, or text follows a closed one.");
        }
        return new TableReading.Read(rows);
    }

    /** The one of comma, semicolon and tab that the first line with letters has most of. */
    private static char separator(String text) {
        String first = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
        char most = ',';
        for (char candidate : new char[] {';', '\t'}) {
            if (count(first, candidate) > count(first, most)) {
                most = candidate;
            }
        }
        return most;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(letter -> letter == wanted).count();
    }

    private static int lineAt(byte[] content, int position) {
        int line = 1;
        for (int index = 0; index < position; index++) {
            line += content[index] == '\n' ? 1 : 0;
        }
        return line;
    }

    private static TableReading refused(int line, String sentence) {
        return new TableReading.Refused(List.of(new LineFault(line, sentence)));
    }

    /** Writes the list; a text that begins like a formula is led by an apostrophe, which reading takes away again. */
    public static void write(Table table, OutputStream out) throws IOException {
        StringBuilder text = new StringBuilder().append(BYTE_ORDER_MARK);
        var printer = CSVFormat.RFC4180.print(text);
        printer.printRecord(table.heading().stream().map(CsvTable::escaped));
        for (List<Cell> row : table.rows()) {
            printer.printRecord(row.stream().map(CsvTable::written));
        }
        out.write(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static String written(Cell cell) {
        return cell instanceof Cell.Number number
                ? number.value().toPlainString()
                : escaped(((Cell.Text) cell).text());
    }

    private static String escaped(String text) {
        return startsLikeFormula(text) || (text.startsWith("'") && startsLikeFormula(text.substring(1)))
                ? "'" + text
                : text;
    }

    private static String unescaped(String cell) {
        String text = cell.strip();
        boolean led = text.startsWith("'")
                && (startsLikeFormula(text.substring(1))
                        || (text.startsWith("''") && startsLikeFormula(text.substring(2))));
        return led ? text.substring(1) : text;
    }

    private static boolean startsLikeFormula(String text) {
        return !text.isEmpty() && FORMULA_STARTS.indexOf(text.charAt(0)) >= 0;
    }
}
