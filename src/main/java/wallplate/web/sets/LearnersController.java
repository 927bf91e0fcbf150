package wallplate.web.sets;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.records.ClassList;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Learner;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** Whose sheet is whose: the class list, and every sheet with its learner. */
@Controller
class LearnersController {

    private static final String FIELD = "learner-";

    private final ClassSets classSets;
    private final Sheets sheets;
    private final SetStanding standing;
    private final Words words;

    LearnersController(ClassSets classSets, Sheets sheets, SetStanding standing, Words words) {
        this.classSets = classSets;
        this.sheets = sheets;
        this.standing = standing;
        this.words = words;
    }

    @GetMapping("/class-sets/{id}/learners")
    String learners(@PathVariable long id, Model model) {
        return show(found(id), Map.of(), model);
    }

    /**
     * @param typed what stands in the fields that were handed in, by sheet; other fields show the present learner
     */
    private String show(ClassSet classSet, Map<Long, String> typed, Model model) {
        List<Learner> learners = classSets.learnersOfSet(classSet.id());
        List<SheetEntry> entries = sheets.of(classSet.id());
        model.addAttribute("classSet", classSet);
        model.addAttribute("learners", learners);
        model.addAttribute("sheets", entries.stream().map(sheet -> row(sheet, typed)).toList());
        model.addAttribute("classList", asText(learners));
        model.addAttribute("ownList", classSets.hasOwnList(classSet.id()));
        model.addAttribute("whose", Whose.of(classSet, entries, learners));
        return "sets/learners";
    }

    private SheetRow row(SheetEntry sheet, Map<Long, String> typed) {
        SheetRow row = SheetRow.of(sheet, words);
        return typed.containsKey(sheet.id()) ? row.withGiven(typed.get(sheet.id())) : row;
    }

    private static String name(SheetEntry sheet) {
        return sheet.learner().map(Learner::nameAndNumber).orElse("");
    }

    private static String asText(List<Learner> learners) {
        List<String> lines = new ArrayList<>();
        for (Learner learner : learners) {
            String name = learner.name().matches(".*[,;\t\"].*")
                    ? '"' + learner.name().replace("\"", "\"\"") + '"'
                    : learner.name();
            lines.add(learner.candidateNumber().isEmpty() ? name : name + ", " + learner.candidateNumber());
        }
        return String.join("\n", lines);
    }

    @PostMapping("/class-sets/{id}/learners")
    String give(
            @PathVariable long id,
            @RequestParam Map<String, String> fields,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        ClassSet classSet = found(id);
        Given given = given(classSet, fields);
        if (!given.faults().isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("faults", given.faults());
            model.addAttribute("wrong", "Nothing was changed yet: see the marked lines.");
            return show(classSet, given.typed(), model);
        }
        sheets.giveTo(given.changes());
        int changed = given.changes().size();
        redirect.addFlashAttribute("done", changed == 1 ? "1 sheet has another learner now." : changed + " sheets have other learners now.");
        return "redirect:/class-sets/" + id + "/learners";
    }

    /** What was typed on the page of all sheets: learners that change, and what is wrong, by sheet. */
    private record Given(Map<Long, String> typed, Map<Long, Optional<Long>> changes, Map<Long, String> faults) {}

    private Given given(ClassSet classSet, Map<String, String> fields) {
        List<Learner> learners = classSets.learnersOfSet(classSet.id());
        Given given = new Given(new LinkedHashMap<>(), new LinkedHashMap<>(), new LinkedHashMap<>());
        Map<Long, Integer> numbers = new LinkedHashMap<>();
        for (SheetEntry sheet : sheets.of(classSet.id())) {
            String text = fields.getOrDefault(FIELD + sheet.id(), name(sheet));
            TypedLearner typed = TypedLearner.of(text, learners);
            Optional<Long> learner = typed.learner().map(Learner::id);
            given.typed().put(sheet.id(), text);
            typed.fault().ifPresent(fault -> given.faults().put(sheet.id(), fault));
            learner.map(one -> numbers.putIfAbsent(one, sheet.number()))
                    .ifPresent(other -> given.faults().put(sheet.id(), "Stands at sheet " + other + " already: each learner has one sheet of a set."));
            if (!learner.equals(sheet.learner().map(Learner::id))) {
                given.changes().put(sheet.id(), learner);
            }
        }
        return given;
    }

    /** One sheet's learner, typed on the page of the set; the sheets after it follow in order. */
    @PostMapping("/class-sets/{id}/sheets/{sheetId}/learner")
    String giveOne(
            @PathVariable long id,
            @PathVariable long sheetId,
            @RequestParam(defaultValue = "") String learner,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean fragment,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        ClassSet classSet = found(id);
        SheetEntry sheet = sheets.find(sheetId)
                .filter(one -> one.classSetId() == id)
                .orElseThrow(() -> new NotFound("This class set has no sheet " + sheetId + "."));
        TypedLearner typed = TypedLearner.of(learner, classSets.learnersOfSet(classSet.id()));
        if (typed.fault().isPresent()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("faultAt", sheetId);
            model.addAttribute("fault", typed.fault().get());
            model.addAttribute("typed", learner);
        } else {
            sheets.giveTo(sheetId, typed.learner().map(Learner::id));
        }
        if (!fragment && typed.fault().isEmpty()) {
            redirect.addFlashAttribute("done", "Sheet %d: %s.".formatted(sheet.number(), typed.learner().map(Learner::name).orElse("nobody")));
            return "redirect:/class-sets/" + id + "#sheet-" + sheetId;
        }
        standing.show(classSet, model);
        model.addAttribute("givenNumber", sheet.number());
        return fragment ? "sets/standing :: standing" : "sets/one";
    }

    @PostMapping("/class-sets/{id}/class-list")
    String classList(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable String classList,
            @RequestParam(required = false) @Nullable MultipartFile classListFile,
            RedirectAttributes redirect)
            throws IOException {
        ClassSet classSet = found(id);
        if (!classSets.hasOwnList(id)) {
            redirect.addFlashAttribute(
                    "wrong", "This set belongs to the class " + classSet.className() + ": change the list there.");
            return "redirect:/classes/" + classSet.classId();
        }
        String text = classListFile == null || classListFile.isEmpty()
                ? (classList == null ? "" : classList)
                : new String(classListFile.getBytes(), StandardCharsets.UTF_8);
        List<ClassListEntry> entries = ClassList.read(text);
        classSets.replaceLearners(classSet.classId(), entries);
        sheets.match(id);
        redirect.addFlashAttribute("done", "The class list has " + entries.size() + " learners now.");
        return "redirect:/class-sets/" + id + "/learners";
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
