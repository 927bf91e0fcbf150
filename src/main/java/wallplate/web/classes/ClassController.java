package wallplate.web.classes;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.Enrolment;
import wallplate.classes.SchoolClass;
import wallplate.classes.SchoolYear;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.HomeChecks;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;

/** Classes of a school year: making them, who is in them, moving learners, sets drawn by them. */
@Controller
class ClassController {

    private static final int LONGEST_TITLE = 300;

    private final Classes classes;
    private final ClassLists lists;
    private final ClassSets classSets;
    private final Tasks tasks;
    private final HomeChecks homeChecks;
    private final Reach reach;

    ClassController(
            Classes classes,
            ClassLists lists,
            ClassSets classSets,
            Tasks tasks,
            HomeChecks homeChecks,
            Reach reach) {
        this.classes = classes;
        this.lists = lists;
        this.classSets = classSets;
        this.tasks = tasks;
        this.homeChecks = homeChecks;
        this.reach = reach;
    }

    /** The classes of one school year. */
    record Year(SchoolYear year, List<SchoolClass> classes) {}

    @GetMapping("/classes")
    String all(Model model) {
        List<Year> years = classes.all(reach.share()).stream()
                .collect(Collectors.groupingBy(SchoolClass::year))
                .entrySet()
                .stream()
                .map(entry -> new Year(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparing(Year::year).reversed())
                .toList();
        model.addAttribute("years", years);
        return "classes/all";
    }

    @GetMapping("/classes/new")
    String form(Model model) {
        model.addAttribute("form", ClassForm.empty());
        return "classes/form";
    }

    @PostMapping("/classes")
    String add(
            @Valid @ModelAttribute("form") ClassForm form,
            BindingResult faults,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Optional<SchoolYear> year = form.schoolYear();
        if (year.isEmpty() && !faults.hasFieldErrors("year")) {
            faults.rejectValue(
                    "year", "form", "A school year is 2026, or 2026/27 where it spans two; found: \"" + form.year() + "\".");
        }
        if (!faults.hasErrors()) {
            Optional<SchoolClass> added = year.flatMap(one -> classes.add(form.strippedName(), one));
            if (added.isPresent()) {
                reach.own(Kind.CLASS, added.get().id());
                redirect.addFlashAttribute("done", "The class is made. Now take its list in.");
                return "redirect:/classes/" + added.get().id();
            }
            faults.rejectValue("name", "taken", "This school year has a class of that name already.");
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return "classes/form";
    }

    @GetMapping("/classes/{id}")
    String one(@PathVariable long id, Model model) {
        return show(found(id), model);
    }

    String show(SchoolClass schoolClass, Model model) {
        List<Enrolment> enrolments = classes.enrolments(schoolClass.id());
        model.addAttribute("schoolClass", schoolClass);
        model.addAttribute(
                "present", enrolments.stream().filter(one -> one.leftAt().isEmpty()).toList());
        model.addAttribute(
                "left", enrolments.stream().filter(one -> one.leftAt().isPresent()).toList());
        model.addAttribute(
                "others",
                classes.all(reach.share()).stream().filter(one -> one.id() != schoolClass.id()).toList());
        model.addAttribute("sets", classSets.ofClass(schoolClass.id(), reach.share()));
        model.addAttribute("tasks", tasks.all(reach.shareOfTasks()));
        model.addAttribute("checkCode", homeChecks.codeOf(schoolClass.id()).orElse(null));
        return "classes/one";
    }

    @PostMapping("/classes/{id}/move")
    String move(
            @PathVariable long id,
            @RequestParam(name = "learner", required = false) @Nullable List<Long> learners,
            @RequestParam(defaultValue = "false") boolean everybody,
            @RequestParam(required = false) @Nullable String to,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        SchoolClass from = found(id);
        List<Enrolment> present = lists.present(id);
        Set<Long> chosen = new LinkedHashSet<>(learners == null ? List.of() : learners);
        List<Enrolment> moving = present.stream()
                .filter(enrolment -> everybody || chosen.contains(enrolment.id()))
                .toList();
        if (moving.isEmpty()) {
            return wrong(from, "Choose at least one learner first.", List.of(), model, response);
        }
        if ("none".equals(to)) {
            classes.leave(moving);
            redirect.addFlashAttribute("done", moving.size() + " left the class. Their sheets and marks are kept.");
            return "redirect:/classes/" + id;
        }
        Optional<SchoolClass> target = target(to).filter(other -> other.id() != id);
        if (target.isEmpty()) {
            return wrong(from, "Choose the class to move them to.", List.of(), model, response);
        }
        List<String> hindrances =
                lists.move(moving.stream().map(Enrolment::id).collect(Collectors.toSet()), from, target.get());
        if (!hindrances.isEmpty()) {
            return wrong(from, "Nobody was moved:", hindrances, model, response);
        }
        redirect.addFlashAttribute(
                "done",
                moving.size() + (moving.size() == 1 ? " learner was moved to " : " learners were moved to ")
                        + target.get().name() + ".");
        return "redirect:/classes/" + id;
    }

    private Optional<SchoolClass> target(@Nullable String typed) {
        return typed == null || !typed.matches("\\d{1,18}") ? Optional.empty() : classes.find(Long.parseLong(typed));
    }

    private String wrong(
            SchoolClass schoolClass, String sentence, List<String> lines, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("faultHeading", sentence);
        model.addAttribute("faults", lines);
        return show(schoolClass, model);
    }

    /** Learners with this code and their name have a check at home kept for the class. */
    @PostMapping("/classes/{id}/check-code")
    String makeCheckCode(@PathVariable long id, RedirectAttributes redirect) {
        homeChecks.makeCode(found(id).id());
        redirect.addFlashAttribute("done", "The class has a new code for checks at home.");
        return "redirect:/classes/" + id + "#home-checks-heading";
    }

    @PostMapping("/classes/{id}/shown")
    String shown(
            @PathVariable long id,
            @RequestParam(defaultValue = "false") boolean numbers,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        SchoolClass schoolClass = found(id);
        List<Enrolment> without = lists.showNumbers(schoolClass, numbers);
        if (!without.isEmpty()) {
            return wrong(
                    schoolClass,
                    "The class stays with names, because these learners have no candidate number:",
                    without.stream().map(Enrolment::name).toList(),
                    model,
                    response);
        }
        redirect.addFlashAttribute(
                "done",
                numbers
                        ? "Sheets, reports and mark sheets of this class show candidate numbers now."
                        : "Sheets, reports and mark sheets of this class show names now.");
        return "redirect:/classes/" + id;
    }

    @PostMapping("/classes/{id}/sets")
    String addSet(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable Long task,
            @RequestParam(required = false) @Nullable String title,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        SchoolClass schoolClass = found(id);
        Optional<KeptTask> kept = Optional.ofNullable(task).flatMap(tasks::find);
        if (kept.isEmpty()) {
            return wrong(schoolClass, "Choose the task that the class drew.", List.of(), model, response);
        }
        String wished = title == null ? "" : title.strip();
        if (wished.length() > LONGEST_TITLE) {
            return wrong(schoolClass, "A title of at most 300 letters, please.", List.of(), model, response);
        }
        ClassSet made = classSets.addFor(
                id, wished.isEmpty() ? kept.get().task().title() + ", " + schoolClass.name() : wished, kept.get());
        reach.own(Kind.CLASS_SET, made.id());
        redirect.addFlashAttribute("done", "The class set is made. Now hand in the scans.");
        return "redirect:/class-sets/" + made.id();
    }

    private SchoolClass found(long id) {
        return classes.find(id).orElseThrow(() -> new NotFound("There is no class " + id + "."));
    }
}
