package wallplate.web.sets;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.CriterionEntry;
import wallplate.records.MarkEntry;
import wallplate.records.MarkPlace;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;

/** One criterion across the class: the same place of every sheet side by side, so that like cases are judged alike. */
@Controller
class AcrossController {

    private final ClassSets classSets;
    private final Sheets sheets;

    AcrossController(ClassSets classSets, Sheets sheets) {
        this.classSets = classSets;
        this.sheets = sheets;
    }

    /** One sheet's mark for the criterion, with the place it was measured at. */
    record Case(SheetEntry sheet, MarkEntry mark, @Nullable ClosePlace place) {}

    @GetMapping("/class-sets/{id}/across")
    String across(@PathVariable long id, @RequestParam(required = false) @Nullable String criterion, Model model) {
        ClassSet classSet = classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
        List<CriterionEntry> criteria = sheets.criteria(id);
        Optional<CriterionEntry> chosen = criteria.stream()
                .filter(candidate -> candidate.id().equals(criterion))
                .findFirst()
                .or(() -> criteria.stream().findFirst());
        model.addAttribute("classSet", classSet);
        model.addAttribute("criteria", criteria);
        model.addAttribute("chosen", chosen.orElse(null));
        model.addAttribute("cases", chosen.map(one -> cases(id, one)).orElse(List.of()));
        model.addAttribute("before", neighbour(criteria, chosen, -1));
        model.addAttribute("after", neighbour(criteria, chosen, 1));
        return "sets/across";
    }

    private static @Nullable CriterionEntry neighbour(List<CriterionEntry> criteria, Optional<CriterionEntry> chosen, int step) {
        int at = chosen.map(criteria::indexOf).orElse(-1) + step;
        return chosen.isEmpty() || at < 0 || at >= criteria.size() ? null : criteria.get(at);
    }

    /** What waits for the teacher first, then by measured value, then what has none. */
    private List<Case> cases(long classSetId, CriterionEntry criterion) {
        Map<Long, SheetEntry> byId =
                sheets.of(classSetId).stream().collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        Map<Long, ClosePlace> places = sheets.places(classSetId, criterion.id()).stream()
                .collect(Collectors.toMap(MarkPlace::sheetId, ClosePlace::of));
        return sheets.marksOfSet(classSetId, criterion.id()).stream()
                .map(mark -> new Case(byId.get(mark.sheetId()), mark, places.get(mark.sheetId())))
                .sorted(Comparator.comparing((Case one) -> !one.mark().isUndecided())
                        .thenComparing(one -> one.mark().reading().measured().orElse(Double.MAX_VALUE))
                        .thenComparing(one -> one.sheet().number()))
                .toList();
    }
}
