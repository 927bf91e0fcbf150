package wallplate.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import wallplate.report.pdf.SignedTableDocument;

/**
 * A table on A4 paper with lines to sign below it.
 *
 * @param facts one line below the title
 * @param heading of the columns; the second one takes the room that is left
 * @param notes paragraphs below the table
 * @param signatures whose signatures are asked for
 */
public record SignedTable(
        String title,
        String facts,
        List<String> heading,
        List<List<String>> rows,
        List<String> notes,
        List<String> signatures) {

    public SignedTable {
        heading = List.copyOf(heading);
        rows = rows.stream().map(List::copyOf).toList();
        notes = List.copyOf(notes);
        signatures = List.copyOf(signatures);
    }

    /** Writes it as PDF, on as many pages as it needs. */
    public void write(OutputStream out) throws IOException {
        SignedTableDocument.write(this, out);
    }
}
