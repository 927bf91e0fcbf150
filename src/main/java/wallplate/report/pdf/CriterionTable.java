package wallplate.report.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.report.Topic;

/** Every criterion with what was asked, what was drawn, what still counts, the verdict and the marks. */
final class CriterionTable {

    private static final double HIGHEST_ROW = 4.5;
    private static final double LOWEST_ROW = 2.7;
    private static final Pen RULE = Pen.solid(0.12, Ink.FAINT);
    private static final Pen HEAD_RULE = Pen.solid(0.3, Ink.GRAPHITE);

    private final FeedbackWords words;
    private final MarkedSheet marked;
    private final List<PartLines> parts;

    CriterionTable(FeedbackWords words, MarkedSheet marked, List<PartLines> parts) {
        this.words = words;
        this.marked = marked;
        this.parts = parts;
    }

    /** How high the table would like to be. */
    double height() {
        return (marked.marks().size() + 1) * HIGHEST_ROW + 0.5;
    }

    /** Draws the table from the top of a box; rows are as high as the box allows, and what has no room is counted. */
    void draw(Canvas canvas, Box box) throws IOException {
        int rows = marked.marks().size() + 1;
        double row = Math.max(LOWEST_ROW, Math.min(HIGHEST_ROW, box.height() / rows));
        int fitting = Math.min(marked.marks().size(), (int) Math.floor(box.height() / row + 1e-6) - 1);
        Columns columns = new Columns(box, row);
        canvas.together("TR", () -> head(canvas, columns, box.top() - row));
        for (int index = 0; index < fitting; index++) {
            boolean last = index == fitting - 1 && fitting < marked.marks().size();
            double bottom = box.top() - (index + 2) * row;
            Mark mark = marked.marks().get(index);
            int left = marked.marks().size() - fitting + 1;
            canvas.together("TR", () -> {
                if (last) {
                    more(canvas, columns, bottom, left);
                } else {
                    row(canvas, columns, bottom, mark);
                }
            });
            canvas.line(box.left(), bottom, box.right(), bottom, RULE);
        }
    }

    /** Where the columns stand and how large their type is. */
    private record Columns(Box box, double row) {
        double number() {
            return box.left() + 2.5;
        }

        double title() {
            return box.left() + 7;
        }

        double asked() {
            return box.left() + 58;
        }

        double drawn() {
            return box.left() + 105;
        }

        double tolerance() {
            return box.left() + 126;
        }

        double sign() {
            return box.left() + 148;
        }

        double verdict() {
            return box.left() + 151;
        }

        double marks() {
            return box.right();
        }

        Type type() {
            return Type.BODY.sized(Math.min(2.75, row * 0.66));
        }

        double baseline(double bottom) {
            return bottom + (row - type().sizeMm() * 0.72) / 2;
        }
    }

    private void head(Canvas canvas, Columns at, double bottom) throws IOException {
        Type type = Type.SMALL_BOLD.sized(Math.min(2.45, at.row() * 0.6));
        double y = at.baseline(bottom);
        canvas.tagged("TH", () -> canvas.textCentred(words.text("table.number"), at.number(), y, type));
        canvas.tagged("TH", () -> canvas.text(words.text("table.criterion"), at.title(), y, type));
        canvas.tagged("TH", () -> canvas.text(words.text("table.asked"), at.asked(), y, type));
        canvas.tagged("TH", () -> canvas.text(words.text("table.drawn"), at.drawn(), y, type));
        canvas.tagged("TH", () -> canvas.text(words.text("table.tolerance"), at.tolerance(), y, type));
        canvas.tagged("TH", () -> canvas.text(words.text("table.verdict"), at.sign() - 1.5, y, type));
        canvas.tagged("TH", () -> canvas.textRight(words.text("table.marks"), at.marks(), y, type));
        canvas.line(at.box().left(), bottom, at.box().right(), bottom, HEAD_RULE);
    }

    private void row(Canvas canvas, Columns at, double bottom, Mark mark) throws IOException {
        Type type = at.type();
        double y = at.baseline(bottom);
        Optional<PartLines> part = mark.key().flatMap(this::partOf);
        String number = part.map(one -> String.valueOf(one.number())).orElse("");
        canvas.tagged("TD", () -> canvas.textCentred(number, at.number(), y, type));
        cell(canvas, mark.title(), at.title(), at.asked() - 1, y, type);
        cell(canvas, words.asked(mark), at.asked(), at.drawn() - 1, y, type);
        cell(canvas, words.drawn(mark), at.drawn(), at.tolerance() - 1, y, type);
        cell(canvas, words.tolerance(mark), at.tolerance(), at.sign() - 2, y, type);
        VerdictSign.draw(canvas, mark.verdict(), new Point(at.sign(), bottom + at.row() / 2));
        cell(canvas, words.verdictOnPaper(mark), at.verdict(), at.marks() - 13, y, type);
        canvas.tagged("TD", () -> canvas.textRight(words.marks(mark), at.marks(), y, type));
    }

    private static void cell(Canvas canvas, String text, double left, double right, double y, Type type)
            throws IOException {
        canvas.tagged("TD", () -> canvas.textFitted(text, left, y, right - left, type));
    }

    private void more(Canvas canvas, Columns at, double bottom, int count) throws IOException {
        String text = words.text("table.more", Map.of("count", words.values().number(count)));
        canvas.tagged("TD", () -> canvas.text(text, at.title(), at.baseline(bottom), at.type()));
    }

    private Optional<PartLines> partOf(String key) {
        return parts.stream()
                .filter(part -> part.part().equals(Topic.partOf(key)))
                .findFirst();
    }
}
