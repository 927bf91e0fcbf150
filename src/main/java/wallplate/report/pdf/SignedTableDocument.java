package wallplate.report.pdf;

import java.io.IOException;
import java.io.OutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import wallplate.report.SignedTable;

/** A table with signature lines, set page by page; lengths are millimetres. */
public final class SignedTableDocument {

    private static final double LEFT = 15;
    private static final double RIGHT = 195;
    private static final double TOP = 282;
    private static final double BOTTOM = 18;
    private static final double ROW = 6;
    private static final double NUMBER_WIDTH = 9;
    private static final double NARROWEST_ENTRY = 13;
    private static final double WIDEST_ENTRY = 26;
    private static final double NARROWEST_NAME = 40;
    private static final double SIGNATURE = 17;
    private static final Pen THICK = Pen.solid(0.4, Ink.GRAPHITE);
    private static final Pen THIN = Pen.solid(0.15, Ink.FAINT);

    private final PDDocument document;
    private final ReportFonts fonts;
    private final SignedTable table;
    private final double entryWidth;
    private Canvas canvas;
    private double y;
    private int page;

    private SignedTableDocument(PDDocument document, SignedTable table) throws IOException {
        this.document = document;
        this.fonts = new ReportFonts(document);
        this.table = table;
        double room = RIGHT - LEFT - NUMBER_WIDTH - NARROWEST_NAME;
        this.entryWidth = Math.max(NARROWEST_ENTRY, Math.min(WIDEST_ENTRY, room / (table.heading().size() - 2)));
        this.canvas = newPage();
    }

    /** Writes the table. */
    public static void write(SignedTable table, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            SignedTableDocument pages = new SignedTableDocument(document, table);
            pages.rows();
            pages.notes();
            pages.signatures();
            pages.canvas.close();
            document.save(out);
        }
    }

    private Canvas newPage() throws IOException {
        PDPage added = new PDPage(PDRectangle.A4);
        document.addPage(added);
        page++;
        Canvas fresh = new Canvas(document, added, fonts);
        fresh.textFitted(table.title(), LEFT, TOP - 5, RIGHT - LEFT - 20, Type.TITLE);
        fresh.textRight("page " + page, RIGHT, TOP - 5, Type.SMALL);
        fresh.textFitted(table.facts(), LEFT, TOP - 11, RIGHT - LEFT, Type.BODY);
        y = TOP - 15;
        return fresh;
    }

    private void turn() throws IOException {
        canvas.close();
        canvas = newPage();
    }

    private void rows() throws IOException {
        row(table.heading(), Type.BODY_BOLD, THICK);
        for (var cells : table.rows()) {
            if (y - ROW < BOTTOM) {
                turn();
                row(table.heading(), Type.BODY_BOLD, THICK);
            }
            row(cells, Type.BODY, THIN);
        }
        y -= 3;
    }

    private void row(java.util.List<String> cells, Type type, Pen below) throws IOException {
        double base = y - ROW + 1.8;
        canvas.textRight(cells.get(0), LEFT + NUMBER_WIDTH - 3, base, type);
        double entries = RIGHT - entryWidth * (cells.size() - 2);
        canvas.textFitted(cells.get(1), LEFT + NUMBER_WIDTH, base, entries - LEFT - NUMBER_WIDTH - 2, type);
        for (int cell = 2; cell < cells.size(); cell++) {
            double right = entries + entryWidth * (cell - 1);
            double width = Math.min(canvas.width(cells.get(cell), type), entryWidth - 1.5);
            canvas.textFitted(cells.get(cell), right - width, base, width + 0.01, type);
        }
        y -= ROW;
        canvas.line(LEFT, y, RIGHT, y, below);
    }

    private void notes() throws IOException {
        for (String note : table.notes()) {
            if (y - canvas.paragraphHeight(note, RIGHT - LEFT, Type.SMALL) < BOTTOM) {
                turn();
            }
            y = canvas.paragraph(note, LEFT, y, RIGHT - LEFT, Type.SMALL) - 1;
        }
    }

    private void signatures() throws IOException {
        if (y - SIGNATURE * table.signatures().size() < BOTTOM) {
            turn();
        }
        for (String who : table.signatures()) {
            y -= SIGNATURE;
            canvas.line(LEFT, y, LEFT + 62, y, THICK);
            canvas.line(LEFT + 68, y, LEFT + 138, y, THICK);
            canvas.line(LEFT + 144, y, RIGHT, y, THICK);
            canvas.text(who + ", name", LEFT, y - 3.2, Type.SMALL);
            canvas.text("Signature", LEFT + 68, y - 3.2, Type.SMALL);
            canvas.text("Date", LEFT + 144, y - 3.2, Type.SMALL);
        }
    }
}
