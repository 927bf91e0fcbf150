package wallplate.web.learner;

import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import wallplate.drafting.ConstructionGuide;
import wallplate.drafting.GuideStep;
import wallplate.marking.LineWords;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Reasons;
import wallplate.marking.Verdict;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkEntry;
import wallplate.report.FeedbackWords;
import wallplate.report.LastTry;
import wallplate.report.Praise;
import wallplate.report.Topic;
import wallplate.task.DrawingTask;
import wallplate.web.page.Words;
import wallplate.web.sheet.SheetOverlay;

/**
 * What a learner sees after a check.
 *
 * @param picture the level page as an address that carries the picture in itself, since the page may outlive what is kept
 * @param redo the topics that would gain most, in the order in which they are drawn
 * @param steps the construction guide's first step for each topic's part
 * @param more what else was not met
 * @param right the parts of which everything is right
 * @param cannotTell criteria that the program left open
 * @param lines how the lines themselves are drawn
 * @param changed what is different from the last try, by its kind
 * @param isAnotherTry whether there was a try before
 * @param carried what the next try is compared with, by criterion
 */
record CheckResult(
        String picture,
        SheetOverlay overlay,
        List<Topic> redo,
        Map<String, GuideStep> steps,
        List<Mark> more,
        List<String> right,
        List<Mark> cannotTell,
        List<String> lines,
        Map<LastTry.Kind, List<Change>> changed,
        boolean isAnotherTry,
        Map<String, String> carried,
        List<String> warnings,
        double awarded,
        double available) {

    private static final int FIRST_TOPICS = 3;
    private static final int LONGEST_ARTICLE = "The ".length();

    /** A criterion with its value the last time, now, and as asked; a value may be empty. */
    record Change(String title, String was, String now, String asked) {}

    /** @param screenPicture the level page at screen size, a PNG */
    static CheckResult of(
            KeptAssessment found,
            DrawingTask task,
            byte[] screenPicture,
            LastTry before,
            Locale language,
            Words words) {
        // The page may be read in another language than the one that the photograph was sent in.
        KeptAssessment worded = found.inWords(language, task);
        MarkedSheet marked = worded.marked();
        List<MarkEntry> entries = MarkEntry.ofUnkept(marked);
        Map<String, GuideStep> steps = steps(ConstructionGuide.of(task, language).steps());
        List<Topic> redo = Topic.greatest(marked, FIRST_TOPICS).stream()
                .sorted(Comparator.comparingInt(topic -> place(topic, steps)))
                .toList();
        return new CheckResult(
                "data:image/png;base64," + Base64.getEncoder().encodeToString(screenPicture),
                SheetOverlay.of(worded, entries),
                redo,
                steps,
                notMet(marked).filter(mark -> redo.stream().noneMatch(topic -> topic.marks().contains(mark))).toList(),
                Praise.of(marked).wholeParts(),
                marked.marks().stream().filter(mark -> mark.verdict() == Verdict.UNDECIDED).toList(),
                LineWords.in(language).statements(found.measured()),
                changed(before.changes(marked), entries, words),
                !before.isNone(),
                new LinkedHashMap<>(LastTry.texts(marked)),
                found.page().warnings().stream().map(Reasons.in(language)::say).toList(),
                marked.awarded(),
                marked.available());
    }

    /** What is said of a mark, with the name of what was measured where it does not begin with that: a part has several sizes. */
    public String sentence(Mark mark) {
        int at = mark.feedback().toLowerCase(Locale.ROOT).indexOf(mark.title().toLowerCase(Locale.ROOT));
        return at >= 0 && at <= LONGEST_ARTICLE ? mark.feedback() : FeedbackWords.sentence(mark);
    }

    private static Map<String, GuideStep> steps(List<GuideStep> guide) {
        Map<String, GuideStep> steps = new LinkedHashMap<>();
        guide.forEach(step -> steps.putIfAbsent(step.part(), step));
        if (steps.containsKey("rafter")) {
            steps.putIfAbsent("roof", steps.get("rafter"));
        }
        return steps;
    }

    /** A wrong scale comes before every part, what has no step of its own after them. */
    private static int place(Topic topic, Map<String, GuideStep> steps) {
        if (topic.part().equals(Topic.SCALE)) {
            return 0;
        }
        return steps.containsKey(topic.part()) ? steps.get(topic.part()).number() : Integer.MAX_VALUE;
    }

    private static Stream<Mark> notMet(MarkedSheet marked) {
        return marked.marks().stream().filter(mark -> mark.verdict() == Verdict.NOT_MET);
    }

    private static Map<LastTry.Kind, List<Change>> changed(
            List<LastTry.Change> changes, List<MarkEntry> entries, Words words) {
        Map<String, MarkEntry> byCriterion =
                entries.stream().collect(Collectors.toMap(MarkEntry::criterion, Function.identity()));
        Map<LastTry.Kind, List<Change>> changed = new EnumMap<>(LastTry.Kind.class);
        for (LastTry.Change change : changes) {
            MarkEntry entry = byCriterion.get(change.mark().criterion());
            changed.computeIfAbsent(change.kind(), kind -> new ArrayList<>())
                    .add(new Change(
                            entry.title(),
                            change.was().isPresent()
                                    ? words.value(change.was().getAsDouble(), entry.reading().unit())
                                    : "",
                            words.measured(entry),
                            words.expected(entry)));
        }
        return changed;
    }
}
