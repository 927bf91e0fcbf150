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
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.marking.Verdict;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.CriterionEntry;
import wallplate.records.MarkEntry;
import wallplate.records.MarkPlace;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** One criterion across the class: the same place of every sheet side by side, so that like cases are judged alike. */
@Controller
class AcrossController {

    private final ClassSets classSets;
    private final Sheets sheets;
    private final Words words;

    AcrossController(ClassSets classSets, Sheets sheets, Words words) {
        this.classSets = classSets;
        this.sheets = sheets;
        this.words = words;
    }

    /**
     * One sheet's mark for the criterion in words, with the place it was measured at.
     *
     * @param address of the sheet's own page, at this criterion
     * @param change where a changed mark is sent to
     * @param picture the cut of the page picture; empty without a place
     */
    record Case(
            long sheetId,
            String label,
            String address,
            String change,
            String picture,
            String marks,
            String measured,
            Verdict verdict,
            boolean byHand,
            @Nullable ClosePlace place) {}

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
        List<MarkEntry> marks =
                chosen.map(one -> sheets.marksOfSet(id, one.id())).orElse(List.of());
        model.addAttribute("asked", marks.stream().findFirst().orElse(null));
        model.addAttribute("cases", chosen.map(one -> cases(id, one, marks)).orElse(List.of()));
        model.addAttribute("withoutPlaces", sheets.withoutPlaces(id));
        model.addAttribute("before", neighbour(criteria, chosen, -1));
        model.addAttribute("after", neighbour(criteria, chosen, 1));
        return "sets/across";
    }

    /** Sheets that were read by an earlier version of the program get the places that it did not keep. */
    @PostMapping("/class-sets/{id}/across/places")
    String keepPlaces(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable String criterion,
            RedirectAttributes redirect) {
        ClassSet classSet = classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
        sheets.keepPlaces(classSet.id());
        redirect.addFlashAttribute("done", "The places are there now.");
        if (criterion != null) {
            redirect.addAttribute("criterion", criterion);
        }
        return "redirect:/class-sets/" + id + "/across";
    }

    private static @Nullable CriterionEntry neighbour(List<CriterionEntry> criteria, Optional<CriterionEntry> chosen, int step) {
        int at = chosen.map(criteria::indexOf).orElse(-1) + step;
        return chosen.isEmpty() || at < 0 || at >= criteria.size() ? null : criteria.get(at);
    }

    /** What waits for the teacher first, then by measured value, then what has none. */
    private List<Case> cases(long classSetId, CriterionEntry criterion, List<MarkEntry> marks) {
        Map<Long, SheetEntry> byId =
                sheets.of(classSetId).stream().collect(Collectors.toMap(SheetEntry::id, Function.identity()));
        Map<Long, ClosePlace> places = sheets.places(classSetId, criterion.id()).stream()
                .collect(Collectors.toMap(MarkPlace::sheetId, ClosePlace::of));
        return marks.stream()
                .sorted(Comparator.comparing((MarkEntry mark) -> !mark.isUndecided())
                        .thenComparing(mark -> mark.reading().measured().orElse(Double.MAX_VALUE))
                        .thenComparing(mark -> byId.get(mark.sheetId()).number()))
                .map(mark -> inWords(byId.get(mark.sheetId()), mark, Optional.ofNullable(places.get(mark.sheetId()))))
                .toList();
    }

    private Case inWords(SheetEntry sheet, MarkEntry mark, Optional<ClosePlace> place) {
        String address = "/sheets/" + sheet.id();
        return new Case(
                sheet.id(),
                sheet.label(),
                address + "#" + mark.criterion(),
                address + "/marks/" + mark.criterion(),
                place.map(cut -> "/pictures/" + sheet.pagePicture().orElse("") + "/part.png?" + cut.query()).orElse(""),
                words.marks(mark.awarded()) + " / " + words.marks(mark.available()),
                words.measured(mark),
                mark.verdict(),
                mark.isChanged(),
                place.orElse(null));
    }
}
