package wallplate.web.sets;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
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

/** Whose sheet is whose: the class list, and every sheet with its learner. */
@Controller
class LearnersController {

    private static final String FIELD = "learner-";

    private final ClassSets classSets;
    private final Sheets sheets;

    LearnersController(ClassSets classSets, Sheets sheets) {
        this.classSets = classSets;
        this.sheets = sheets;
    }

    @GetMapping("/class-sets/{id}/learners")
    String learners(@PathVariable long id, Model model) {
        return show(found(id), Map.of(), model);
    }

    private String show(ClassSet classSet, Map<Long, Optional<Long>> typed, Model model) {
        List<Learner> learners = classSets.learners(classSet.classId());
        List<SheetEntry> entries = sheets.of(classSet.id());
        Map<Long, Long> chosen = new LinkedHashMap<>();
        for (SheetEntry sheet : entries) {
            Optional<Long> learner = typed.getOrDefault(sheet.id(), sheet.learner().map(Learner::id));
            learner.ifPresent(id -> chosen.put(sheet.id(), id));
        }
        model.addAttribute("classSet", classSet);
        model.addAttribute("learners", learners);
        model.addAttribute("sheets", entries);
        model.addAttribute("chosen", chosen);
        model.addAttribute("classList", asText(learners));
        model.addAttribute(
                "without",
                learners.stream().filter(learner -> !chosen.containsValue(learner.id())).toList());
        return "sets/learners";
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
        Map<Long, Optional<Long>> typed = typed(fields, classSet);
        Set<Long> seen = new HashSet<>();
        boolean twice = typed.values().stream().flatMap(Optional::stream).anyMatch(learner -> !seen.add(learner));
        if (twice) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("wrong", "One learner stands at two sheets. Each learner has one sheet of a set.");
            return show(classSet, typed, model);
        }
        int changed = 0;
        for (SheetEntry sheet : sheets.of(id)) {
            Optional<Long> learner = typed.getOrDefault(sheet.id(), sheet.learner().map(Learner::id));
            if (!learner.equals(sheet.learner().map(Learner::id))) {
                sheets.giveTo(sheet.id(), learner);
                changed++;
            }
        }
        redirect.addFlashAttribute("done", changed == 1 ? "1 sheet has another learner now." : changed + " sheets have other learners now.");
        return "redirect:/class-sets/" + id + "/learners";
    }

    /** What was chosen, for sheets and learners of this set only. */
    private Map<Long, Optional<Long>> typed(Map<String, String> fields, ClassSet classSet) {
        Set<Long> known = new HashSet<>();
        classSets.learners(classSet.classId()).forEach(learner -> known.add(learner.id()));
        Map<Long, Optional<Long>> typed = new LinkedHashMap<>();
        for (SheetEntry sheet : sheets.of(classSet.id())) {
            String field = fields.get(FIELD + sheet.id());
            if (field != null) {
                typed.put(
                        sheet.id(),
                        field.matches("\\d{1,18}")
                                ? Optional.of(Long.valueOf(field)).filter(known::contains)
                                : Optional.empty());
            }
        }
        return typed;
    }

    @PostMapping("/class-sets/{id}/class-list")
    String classList(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable String classList,
            @RequestParam(required = false) @Nullable MultipartFile classListFile,
            RedirectAttributes redirect)
            throws IOException {
        ClassSet classSet = found(id);
        String text = classListFile == null || classListFile.isEmpty()
                ? (classList == null ? "" : classList)
                : new String(classListFile.getBytes(), StandardCharsets.UTF_8);
        List<ClassListEntry> entries = ClassList.read(text);
        classSets.replaceLearners(classSet.classId(), entries);
        sheets.matchInOrder(id);
        redirect.addFlashAttribute("done", "The class list has " + entries.size() + " learners now.");
        return "redirect:/class-sets/" + id + "/learners";
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
