package wallplate.web.learner;

import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Reasons;
import wallplate.marking.Verdict;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkEntry;
import wallplate.report.Praise;
import wallplate.report.Topic;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.web.sheet.SheetOverlay;

/**
 * What a learner sees after a check.
 *
 * @param picture the level page as an address that carries the picture in itself, since it has none of its own on the server
 * @param redo the topics that would gain most, the greatest first
 * @param more what else was not met
 * @param right the parts of which everything is right
 * @param cannotTell criteria that the program left open
 * @param better titles of criteria that are met now and were not before
 * @param steps the construction guide's first step for each part
 * @param worse titles of criteria that were met before and are not now
 */
record CheckResult(
        String picture,
        SheetOverlay overlay,
        List<MarkEntry> marks,
        List<Topic> redo,
        List<Mark> more,
        List<String> right,
        List<Mark> cannotTell,
        List<String> better,
        List<String> worse,
        List<String> warnings,
        double awarded,
        double available,
        Map<String, Integer> steps) {

    private static final int FIRST_TOPICS = 3;

    /**
     * @param screenPicture the level page at screen size, a PNG
     * @param before the verdicts of the check before this one, by criterion; empty where this is the first
     */
    static CheckResult of(
            KeptAssessment found,
            DrawingTask task,
            byte[] screenPicture,
            Map<String, String> before,
            Locale language) {
        MarkedSheet marked = found.marked();
        List<MarkEntry> entries = MarkEntry.ofUnkept(marked);
        List<Topic> redo = Topic.greatest(marked, FIRST_TOPICS);
        return new CheckResult(
                "data:image/png;base64," + Base64.getEncoder().encodeToString(screenPicture),
                SheetOverlay.of(found, entries),
                entries,
                redo,
                notMet(marked).filter(mark -> redo.stream().noneMatch(topic -> topic.marks().contains(mark))).toList(),
                Praise.of(marked).wholeParts(),
                marked.marks().stream().filter(mark -> mark.verdict() == Verdict.UNDECIDED).toList(),
                changed(marked, before, false),
                changed(marked, before, true),
                found.page().warnings().stream().map(Reasons.in(language)::say).toList(),
                marked.awarded(),
                marked.available(),
                steps(task));
    }

    private static Map<String, Integer> steps(DrawingTask task) {
        Map<String, Integer> steps = new LinkedHashMap<>();
        Solver.construction(task).forEach(step -> steps.putIfAbsent(step.part(), step.number()));
        steps.putIfAbsent("roof", steps.getOrDefault("rafter", 1));
        return steps;
    }

    private static Stream<Mark> notMet(MarkedSheet marked) {
        return marked.marks().stream().filter(mark -> mark.verdict() == Verdict.NOT_MET);
    }

    private static List<String> changed(MarkedSheet marked, Map<String, String> before, boolean wasMet) {
        return marked.marks().stream()
                .filter(mark -> mark.verdict() == (wasMet ? Verdict.NOT_MET : Verdict.MET))
                .filter(mark -> (wasMet ? Verdict.MET : Verdict.NOT_MET).word().equals(before.get(mark.criterion())))
                .map(Mark::title)
                .toList();
    }
}
