package wallplate.web.guideline;

import jakarta.servlet.http.HttpServletResponse;
import java.security.Principal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.marking.Reasons;
import wallplate.marking.Tolerance;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.remarking.GuidelineVersions;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.Fault;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;
import wallplate.web.page.Words;

/** A task's marking guideline: reading it, changing it, and its versions. */
@Controller
class GuidelineController {

    private final Tasks tasks;
    private final ClassSets classSets;
    private final GuidelineVersions versions;
    private final Words words;
    private final Reach reach;

    GuidelineController(Tasks tasks, ClassSets classSets, GuidelineVersions versions, Words words, Reach reach) {
        this.tasks = tasks;
        this.classSets = classSets;
        this.versions = versions;
        this.words = words;
        this.reach = reach;
    }

    /** What is wrong, and the field it is wrong in. */
    record FormFault(String anchor, String sentence) {}

    /** @param open the criteria whose fields are shown; all others only name themselves, or the page would be heavy */
    @GetMapping("/tasks/{id}/guideline")
    String read(@PathVariable long id, @RequestParam(defaultValue = "") List<Integer> open, Model model) {
        KeptTask kept = found(id);
        return form(kept, GuidelineForm.of(guideline(kept)), List.of(), open, model);
    }

    /** The fields of one criterion, fetched when it is opened. */
    @GetMapping(value = "/tasks/{id}/guideline", params = "fetch")
    String fields(@PathVariable long id, @RequestParam int fetch, Model model) {
        KeptTask kept = found(id);
        return fields(kept, GuidelineForm.of(guideline(kept)), fetch, model);
    }

    /** The form filled with one mark for every key; nothing is kept. */
    @GetMapping("/tasks/{id}/guideline/usual")
    String usual(@PathVariable long id, Model model) {
        KeptTask kept = found(id);
        Guideline usual = Guideline.defaultFor(Solver.solve(kept.task()));
        return form(kept, GuidelineForm.of(usual), List.of(), List.of(), model);
    }

    @PostMapping("/tasks/{id}/guideline")
    String change(
            @PathVariable long id,
            @RequestParam Map<String, String> typed,
            @RequestParam(defaultValue = "") List<Integer> open,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        KeptTask kept = found(id);
        GuidelineForm form = GuidelineForm.typed(typed);
        ExpectedDrawing expected = Solver.solve(kept.task());
        List<Fault> faults = new ArrayList<>(form.faults());
        GuidelineReading reading = Guideline.read(expected, form.asMap());
        if (reading instanceof GuidelineReading.Refused refused) {
            faults.addAll(refused.faults());
        }
        if (!(reading instanceof GuidelineReading.Accepted accepted) || !faults.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return form(kept, form, faults, open, model);
        }
        keep(kept, accepted.guideline(), Person.name(person));
        redirect.addFlashAttribute("done", words.say("guideline.kept", accepted.guideline().version()));
        return "redirect:/tasks/" + id + "/guideline";
    }

    private void keep(KeptTask kept, Guideline guideline, String by) {
        versions.keep(kept.id(), guideline(kept), by);
        versions.keep(kept.id(), guideline, by);
        tasks.change(kept.id(), kept.task().withMarking(guideline.asMap()));
    }

    /** The form again, with one more criterion shown: one that is there already, or an empty one. Nothing is kept yet. */
    @PostMapping("/tasks/{id}/guideline/criterion")
    String another(
            @PathVariable long id,
            @RequestParam Map<String, String> typed,
            @RequestParam(defaultValue = "") List<Integer> open,
            @RequestParam(defaultValue = "false") boolean add,
            Model model) {
        GuidelineForm form = GuidelineForm.typed(typed);
        if (!add) {
            return form(found(id), form, List.of(), open, model);
        }
        GuidelineForm longer = form.withAnotherCriterion();
        List<Integer> shown = new ArrayList<>(open);
        shown.add(longer.criteria().size());
        return form(found(id), longer, List.of(), shown, model);
    }

    /** The fields of one criterion as it was typed, fetched when it is opened. */
    @PostMapping(value = "/tasks/{id}/guideline/criterion", params = "fetch")
    String fields(@PathVariable long id, @RequestParam Map<String, String> typed, @RequestParam int fetch, Model model) {
        return fields(found(id), GuidelineForm.typed(typed), fetch, model);
    }

    private String fields(KeptTask kept, GuidelineForm form, int open, Model model) {
        CriterionRow row = form.criteria().stream()
                .filter(one -> one.number() == open)
                .findFirst()
                .orElseThrow(() -> new NotFound("There is no criterion " + open + "."));
        form(kept, form, List.of(), List.of(open), model);
        model.addAttribute("row", row);
        return "guideline/criterion :: fields";
    }

    private String form(KeptTask kept, GuidelineForm form, List<Fault> faults, List<Integer> open, Model model) {
        GuidelineWords names = GuidelineWords.of(Solver.solve(kept.task()), LocaleContextHolder.getLocale());
        model.addAttribute("kept", kept);
        model.addAttribute("form", form);
        model.addAttribute("names", names);
        model.addAttribute("pattern", CriterionRow.empty(0));
        model.addAttribute("units", Tolerance.Unit.values());
        model.addAttribute("version", guideline(kept).version());
        model.addAttribute("versions", versions.of(kept.id()));
        model.addAttribute(
                "classSets",
                classSets.ofTask(kept.id(), reach.share()));
        List<FormFault> shown = faults.stream()
                .map(fault -> new FormFault(form.anchor(fault), sentence(fault)))
                .toList();
        Map<String, String> faultAt = new LinkedHashMap<>();
        shown.forEach(fault -> faultAt.merge(fault.anchor(), fault.sentence(), (one, more) -> one + " " + more));
        model.addAttribute("faults", shown);
        Set<Integer> openRows = new HashSet<>(open);
        form.criteria().stream()
                .map(CriterionRow::number)
                .filter(row -> shown.stream().anyMatch(fault -> fault.anchor().startsWith("criteria-" + row + "-")))
                .forEach(openRows::add);
        model.addAttribute("openRows", openRows);
        model.addAttribute("faultAt", faultAt);
        return "guideline/form";
    }

    private String sentence(Fault fault) {
        String place = fault.key().replace("marking.", "");
        String accepted = Reasons.in(LocaleContextHolder.getLocale()).say(fault.accepted());
        return fault.found().isEmpty()
                ? words.say("guideline.fault.missing", place, accepted)
                : words.say("guideline.fault.found", place, fault.found(), accepted);
    }

    /** The guideline that the task carries; a kept task's guideline was checked when it was kept. */
    private static Guideline guideline(KeptTask kept) {
        ExpectedDrawing expected = Solver.solve(kept.task());
        return Guideline.read(expected) instanceof GuidelineReading.Accepted accepted
                ? accepted.guideline()
                : Guideline.defaultFor(expected);
    }

    private KeptTask found(long id) {
        return tasks.find(id).orElseThrow(() -> new NotFound("There is no task " + id + "."));
    }
}
