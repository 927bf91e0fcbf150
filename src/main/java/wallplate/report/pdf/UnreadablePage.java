package wallplate.report.pdf;

import java.io.IOException;
import java.util.Map;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Reasons;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;

/** The one page for a sheet that could not be read: why, and what to do. */
final class UnreadablePage {

    private static final int ADVICES = 4;

    private final FeedbackWords words;
    private final AssessedSheet.Unreadable sheet;

    UnreadablePage(FeedbackWords words, AssessedSheet.Unreadable sheet) {
        this.words = words;
        this.sheet = sheet;
    }

    void draw(Canvas canvas) throws IOException {
        new SheetFrame(words, sheet).draw(canvas, 1, 1);
        Box content = SheetFrame.CONTENT;
        double width = content.width() * 0.8;
        canvas.textFitted(
                sheet.expected().task().title(), content.left(), content.top() - 5, content.width(), Type.TITLE);
        canvas.textFitted(
                words.text("head.feedback", Map.of("sheet", sheet.scan())),
                content.left(),
                content.top() - 10.5,
                120,
                Type.BODY);
        Type large = Type.BODY.sized(4);
        double y = canvas.paragraph(
                words.text("unreadable.head"), content.left(), content.top() - 26, width, Type.HEADING.sized(4.6));
        String reason = Reasons.in(words.phrases().language()).say(sheet.reason());
        y = canvas.paragraph(reason, content.left(), y - 3, width, large);
        y = canvas.paragraph(words.text("unreadable.what-to-do"), content.left(), y - 8, width, Type.HEADING);
        for (int advice = 1; advice <= ADVICES; advice++) {
            canvas.text(String.valueOf(advice), content.left(), y - 3 - large.sizeMm(), Type.HEADING);
            y = canvas.paragraph(words.text("unreadable.advice" + advice), content.left() + 8, y - 3, width - 8, large);
        }
        canvas.paragraph(words.text("unreadable.no-marks"), content.left(), y - 8, width, large);
    }
}
