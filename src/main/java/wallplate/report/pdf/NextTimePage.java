package wallplate.report.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.report.Praise;
import wallplate.report.Topic;

/** The second page of a report: what would gain most next time, with pictures, and what was done well. */
final class NextTimePage {

    private static final double TOPIC_HEIGHT = 60;
    private static final double PICTURE_WIDTH = 64;
    private static final double WHOLE_HEIGHT = 74;
    private static final double GAP = 4;
    private static final double BETWEEN_SENTENCES = 1.6;
    private static final double SMALLEST_TYPE = 2.3;

    private final PDDocument document;
    private final FeedbackWords words;
    private final AssessedSheet.Read sheet;

    NextTimePage(PDDocument document, FeedbackWords words, AssessedSheet.Read sheet) {
        this.document = document;
        this.words = words;
        this.sheet = sheet;
    }

    void draw(Canvas canvas) throws IOException {
        Box content = SheetFrame.CONTENT;
        List<Topic> topics = Topic.greatest(sheet.marked(), FeedbackWords.TOPICS);
        canvas.tagged("H1", () -> canvas.text(words.head(topics), content.left(), content.top() - 5, Type.TITLE));
        TopicPictures pictures = new TopicPictures(document, words, sheet);
        double top = content.top() - 10;
        for (int index = 0; index < topics.size(); index++) {
            topic(
                    canvas,
                    pictures,
                    topics.get(index),
                    index + 1,
                    new Box(content.left(), top - TOPIC_HEIGHT, content.width(), TOPIC_HEIGHT));
            top -= TOPIC_HEIGHT + GAP;
        }
        if (topics.isEmpty()) {
            pictures.drawWhole(canvas, drawing(), half(content, top, 0), half(content, top, 1));
            top -= WHOLE_HEIGHT + GAP;
        }
        praise(canvas, new Box(content.left(), SheetFrame.CONTENT.bottom(), content.width(), top - content.bottom()));
        new SheetFrame(words, sheet).draw(canvas, 2, 2);
    }

    private List<Segment> drawing() {
        return PartLines.of(sheet).stream()
                .flatMap(part -> part.lines().stream())
                .toList();
    }

    private static Box half(Box content, double top, int index) {
        double width = (content.width() - GAP) / 2;
        return new Box(content.left() + index * (width + GAP), top - WHOLE_HEIGHT, width, WHOLE_HEIGHT);
    }

    private void topic(Canvas canvas, TopicPictures pictures, Topic topic, int number, Box box) throws IOException {
        canvas.line(box.left(), box.top(), box.right(), box.top(), Pen.solid(0.18, Ink.FAINT));
        canvas.tagged(
                "H2",
                () -> canvas.text(
                        number + "  " + words.heading(topic), box.left(), box.top() - 5.2, Type.HEADING));
        canvas.tagged("P", () -> canvas.textRight(words.gain(topic), box.right(), box.top() - 5.2, Type.BODY));
        Box own = new Box(box.left(), box.bottom(), PICTURE_WIDTH, box.height() - 7.5);
        Box answer = new Box(own.right() + GAP, box.bottom(), PICTURE_WIDTH, own.height());
        pictures.draw(canvas, topic, own, answer);
        double left = answer.right() + GAP;
        sentences(canvas, topic, new Box(left, box.bottom(), box.right() - left, own.height() - 3));
    }

    private void sentences(Canvas canvas, Topic topic, Box box) throws IOException {
        List<String> sentences = words.sentences(topic);
        Type type = fitting(canvas, sentences, box);
        double y = box.top();
        for (String sentence : sentences) {
            if (y - canvas.paragraphHeight(sentence, box.width(), type) < box.bottom()) {
                return;
            }
            double top = y;
            canvas.tagged("P", () -> canvas.paragraph(sentence, box.left(), top, box.width(), type));
            y -= canvas.paragraphHeight(sentence, box.width(), type) + BETWEEN_SENTENCES;
        }
    }

    /** The largest type in which all of it fits; the smallest where nothing does. */
    private static Type fitting(Canvas canvas, List<String> sentences, Box box) throws IOException {
        for (double size = Type.BODY.sizeMm(); size > SMALLEST_TYPE; size -= 0.15) {
            Type type = Type.BODY.sized(size);
            double height = 0;
            for (String sentence : sentences) {
                height += canvas.paragraphHeight(sentence, box.width(), type) + BETWEEN_SENTENCES;
            }
            if (height - BETWEEN_SENTENCES <= box.height()) {
                return type;
            }
        }
        return Type.BODY.sized(SMALLEST_TYPE);
    }

    private void praise(Canvas canvas, Box box) throws IOException {
        canvas.line(box.left(), box.top(), box.right(), box.top(), Pen.solid(0.18, Ink.FAINT));
        canvas.tagged(
                "H2", () -> canvas.text(words.text("praise.head"), box.left(), box.top() - 5.2, Type.HEADING));
        String praise = words.praise(Praise.of(sheet.marked()));
        double top = box.top() - 7.5;
        canvas.tagged("P", () -> canvas.paragraph(praise, box.left(), top, box.width(), Type.BODY));
        double end = top - canvas.paragraphHeight(praise, box.width(), Type.BODY);
        if (sheet.marked().undecided() > 0) {
            String undecided = words.text("praise.undecided");
            double under = end - 1.5;
            canvas.tagged("P", () -> canvas.paragraph(undecided, box.left(), under, box.width(), Type.BODY));
            end = under - canvas.paragraphHeight(undecided, box.width(), Type.BODY);
        }
        lines(canvas, new Box(box.left(), SheetFrame.ABOVE_BLOCK, box.width(), end - GAP - SheetFrame.ABOVE_BLOCK));
    }

    /** How the lines are drawn, in the largest type in which it fits under the rest. */
    private void lines(Canvas canvas, Box box) throws IOException {
        List<String> said = words.lines(sheet.measured());
        if (said.isEmpty()) {
            return;
        }
        canvas.line(box.left(), box.top(), box.right(), box.top(), Pen.solid(0.18, Ink.FAINT));
        canvas.tagged("H2", () -> canvas.text(words.text("lines.head"), box.left(), box.top() - 5.2, Type.HEADING));
        String joined = String.join(" ", said);
        double top = box.top() - 7.5;
        Type type = fitting(canvas, List.of(joined), new Box(box.left(), box.bottom(), box.width(), top - box.bottom()));
        canvas.tagged("P", () -> canvas.paragraph(joined, box.left(), top, box.width(), type));
    }
}
