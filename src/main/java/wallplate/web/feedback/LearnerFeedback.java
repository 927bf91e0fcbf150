package wallplate.web.feedback;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import wallplate.assessment.AssessedSheet;
import wallplate.marking.Mark;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkEntry;
import wallplate.records.PageFacts;
import wallplate.report.Box;
import wallplate.report.FeedbackWords;
import wallplate.report.ModelOnSheet;
import wallplate.report.Praise;
import wallplate.report.Topic;
import wallplate.report.TopicPlace;
import wallplate.web.sheet.ModelView;
import wallplate.web.sheet.SheetOverlay;

/**
 * What a learner reads about one sheet.
 *
 * @param next what stands over the topics
 * @param topics what would gain most, the greatest first
 * @param lines how the lines themselves are drawn; empty where they were not measured
 * @param difference the whole drawing with the model answer over it; null where the heel point was not found
 */
record LearnerFeedback(
        FeedbackWords words,
        SheetOverlay overlay,
        String next,
        List<TopicView> topics,
        String praise,
        List<Row> rows,
        List<String> lines,
        Optional<ModelView> difference) {

    /** One thing to do better, with its place on the sheet and beside it on the model answer. */
    record TopicView(String heading, String gain, List<String> sentences, ModelView place, String asked, String drawn) {}

    /**
     * One criterion.
     *
     * @param number that of its part on the drawing; empty where it has none
     */
    record Row(String number, Mark mark, String asked, String drawn, String tolerance, String verdict, String marks) {}

    static LearnerFeedback of(AssessedSheet.Read sheet, PageFacts page, Locale language) {
        FeedbackWords words = FeedbackWords.in(language, sheet.expected());
        List<Topic> topics = Topic.greatest(sheet.marked(), FeedbackWords.TOPICS);
        Optional<ModelOnSheet> model = ModelOnSheet.of(sheet.expected(), sheet.measured());
        SheetOverlay overlay = SheetOverlay.of(
                new KeptAssessment(page, sheet.measured(), sheet.marked()), MarkEntry.ofUnkept(sheet.marked()));
        return new LearnerFeedback(
                words,
                overlay,
                words.head(topics),
                topics.stream().map(topic -> view(sheet, page, words, topic, model)).toList(),
                words.praise(Praise.of(sheet.marked())),
                rows(sheet, words, overlay),
                words.lines(sheet.measured()),
                ModelView.ofDrawing(page, sheet.measured(), model));
    }

    private static TopicView view(
            AssessedSheet.Read sheet, PageFacts page, FeedbackWords words, Topic topic, Optional<ModelOnSheet> model) {
        Box whole = new Box(0, 0, page.widthMm(), page.heightMm());
        TopicPlace place = TopicPlace.of(sheet.measured(), whole, topic, model);
        Mark first = topic.marks().get(0);
        return new TopicView(
                words.heading(topic),
                words.gain(topic),
                words.sentences(topic),
                ModelView.of(page, place.region(), place.strokes(), model, topic.part()),
                words.asked(first),
                words.drawn(first));
    }

    private static List<Row> rows(AssessedSheet.Read sheet, FeedbackWords words, SheetOverlay overlay) {
        Map<String, String> numbers = new HashMap<>();
        overlay.parts().forEach(part -> numbers.put(part.name(), Integer.toString(part.number())));
        List<Row> rows = new ArrayList<>();
        for (Mark mark : sheet.marked().marks()) {
            String number = mark.key().map(key -> numbers.getOrDefault(Topic.partOf(key), "")).orElse("");
            rows.add(new Row(
                    number,
                    mark,
                    words.asked(mark),
                    words.drawn(mark),
                    words.tolerance(mark),
                    words.verdict(mark),
                    words.marks(mark)));
        }
        return rows;
    }
}
