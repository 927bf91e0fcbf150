package wallplate.drafting;

import java.util.List;
import wallplate.drafting.layout.PrintedSheet;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.drafting.pdf.PdfBook;
import wallplate.drafting.svg.SvgWriter;
import wallplate.task.DrawingTask;

/**
 * The sheets that learners draw on: frame, title block, corner marks and code for the reader of the scans, and the place
 * for the reference bar that the learner draws.
 */
public final class DrawingSheets {

    private final DrawingTask task;
    private final boolean brief;
    private final List<String> notes;

    private DrawingSheets(DrawingTask task, boolean brief, List<String> notes) {
        this.task = task;
        this.brief = brief;
        this.notes = List.copyOf(notes);
    }

    /** Without the brief and without notes. */
    public static DrawingSheets of(DrawingTask task) {
        return new DrawingSheets(task, false, List.of());
    }

    /** With the task's sizes printed small and light in the corner above the eaves, which drawings leave free. */
    public DrawingSheets withBrief(boolean printed) {
        return new DrawingSheets(task, printed, notes);
    }

    /** With the teacher's own sentences there. */
    public DrawingSheets withNotes(List<String> sentences) {
        return new DrawingSheets(task, brief, sentences);
    }

    /**
     * One PDF with a sheet for each owner, in their order.
     *
     * @throws IllegalArgumentException for an empty list, or an id that a code cannot hold
     */
    public byte[] pdf(List<SheetOwner> owners) {
        if (owners.isEmpty()) {
            throw new IllegalArgumentException("no sheets to print: name at least one learner, or ask for blank sheets");
        }
        PrintedSheet sheet = sheet();
        try (PdfBook book = new PdfBook("Drawing sheets: " + task.title())) {
            PdfBook.Stamp common = book.stamp(sheet.common());
            for (SheetOwner owner : owners) {
                book.add(common, own(sheet, owner));
            }
            return book.bytes();
        }
    }

    /** One sheet as an {@code svg} element, for a look before printing. */
    public String svg(SheetOwner owner) {
        PrintedSheet sheet = sheet();
        return new SvgWriter(FaceWidths.shared()).inline(sheet.whole(own(sheet, owner)));
    }

    private PrintedSheet sheet() {
        return new PrintedSheet(task, brief, notes, FaceWidths.shared());
    }

    private Picture own(PrintedSheet sheet, SheetOwner owner) {
        return sheet.own(
                owner.code(task.id()).payload(),
                owner.learnerName(),
                owner.className(),
                owner.date(),
                owner.sheetNumber());
    }
}
