package wallplate.web.guideline;

import jakarta.servlet.http.HttpServletResponse;
import java.security.Principal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
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
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Progress;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.remarking.GuidelineVersions;
import wallplate.remarking.KeptGuideline;
import wallplate.remarking.RemarkOutcome;
import wallplate.remarking.Remarking;
import wallplate.solver.Solver;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;
import wallplate.web.page.Words;

/** The guideline of a class set, and marking it again under another version: first shown, then done. */
@Controller
class RemarkController {

    private final ClassSets classSets;
    private final Tasks tasks;
    private final Sheets sheets;
    private final GuidelineVersions versions;
    private final Remarking remarking;
    private final Words words;

    RemarkController(
            ClassSets classSets,
            Tasks tasks,
            Sheets sheets,
            GuidelineVersions versions,
            Remarking remarking,
            Words words) {
        this.classSets = classSets;
        this.tasks = tasks;
        this.sheets = sheets;
        this.versions = versions;
        this.remarking = remarking;
        this.words = words;
    }

    @GetMapping("/class-sets/{id}/guideline")
    String preview(@PathVariable long id, @RequestParam(required = false) @Nullable String version, Model model) {
        return show(found(id), version, model);
    }

    private String show(ClassSet classSet, @Nullable String version, Model model) {
        Map<String, Map<String, Object>> offered = offered(classSet);
        String current = remarking.versionOf(classSet);
        String chosen = version != null && offered.containsKey(version)
                ? version
                : offered.keySet().stream().findFirst().orElse(current);
        model.addAttribute("classSet", classSet);
        model.addAttribute("current", current);
        model.addAttribute("chosen", chosen);
        model.addAttribute("offered", new ArrayList<>(offered.keySet()));
        model.addAttribute("runs", versions.runs(classSet.id()));
        model.addAttribute("atWork", Progress.of(sheets.of(classSet.id())).isAtWork());
        if (offered.containsKey(chosen) && !chosen.equals(current)) {
            RemarkOutcome outcome = remarking.preview(classSet, offered.get(chosen));
            if (outcome instanceof RemarkOutcome.Marked marked) {
                model.addAttribute("preview", marked.preview());
            } else if (outcome instanceof RemarkOutcome.Refused refused) {
                model.addAttribute("faults", refused.faults());
            }
        }
        return "guideline/remark";
    }

    /** The task's guideline as it is now first, then every version that is kept, the last first. */
    private Map<String, Map<String, Object>> offered(ClassSet classSet) {
        Map<String, Map<String, Object>> offered = new LinkedHashMap<>();
        tasks.find(classSet.taskId())
                .map(kept -> kept.task().marking())
                .ifPresent(marking -> version(classSet, marking).ifPresent(version -> offered.put(version, marking)));
        for (KeptGuideline kept : versions.of(classSet.taskId())) {
            offered.putIfAbsent(kept.version(), kept.marking());
        }
        return offered;
    }

    /** The version of a guideline; read for the task itself, which may differ from the one handed out. */
    private Optional<String> version(ClassSet classSet, Map<String, Object> marking) {
        return tasks.find(classSet.taskId())
                .map(kept -> Guideline.read(Solver.solve(kept.task()), marking))
                .filter(GuidelineReading.Accepted.class::isInstance)
                .map(reading -> ((GuidelineReading.Accepted) reading).guideline().version());
    }

    @PostMapping("/class-sets/{id}/guideline")
    String apply(
            @PathVariable long id,
            @RequestParam String version,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        ClassSet classSet = found(id);
        Map<String, Object> marking = offered(classSet).get(version);
        if (marking == null) {
            throw new NotFound(words.say("remark.no-version", version));
        }
        if (Progress.of(sheets.of(id)).isAtWork()) {
            return refused(classSet, version, words.say("remark.at-work"), model, response);
        }
        RemarkOutcome outcome = remarking.apply(classSet, marking, Person.name(person));
        if (outcome instanceof RemarkOutcome.Refused) {
            return refused(classSet, version, words.say("remark.refused"), model, response);
        }
        List<?> changed = ((RemarkOutcome.Marked) outcome).preview().changed();
        redirect.addFlashAttribute("done", words.say("remark.done", version, changed.size()));
        return "redirect:/class-sets/" + id + "/guideline";
    }

    private String refused(
            ClassSet classSet, String version, String why, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("wrong", why);
        return show(classSet, version, model);
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
