package wallplate.web.sheet;

import jakarta.servlet.http.HttpServletResponse;
import java.security.Principal;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.marking.LineWords;
import wallplate.marking.Verdict;
import wallplate.measure.LinesByHand;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptAssessment;
import wallplate.records.MarkChange;
import wallplate.records.MarkEntry;
import wallplate.records.SheetCorrection;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.report.ModelOnSheet;
import wallplate.solver.Solver;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;

/** One sheet, its criteria and what a teacher decides about them. */
@Controller
class SheetController {

    private final Sheets sheets;
    private final ClassSets classSets;
    private final SheetCorrections corrections;
    private final KeptLines lines;
    private final Clock clock;

    SheetController(
            Sheets sheets, ClassSets classSets, SheetCorrections corrections, KeptLines lines, Clock clock) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.corrections = corrections;
        this.lines = lines;
        this.clock = clock;
    }

    /** The first sheet that needs a person, else the first of the set. */
    @GetMapping("/class-sets/{id}/check")
    String check(@PathVariable long id) {
        List<SheetEntry> entries = sheets.of(id);
        return entries.stream()
                .filter(SheetEntry::needsPerson)
                .findFirst()
                .or(() -> entries.stream().findFirst())
                .map(sheet -> "redirect:/sheets/" + sheet.id())
                .orElse("redirect:/class-sets/" + id);
    }

    @GetMapping("/sheets/{id}")
    String one(@PathVariable long id, Model model) {
        SheetEntry sheet = found(id);
        show(sheet, model);
        lines.lookAhead(classSets.find(sheet.classSetId()).orElseThrow(), sheet, undecidedKeys(sheets.marks(id)));
        return "sheet/one";
    }

    private static List<String> undecidedKeys(List<MarkEntry> marks) {
        return marks.stream()
                .filter(MarkEntry::isUndecided)
                .flatMap(mark -> mark.key().stream())
                .toList();
    }

    private void show(SheetEntry sheet, Model model) {
        ClassSet classSet = classSets.find(sheet.classSetId()).orElseThrow();
        List<SheetEntry> entries = sheets.of(sheet.classSetId());
        List<MarkEntry> marks = sheets.marks(sheet.id());
        Optional<KeptAssessment> assessment = sheets.assessment(sheet.id());
        model.addAttribute("sheet", sheet);
        model.addAttribute("classSet", classSet);
        model.addAttribute("count", entries.size());
        model.addAttribute("previous", at(entries, sheet.number() - 1));
        model.addAttribute("next", at(entries, sheet.number() + 1));
        model.addAttribute("open", entries.stream().filter(SheetEntry::needsPerson).count());
        model.addAttribute("marks", inCheckingOrder(marks));
        model.addAttribute("assessment", assessment.orElse(null));
        model.addAttribute("overlay", assessment.map(found -> SheetOverlay.of(found, marks)).orElse(null));
        model.addAttribute("difference", assessment.flatMap(found -> difference(classSet, found)).orElse(null));
        model.addAttribute("lines", assessment.map(SheetController::lines).filter(said -> !said.isEmpty()).orElse(null));
        model.addAttribute("changes", sheets.changes(sheet.id()));
        model.addAttribute(
                "canShowBar",
                sheet.state() == SheetState.UNREADABLE
                        && corrections.asReadPicture(sheet.id()).isPresent());
        showCorrections(corrections.of(sheet.id()), marks, model);
    }

    /** How the lines themselves are drawn; nothing for a sheet that was measured before they were. */
    private static List<String> lines(KeptAssessment found) {
        return LineWords.in(LocaleContextHolder.getLocale()).statements(found.measured());
    }

    private static void showCorrections(List<SheetCorrection> corrected, List<MarkEntry> marks, Model model) {
        Map<String, SheetCorrection> chosenBy = new HashMap<>();
        for (SheetCorrection standing : SheetCorrections.standing(corrected)) {
            standing.key().ifPresentOrElse(
                    key -> chosenBy.put(key, standing), () -> model.addAttribute("scaleBy", standing));
        }
        Map<String, String> titles = new HashMap<>();
        marks.forEach(mark -> mark.key().ifPresent(key -> titles.putIfAbsent(key, mark.title())));
        model.addAttribute("corrected", corrected);
        model.addAttribute("chosenBy", chosenBy);
        model.addAttribute("titles", titles);
        model.addAttribute("lineKeys", titles.keySet().stream().filter(LinesByHand::isFor).collect(Collectors.toSet()));
    }

    private static Optional<ModelView> difference(ClassSet classSet, KeptAssessment found) {
        Optional<ModelOnSheet> model = ModelOnSheet.of(Solver.solve(classSet.task()), found.measured());
        return ModelView.ofDrawing(found.page(), found.measured(), model);
    }

    /** What the guideline could not decide comes first; the rest keeps the guideline's order. */
    private static List<MarkEntry> inCheckingOrder(List<MarkEntry> marks) {
        return Stream.concat(
                        marks.stream().filter(mark -> mark.guidelineVerdict() == Verdict.UNDECIDED),
                        marks.stream().filter(mark -> mark.guidelineVerdict() != Verdict.UNDECIDED))
                .toList();
    }

    private static @Nullable SheetEntry at(List<SheetEntry> entries, int number) {
        return number < 1 || number > entries.size() ? null : entries.get(number - 1);
    }

    @PostMapping("/sheets/{id}/marks/{criterion}")
    String change(
            @PathVariable long id,
            @PathVariable String criterion,
            MarkForm form,
            @Nullable Principal person,
            @RequestParam(defaultValue = "sheet") String from,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean fragment,
            Model model,
            HttpServletResponse response) {
        MarkEntry mark = mark(found(id), criterion);
        Optional<String> fault = form.fault(mark);
        if (fault.isEmpty()) {
            sheets.change(id, decision(criterion, form, mark, Person.name(person)));
        } else {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("faultAt", criterion);
            model.addAttribute("fault", fault.get());
            model.addAttribute("typed", form);
        }
        if (fault.isEmpty() && from.equals("across")) {
            return "redirect:/class-sets/%d/across?criterion=%s#sheet-%d"
                    .formatted(found(id).classSetId(), mark.criterion(), id);
        }
        return answer(id, criterion, fragment, fault.isEmpty(), model);
    }

    private MarkChange decision(String criterion, MarkForm form, MarkEntry mark, String changedBy) {
        return new MarkChange(
                criterion,
                form.chosen(),
                form.marks(mark).orElseThrow(),
                form.reasonText(),
                changedBy,
                clock.instant());
    }

    @PostMapping("/sheets/{id}/marks/{criterion}/restore")
    String restore(
            @PathVariable long id,
            @PathVariable String criterion,
            @Nullable Principal person,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean fragment,
            Model model) {
        mark(found(id), criterion);
        sheets.change(id, new MarkChange(criterion, Optional.empty(), 0, "", Person.name(person), clock.instant()));
        return answer(id, criterion, fragment, true, model);
    }

    private String answer(long id, String criterion, boolean fragment, boolean done, Model model) {
        if (!fragment && done) {
            return "redirect:/sheets/" + id + "#" + criterion;
        }
        show(found(id), model);
        model.addAttribute("current", criterion);
        return fragment ? "sheet/criteria :: criteria" : "sheet/one";
    }

    @PostMapping("/sheets/{id}/checked")
    String checked(@PathVariable long id, RedirectAttributes redirect) {
        SheetEntry sheet = found(id);
        sheets.setChecked(id, true);
        Optional<SheetEntry> next = nextToCheck(sheet);
        if (next.isEmpty()) {
            redirect.addFlashAttribute("done", "Every sheet that needed you is checked.");
            return "redirect:/class-sets/" + sheet.classSetId();
        }
        return "redirect:/sheets/" + next.get().id();
    }

    @PostMapping("/sheets/{id}/unchecked")
    String unchecked(@PathVariable long id) {
        sheets.setChecked(found(id).id(), false);
        return "redirect:/sheets/" + id;
    }

    /** The next sheet after this one that needs a person, from the start again after the last. */
    private Optional<SheetEntry> nextToCheck(SheetEntry sheet) {
        List<SheetEntry> open =
                sheets.of(sheet.classSetId()).stream().filter(SheetEntry::needsPerson).toList();
        return open.stream()
                .filter(candidate -> candidate.number() > sheet.number())
                .findFirst()
                .or(() -> open.stream().findFirst());
    }

    private SheetEntry found(long id) {
        return sheets.find(id).orElseThrow(() -> new NotFound("There is no sheet " + id + "."));
    }

    private MarkEntry mark(SheetEntry sheet, String criterion) {
        return sheets.marks(sheet.id()).stream()
                .filter(mark -> mark.criterion().equals(criterion))
                .findFirst()
                .orElseThrow(() -> new NotFound("This sheet has no criterion " + criterion + "."));
    }
}
