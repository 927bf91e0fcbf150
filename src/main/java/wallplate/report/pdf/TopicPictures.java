package wallplate.report.pdf;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import wallplate.assessment.AssessedSheet;
import wallplate.geometry.Segment;
import wallplate.marking.Mark;
import wallplate.measure.Finding;
import wallplate.measure.Measurement;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.report.ModelOnSheet;
import wallplate.report.Topic;
import wallplate.report.TopicPlace;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;

/** A place of the learner's own drawing, and the same place of the model answer beside it at the same enlargement. */
final class TopicPictures {

    private static final double CAPTION_MM = 4;
    private static final Pen STROKE = Pen.solid(0.5, Ink.BLUE);
    private static final Pen EDGE = Pen.solid(0.18, Ink.FAINT);

    private final PDDocument document;
    private final FeedbackWords words;
    private final AssessedSheet.Read sheet;
    private final PagePicture pagePicture;
    private final Optional<ModelOnSheet> model;

    TopicPictures(PDDocument document, FeedbackWords words, AssessedSheet.Read sheet) {
        this.document = document;
        this.words = words;
        this.sheet = sheet;
        this.pagePicture = new PagePicture(sheet.levelPage().ink());
        this.model = ModelOnSheet.of(sheet.expected(), sheet.measured());
    }

    /** Draws both pictures with their captions into two boxes of one size. */
    void draw(Canvas canvas, Topic topic, Box own, Box answer) throws IOException {
        TopicPlace topicPlace = TopicPlace.of(sheet.measured(), page(), topic, model);
        Optional<Dimensions> dimensions = dimensions(topicPlace, topic, own, answer);
        draw(canvas, topicPlace, new Spoken(topic.part(), words.heading(topic)), dimensions, own, answer);
    }

    /** Of which part the pictures speak, and what stands over them. */
    private record Spoken(String part, String heading) {}

    /** One size on both pictures, where it can be dimensioned there. */
    private record Dimensions(Optional<DimensionLine> drawn, DimensionLine asked) {}

    private Box page() {
        return new Box(0, 0, sheet.levelPage().ink().widthMm(), sheet.levelPage().ink().heightMm());
    }

    /** The first size of the topic that can be dimensioned: as measured on the one picture, as asked on the other. */
    private Optional<Dimensions> dimensions(TopicPlace topicPlace, Topic topic, Box own, Box answer) {
        for (Mark mark : topic.marks()) {
            if (model.isEmpty() || !(mark.expected().orElse(null) instanceof Expected.Length asked)) {
                continue;
            }
            Optional<DimensionLine> right = dimension(
                    topicPlace,
                    DimensionedEdges.onSheet(model.get(), asked.key()).orElse(List.of()),
                    picture(answer),
                    words.values().millimetres(asked.exactMm()));
            Optional<DimensionLine> drawn = mark.measured()
                    .filter(Finding::isMeasured)
                    .flatMap(found -> dimension(
                            topicPlace,
                            evidence(asked.key()),
                            picture(own),
                            words.values().found(asked, found)));
            if (right.isPresent()) {
                return Optional.of(new Dimensions(drawn, right.get()));
            }
        }
        return Optional.empty();
    }

    private List<Segment> evidence(String key) {
        return sheet.measured().measurement(key).map(Measurement::evidence).orElse(List.of());
    }

    private static Optional<DimensionLine> dimension(
            TopicPlace topicPlace, List<Segment> lines, Box picture, String size) {
        if (lines.size() != 2) {
            return Optional.empty();
        }
        Box region = topicPlace.region().proportionedLike(picture);
        return DimensionLine.between(
                region.mapTo(picture, lines.get(0)), region.mapTo(picture, lines.get(1)), picture, size);
    }

    /** Draws the whole drawing beside the whole model answer. */
    void drawWhole(Canvas canvas, List<Segment> drawing, Box own, Box answer) throws IOException {
        if (!drawing.isEmpty()) {
            Spoken whole = new Spoken("", sheet.expected().task().title());
            draw(canvas, new TopicPlace(Box.around(drawing).grown(4), List.of()), whole, Optional.empty(), own, answer);
        }
    }

    private void draw(
            Canvas canvas, TopicPlace topicPlace, Spoken spoken, Optional<Dimensions> dimensions, Box own, Box answer)
            throws IOException {
        Box ownPicture = picture(own);
        Box region = topicPlace.region().proportionedLike(ownPicture);
        caption(canvas, own, words.text("picture.own"));
        Optional<DimensionLine> drawn = dimensions.flatMap(Dimensions::drawn);
        canvas.tagged(
                "Figure", text("picture.own", spoken, drawn), () -> drawOwn(canvas, topicPlace, region, ownPicture, drawn));
        caption(canvas, answer, words.text("picture.model"));
        Box answerPicture = picture(answer);
        if (model.isPresent()) {
            Optional<DimensionLine> asked = dimensions.map(Dimensions::asked);
            canvas.tagged("Figure", text("picture.model", spoken, asked), () -> {
                drawModel(canvas, model.get(), spoken.part(), region, answerPicture);
                if (asked.isPresent()) {
                    asked.get().draw(canvas, answerPicture);
                }
            });
        } else {
            canvas.tagged(
                    "P",
                    () -> canvas.paragraph(
                            words.text("picture.no-heel"),
                            answerPicture.left() + 3,
                            answerPicture.top() - 4,
                            answerPicture.width() - 6,
                            Type.SMALL));
        }
        canvas.rectangle(answerPicture, EDGE);
    }

    private void drawOwn(
            Canvas canvas, TopicPlace topicPlace, Box region, Box place, Optional<DimensionLine> dimension)
            throws IOException {
        canvas.image(pagePicture.of(document, region, place.width()), place);
        canvas.clip(place);
        for (Segment stroke : topicPlace.strokes()) {
            canvas.line(region.mapTo(place, stroke), STROKE);
        }
        canvas.unclip();
        canvas.rectangle(place, EDGE);
        if (dimension.isPresent()) {
            dimension.get().draw(canvas, place);
        }
    }

    /** What a picture shows, for those who cannot see it. */
    private String text(String caption, Spoken spoken, Optional<DimensionLine> dimension) {
        String shown = words.text(caption) + ": " + spoken.heading();
        return dimension.map(line -> shown + ", " + line.size()).orElse(shown);
    }

    private static void caption(Canvas canvas, Box box, String caption) throws IOException {
        canvas.tagged("P", () -> canvas.text(caption, box.left(), box.top() - 2.6, Type.SMALL));
    }

    /** Where the picture stands in its box, under the caption. */
    private static Box picture(Box box) {
        return new Box(box.left(), box.bottom(), box.width(), box.height() - CAPTION_MM);
    }

    private static void drawModel(Canvas canvas, ModelOnSheet model, String part, Box region, Box place)
            throws IOException {
        canvas.clip(place);
        for (DrawnLine line : model.lines()) {
            boolean spokenOf = ModelOnSheet.isOf(part, line);
            Pen pen = pen(line);
            canvas.line(
                    region.mapTo(place, model.onSheet(line)),
                    spokenOf ? new Pen(Math.max(0.5, pen.widthMm()), Ink.BLUE, pen.dashMm()) : pen);
        }
        canvas.unclip();
    }

    /** Line weights in the spirit of ISO 128: what is cut thick, what is seen medium, what explains thin. */
    private static Pen pen(DrawnLine line) {
        return switch (line.role()) {
            case CUT_OUTLINE -> Pen.solid(0.4, Ink.GRAPHITE);
            case SEEN_OUTLINE -> Pen.solid(0.25, Ink.GRAPHITE);
            case DIAGONAL, HATCH -> Pen.solid(0.13, Ink.GREY);
            case BREAK -> new Pen(0.13, Ink.GREY, List.of(3.0, 1.0, 0.3, 1.0));
        };
    }
}
