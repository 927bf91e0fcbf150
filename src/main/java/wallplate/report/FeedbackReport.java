package wallplate.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import wallplate.assessment.AssessedSheet;
import wallplate.report.pdf.FeedbackDocument;

/**
 * The feedback report of a sheet as a PDF of at most two A4 pages; the same sheet gives the same bytes.
 *
 * <p>Page 1 has the drawing with its measured parts and every criterion, page 2 what would gain most next time and
 * what was done well. A sheet that could not be read gets one page that says why and what to do. Each report stands
 * alone, so that several threads may use one.
 */
public final class FeedbackReport {

    private final Locale language;

    /** Reports in English. */
    public FeedbackReport() {
        this(Locale.ENGLISH);
    }

    /** Reports in a language; the sentences of the marks are in that of the marker. */
    public FeedbackReport(Locale language) {
        this.language = language;
    }

    /** Writes the report of a sheet that goes by its scan's name; the stream is left open. */
    public void write(AssessedSheet sheet, OutputStream out) throws IOException {
        write(sheet.scan(), sheet, out);
    }

    /**
     * Writes the report of a sheet; the stream is left open.
     *
     * @param name the learner's, as it stands at the head
     */
    public void write(String name, AssessedSheet sheet, OutputStream out) throws IOException {
        try (FeedbackDocument document = new FeedbackDocument(language)) {
            document.add(name, sheet);
            document.write(out);
        }
    }
}
