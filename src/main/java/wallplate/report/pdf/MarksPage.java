package wallplate.report.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Reasons;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.sheet.InkImage;

/** The first page of a report: the learner's drawing with the measured parts, and every criterion. */
final class MarksPage {

    private static final double HEAD_HEIGHT = 15;
    private static final double LEGEND_HEIGHT = 5.5;
    private static final double LOWEST_PICTURE = 70;
    private static final double HIGHEST_PICTURE = 112;
    private static final double AROUND_DRAWING_MM = 10;

    private final PDDocument document;
    private final FeedbackWords words;
    private final String name;
    private final AssessedSheet.Read sheet;
    private final List<PartLines> parts;

    MarksPage(PDDocument document, FeedbackWords words, String name, AssessedSheet.Read sheet) {
        this.document = document;
        this.words = words;
        this.name = name;
        this.sheet = sheet;
        this.parts = PartLines.of(sheet);
    }

    void draw(Canvas canvas) throws IOException {
        Box content = SheetFrame.CONTENT;
        head(canvas, content);
        double floor = 8 + SheetFrame.BLOCK_HEIGHT + 3;
        double notes = notesHeight(canvas, content);
        CriterionTable table = new CriterionTable(words, sheet.marked(), parts);
        double room = content.top() - HEAD_HEIGHT - LEGEND_HEIGHT - notes - floor;
        double picture = Math.max(LOWEST_PICTURE, Math.min(HIGHEST_PICTURE, room - table.height()));
        double top = content.top() - HEAD_HEIGHT;
        canvas.tagged(
                "Figure",
                words.text("picture.sheet", Map.of("parts", partNames())),
                () -> picture(canvas, new Box(content.left(), top - picture, content.width(), picture)));
        canvas.tagged("P", () -> legend(canvas, content.left(), top - picture - LEGEND_HEIGHT + 1.5));
        double tableTop = top - picture - LEGEND_HEIGHT;
        canvas.together(
                "Table",
                () -> table.draw(
                        canvas,
                        new Box(content.left(), floor + notes, content.width(), tableTop - floor - notes)));
        notes(canvas, content, floor + notes);
        new SheetFrame(words, sheet).draw(canvas, 1, 2);
    }

    private String partNames() {
        return parts.stream()
                .map(part -> part.number() + " " + words.names().part(part.part()))
                .collect(Collectors.joining(", "));
    }

    private void head(Canvas canvas, Box content) throws IOException {
        MarkedSheet marked = sheet.marked();
        String total = words.text(
                "head.total",
                Map.of(
                        "awarded", words.values().marks(marked.awarded()),
                        "available", words.values().marks(marked.available())));
        double totalWidth = canvas.width(total, Type.TITLE);
        canvas.tagged(
                "H1",
                () -> canvas.textFitted(
                        sheet.expected().task().title(),
                        content.left(),
                        content.top() - 5,
                        content.width() - totalWidth - 6,
                        Type.TITLE));
        canvas.tagged("P", () -> canvas.textRight(total, content.right(), content.top() - 5, Type.TITLE));
        canvas.tagged(
                "P",
                () -> canvas.textFitted(
                        SheetFrame.heading(words, name, sheet),
                        content.left(),
                        content.top() - 10.5,
                        120,
                        Type.BODY));
        if (marked.undecided() > 0) {
            String open =
                    words.text("head.undecided", Map.of("count", words.values().number(marked.undecided())));
            canvas.tagged("P", () -> canvas.textRight(open, content.right(), content.top() - 10.5, Type.BODY));
        }
    }

    private void picture(Canvas canvas, Box room) throws IOException {
        InkImage ink = sheet.levelPage().ink();
        Box region = drawingRegion(ink, room);
        double scale = Math.min(room.width() / region.width(), room.height() / region.height());
        double width = region.width() * scale;
        double height = region.height() * scale;
        Box place = new Box(
                room.left() + (room.width() - width) / 2, room.bottom() + (room.height() - height) / 2, width, height);
        canvas.image(new PagePicture(ink).of(document, region, width), place);
        new NumberedOverlay(ink, region, place).draw(canvas, parts);
        canvas.rectangle(place, Pen.solid(0.18, Ink.FAINT));
    }

    /** The part of the sheet with the drawing on it; the whole sheet where nothing was found. */
    private Box drawingRegion(InkImage ink, Box room) {
        Box page = new Box(0, 0, ink.widthMm(), ink.heightMm());
        List<Segment> lines = new ArrayList<>();
        parts.forEach(part -> lines.addAll(part.lines()));
        return lines.isEmpty()
                ? page
                : Box.around(lines)
                        .grown(AROUND_DRAWING_MM)
                        .proportionedLike(room)
                        .within(page);
    }

    private void legend(Canvas canvas, double left, double y) throws IOException {
        canvas.text(words.text("legend"), left, y, Type.SMALL);
    }

    private String noteText() {
        Reasons reasons = Reasons.in(words.phrases().language());
        return sheet.levelPage().warnings().stream().map(reasons::say).collect(Collectors.joining(" "));
    }

    private double notesHeight(Canvas canvas, Box content) throws IOException {
        String text = noteText();
        return text.isBlank() ? 0 : canvas.paragraphHeight(text, content.width(), Type.SMALL) + 2;
    }

    private void notes(Canvas canvas, Box content, double top) throws IOException {
        String text = noteText();
        if (!text.isBlank()) {
            canvas.tagged("P", () -> canvas.paragraph(text, content.left(), top - 1, content.width(), Type.SMALL));
        }
    }
}
