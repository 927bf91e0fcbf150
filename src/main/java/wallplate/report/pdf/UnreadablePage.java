package wallplate.report.pdf;

import java.io.IOException;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Reasons;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;

/** The one page for a sheet that could not be read: why, and what to do. */
final class UnreadablePage {

    private static final int ADVICES = 4;

    private final FeedbackWords words;
    private final String name;
    private final AssessedSheet.Unreadable sheet;

    UnreadablePage(FeedbackWords words, String name, AssessedSheet.Unreadable sheet) {
        this.words = words;
        this.name = name;
        this.sheet = sheet;
    }

    void draw(Canvas canvas) throws IOException {
        Box content = SheetFrame.CONTENT;
        double width = content.width() * 0.8;
        canvas.tagged(
                "H1",
                () -> canvas.textFitted(
                        sheet.expected().task().title(),
                        content.left(),
                        content.top() - 5,
                        content.width(),
                        Type.TITLE));
        canvas.tagged(
                "P",
                () -> canvas.textFitted(
                        SheetFrame.heading(words, name, sheet),
                        content.left(),
                        content.top() - 10.5,
                        120,
                        Type.BODY));
        Type large = Type.BODY.sized(4);
        double left = content.left();
        double y = paragraph(
                canvas, "H2", "unreadable.head", new Box(left, 0, width, content.top() - 26), Type.HEADING.sized(4.6));
        String reason = Reasons.in(words.phrases().language()).say(sheet.reason());
        double reasonTop = y - 3;
        canvas.tagged("P", () -> canvas.paragraph(reason, left, reasonTop, width, large));
        y = reasonTop - canvas.paragraphHeight(reason, width, large);
        y = paragraph(canvas, "H2", "unreadable.what-to-do", new Box(left, 0, width, y - 8), Type.HEADING);
        for (int advice = 1; advice <= ADVICES; advice++) {
            canvas.text(String.valueOf(advice), left, y - 3 - large.sizeMm(), Type.HEADING);
            y = paragraph(canvas, "P", "unreadable.advice" + advice, new Box(left + 8, 0, width - 8, y - 3), large);
        }
        paragraph(canvas, "P", "unreadable.no-marks", new Box(left, 0, width, y - 8), large);
        new SheetFrame(words, sheet).draw(canvas, 1, 1);
    }

    /** Sets a text from the top of a box downwards and returns the y of its lower edge. */
    private double paragraph(Canvas canvas, String role, String key, Box box, Type type) throws IOException {
        canvas.tagged(role, () -> canvas.paragraph(words.text(key), box.left(), box.top(), box.width(), type));
        return box.top() - canvas.paragraphHeight(words.text(key), box.width(), type);
    }
}
