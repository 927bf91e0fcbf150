package wallplate.report.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import wallplate.assessment.AssessedSheet;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.sheet.LevelPage;
import wallplate.task.DrawingTask;

/**
 * The drawing-office frame of a report's page: a thin border and, at the lower right, the title block with the page's
 * facts.
 */
final class SheetFrame {

    static final Box PAPER = new Box(0, 0, 210, 297);
    /** Where a page's content may stand. */
    static final Box CONTENT = new Box(13, 13, 184, 272);

    static final double BLOCK_HEIGHT = 21;

    private static final Box BORDER = new Box(8, 8, 194, 281);

    /** The lowest place that is clear of the block. */
    static final double ABOVE_BLOCK = BORDER.bottom() + BLOCK_HEIGHT + 1.5;

    private static final double BLOCK_WIDTH = 108;
    private static final Pen THICK = Pen.solid(0.5, Ink.GRAPHITE);
    private static final Pen THIN = Pen.solid(0.18, Ink.GRAPHITE);

    private final FeedbackWords words;
    private final AssessedSheet sheet;

    SheetFrame(FeedbackWords words, AssessedSheet sheet) {
        this.words = words;
        this.sheet = sheet;
    }

    /** Draws the border, the title block, and the caution beside it. */
    void draw(Canvas canvas, int page, int pages) throws IOException {
        canvas.rectangle(BORDER, THICK);
        Box block = new Box(BORDER.right() - BLOCK_WIDTH, BORDER.bottom(), BLOCK_WIDTH, BLOCK_HEIGHT);
        canvas.rectangle(block, THICK);
        canvas.line(BORDER.left(), block.top(), block.left(), block.top(), THIN);
        cells(canvas, block, page, pages);
        canvas.tagged(
                "P",
                () -> canvas.paragraph(
                        words.text("caution"),
                        BORDER.left() + 4,
                        block.top() - 3,
                        block.left() - BORDER.left() - 8,
                        Type.SMALL));
    }

    private void cells(Canvas canvas, Box block, int page, int pages) throws IOException {
        DrawingTask task = sheet.expected().task();
        double row = block.height() / 3;
        double second = block.left() + block.width() * 0.62;
        canvas.line(block.left(), block.bottom() + row, block.right(), block.bottom() + row, THIN);
        canvas.line(block.left(), block.bottom() + 2 * row, block.right(), block.bottom() + 2 * row, THIN);
        canvas.line(second, block.bottom(), second, block.top(), THIN);
        List<String> cells = new ArrayList<>(List.of(
                "block.task", task.title(),
                "block.scale", task.scale().toString(),
                "block.sheet", name(),
                "block.page",
                        words.text(
                                "block.page-of",
                                Map.of(
                                        "page",
                                        words.values().number(page),
                                        "pages",
                                        words.values().number(pages))),
                "block.measured-by", measuredBy(),
                "block.guideline", guideline()));
        for (int cell = 0; cell < 6; cell++) {
            double left = cell % 2 == 0 ? block.left() : second;
            double width = cell % 2 == 0 ? second - block.left() : block.right() - second;
            double bottom = block.top() - (cell / 2 + 1) * row;
            String name = words.text(cells.get(2 * cell));
            String fact = cells.get(2 * cell + 1);
            canvas.tagged("P", () -> {
                canvas.text(name, left + 1.5, bottom + row - 2.5, Type.SMALL.sized(1.9));
                canvas.textFitted(fact, left + 1.5, bottom + 1.3, width - 3, Type.BODY_BOLD.sized(2.9));
            });
        }
    }

    /** Whose report it is: a learner's, or that on a scan which nobody is known to have drawn. */
    static String heading(FeedbackWords words, String name, AssessedSheet sheet) {
        return name.startsWith(sheet.scan())
                ? words.text("head.feedback", Map.of("sheet", name))
                : words.text("head.feedback-for", Map.of("learner", name));
    }

    private String name() {
        return sheet.page() == 1
                ? sheet.scan()
                : words.text(
                        "block.scan-page",
                        Map.of("scan", sheet.scan(), "page", words.values().number(sheet.page())));
    }

    private String measuredBy() {
        if (sheet instanceof AssessedSheet.Read read) {
            LevelPage page = read.levelPage();
            return words.text(
                    "calibration." + page.calibration().source().word(),
                    Map.of(
                            "length",
                            words.values().millimetres(page.calibration().lengthMm())));
        }
        return words.text("calibration.none");
    }

    private String guideline() {
        return sheet instanceof AssessedSheet.Read read ? read.marked().guideline() : "-";
    }
}
