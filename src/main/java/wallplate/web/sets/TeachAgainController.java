package wallplate.web.sets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import wallplate.marking.Verdict;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.MarkEntry;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.solver.Slip;
import wallplate.solver.SlipCatalogue;
import wallplate.web.page.NotFound;

/** What to teach again: which criteria the class did not meet, how the values lie, which slips were made and by whom. */
@Controller
class TeachAgainController {

    private final ClassSets classSets;
    private final Sheets sheets;

    TeachAgainController(ClassSets classSets, Sheets sheets) {
        this.classSets = classSets;
        this.sheets = sheets;
    }

    /** A known slip and the sheets on which it seems to have happened. */
    record SlipMade(String name, List<SheetEntry> sheets) {}

    /**
     * How the class did in one criterion.
     *
     * @param again the sheets that did not meet it
     */
    record Lesson(
            MarkEntry example,
            int met,
            int carried,
            int notMet,
            int undecided,
            @Nullable ToleranceScale scale,
            List<SlipMade> slips,
            List<SheetEntry> again) {

        public int judged() {
            return met + carried + notMet;
        }
    }

    @GetMapping("/class-sets/{id}/teach-again")
    String teachAgain(@PathVariable long id, Model model) {
        ClassSet classSet = classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
        Map<Long, SheetEntry> byId =
                sheets.of(id).stream().collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        Map<String, List<MarkEntry>> byCriterion = new LinkedHashMap<>();
        sheets.marksOfSet(id)
                .forEach(mark -> byCriterion.computeIfAbsent(mark.criterion(), one -> new ArrayList<>()).add(mark));
        List<Lesson> lessons = byCriterion.values().stream()
                .map(marks -> lesson(marks, byId))
                .sorted(Comparator.comparingInt((Lesson lesson) -> -lesson.notMet())
                        .thenComparingInt(lesson -> lesson.example().position()))
                .toList();
        model.addAttribute("classSet", classSet);
        model.addAttribute("names", byId);
        model.addAttribute("lessons", lessons.stream().filter(lesson -> lesson.notMet() > 0).toList());
        model.addAttribute("held", lessons.stream().filter(lesson -> lesson.notMet() == 0).toList());
        model.addAttribute("sheetCount", byId.size());
        return "sets/teach-again";
    }

    private static Lesson lesson(List<MarkEntry> marks, Map<Long, SheetEntry> byId) {
        return new Lesson(
                marks.get(0),
                count(marks, Verdict.MET),
                count(marks, Verdict.CARRIED),
                count(marks, Verdict.NOT_MET),
                count(marks, Verdict.UNDECIDED),
                ToleranceScale.of(marks).orElse(null),
                slips(marks, byId),
                sheetsOf(marks.stream().filter(mark -> mark.verdict() == Verdict.NOT_MET).toList(), byId));
    }

    private static int count(List<MarkEntry> marks, Verdict verdict) {
        return (int) marks.stream().filter(mark -> mark.verdict() == verdict).count();
    }

    private static List<SlipMade> slips(List<MarkEntry> marks, Map<Long, SheetEntry> byId) {
        Map<String, List<MarkEntry>> bySlip = new LinkedHashMap<>();
        marks.forEach(mark ->
                mark.slips().forEach(slip -> bySlip.computeIfAbsent(slip, one -> new ArrayList<>()).add(mark)));
        return bySlip.entrySet().stream()
                .map(entry -> new SlipMade(slipName(entry.getKey()), sheetsOf(entry.getValue(), byId)))
                .sorted(Comparator.comparingInt((SlipMade slip) -> -slip.sheets().size()).thenComparing(SlipMade::name))
                .toList();
    }

    private static String slipName(String id) {
        return SlipCatalogue.all().stream()
                .filter(slip -> slip.id().equals(id))
                .map(Slip::name)
                .findFirst()
                .orElse(id.replace('-', ' '));
    }

    private static List<SheetEntry> sheetsOf(List<MarkEntry> marks, Map<Long, SheetEntry> byId) {
        return marks.stream().map(mark -> byId.get(mark.sheetId())).toList();
    }
}
