package wallplate.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.marking.Mark;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;

/**
 * The place on the learner's page that a topic is about.
 *
 * @param region what to show of the page, and of the model answer at the same place
 * @param strokes the learner's strokes that the topic's values were taken from
 */
public record TopicPlace(Box region, List<Segment> strokes) {

    private static final double SMALLEST_MM = 34;
    private static final double WIDEST_MM = 95;
    private static final double HIGHEST_MM = 75;
    private static final double AROUND_MM = 5;

    private static final Set<String> ROWS = Set.of("support", "brander");
    private static final Set<String> ONE_SIZE = Set.of("width", "depth", "crossed");

    public TopicPlace {
        strokes = List.copyOf(strokes);
    }

    /** The place of a topic; the whole page where neither strokes nor the heel point tell where it would be. */
    public static TopicPlace of(MeasuredSheet measured, Box page, Topic topic, Optional<ModelOnSheet> model) {
        List<Segment> strokes = topic.marks().stream()
                .flatMap(mark -> mark.key().stream())
                .flatMap(key -> measured.measurement(key).stream())
                .map(Measurement::evidence)
                .flatMap(List::stream)
                .distinct()
                .toList();
        List<Segment> around = new ArrayList<>();
        if (model.isPresent() && asksForOneOfARow(topic)) {
            around.addAll(model.get().oneOf(topic.part()));
        } else {
            around.addAll(strokes);
            model.ifPresent(answer -> around.addAll(answer.firstOf(topic.part())));
        }
        if (around.isEmpty()) {
            return new TopicPlace(page, strokes);
        }
        Box box = Box.around(around).grown(AROUND_MM);
        if (showsWhole(topic)) {
            return new TopicPlace(box, strokes);
        }
        return new TopicPlace(limited(box, model.map(ModelOnSheet::heel).orElse(box.centre())), strokes);
    }

    /** Sizes of one of many small things are shown at the first of them, though strokes of all were measured. */
    private static boolean asksForOneOfARow(Topic topic) {
        return ROWS.contains(topic.part())
                && topic.marks().stream().allMatch(mark -> mark.key()
                        .filter(key -> ONE_SIZE.contains(key.substring(key.indexOf('.') + 1)))
                        .isPresent());
    }

    private static boolean showsWhole(Topic topic) {
        return topic.marks().stream().map(Mark::key).anyMatch(key -> key.filter("drawing.eaves"::equals)
                .isPresent());
    }

    /** No smaller than shows where it is, no larger than shows what it is; a long part is shown at the eaves. */
    private static Box limited(Box box, Point heel) {
        double width = Math.min(WIDEST_MM, Math.max(SMALLEST_MM, box.width()));
        double height = Math.min(HIGHEST_MM, Math.max(SMALLEST_MM, box.height()));
        return new Box(
                start(box.left(), box.width(), width, heel.x()),
                start(box.bottom(), box.height(), height, heel.y()),
                width,
                height);
    }

    private static double start(double from, double length, double shown, double heel) {
        if (length <= shown) {
            return from - (shown - length) / 2;
        }
        return Math.max(from, Math.min(from + length - shown, heel - shown / 2));
    }
}
