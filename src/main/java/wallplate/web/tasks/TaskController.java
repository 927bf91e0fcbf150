package wallplate.web.tasks;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
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
import wallplate.drafting.ConstructionGuide;
import wallplate.drafting.DrawingOptions;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.Standings;
import wallplate.records.Tasks;
import wallplate.solver.Solver;
import wallplate.solver.Variants;
import wallplate.task.DetailSchema;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.Fault;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;

/** Drawing tasks: the list, the form with its drawing, one task, and taking a task file in. */
@Controller
class TaskController {

    private static final int MOST_VARIANTS = 40;
    private static final int OTHER_SETS = 100;

    private final Tasks tasks;
    private final ClassSets classSets;
    private final Standings standings;
    private final Reach reach;

    TaskController(Tasks tasks, ClassSets classSets, Standings standings, Reach reach) {
        this.tasks = tasks;
        this.classSets = classSets;
        this.standings = standings;
        this.reach = reach;
    }

    @GetMapping("/tasks")
    String all(Model model) {
        model.addAttribute("tasks", tasks.all(reach.shareOfTasks()));
        return "tasks/all";
    }

    @GetMapping("/tasks/new")
    String empty(@RequestParam(required = false) @Nullable String detail, Model model) {
        DetailSchema chosen = Optional.ofNullable(detail).flatMap(Details::find).orElse(Details.all().get(0));
        return form(TaskForm.usual(chosen), null, List.of(), model);
    }

    @GetMapping("/tasks/{id}/edit")
    String edit(@PathVariable long id, Model model) {
        KeptTask kept = found(id);
        return form(TaskForm.of(kept.task()), kept, List.of(), model);
    }

    /** A form filled from a task, to be kept as a new one. */
    @GetMapping("/tasks/{id}/copy")
    String copy(@PathVariable long id, Model model) {
        TaskForm form = TaskForm.of(found(id).task());
        Map<String, String> fields = new LinkedHashMap<>(form.fields());
        fields.put("title", form.value("title") + ", copy");
        fields.put("id", "");
        return form(new TaskForm(form.detail(), fields, form.drawn()), null, List.of(), model);
    }

    @PostMapping("/tasks")
    String add(@RequestParam Map<String, String> typed, Model model, HttpServletResponse response, RedirectAttributes redirect) {
        TaskForm form = TaskForm.typed(typed);
        if (form.read(Map.of()) instanceof TaskReading.Accepted accepted) {
            KeptTask kept = keep(accepted.task());
            redirect.addFlashAttribute("done", "The task is kept.");
            return "redirect:/tasks/" + kept.id();
        }
        return refused(form, null, form.read(Map.of()), model, response);
    }

    @PostMapping("/tasks/{id}")
    String change(
            @PathVariable long id,
            @RequestParam Map<String, String> typed,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        KeptTask kept = found(id);
        TaskForm form = TaskForm.typed(typed);
        TaskReading reading = withItsGuideline(form.read(kept.task().marking()));
        if (reading instanceof TaskReading.Accepted accepted) {
            tasks.change(id, accepted.task());
            redirect.addFlashAttribute(
                    "done", "The task is changed. Class sets that were made before keep it as it was handed out.");
            return "redirect:/tasks/" + id;
        }
        return refused(form, kept, reading, model, response);
    }

    /** The form again with its drawing, for browsers that do not draw while one types. */
    @PostMapping("/tasks/draw")
    String draw(
            @RequestParam Map<String, String> typed,
            @RequestParam(required = false) @Nullable Long kept,
            Model model,
            HttpServletResponse response) {
        TaskForm form = TaskForm.typed(typed);
        KeptTask changed = kept == null ? null : found(kept);
        TaskReading reading = form.readForPreview();
        return reading instanceof TaskReading.Refused
                ? refused(form, changed, reading, model, response)
                : form(form, changed, List.of(), model);
    }

    /** The drawing and the sizes alone, while one types. */
    @PostMapping("/tasks/preview")
    String preview(@RequestParam Map<String, String> typed, Model model) {
        addPreview(TaskForm.typed(typed), model);
        return "tasks/preview :: preview";
    }

    private String refused(
            TaskForm form, @Nullable KeptTask kept, TaskReading reading, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        return form(form, kept, ((TaskReading.Refused) reading).faults(), model);
    }

    private static String form(TaskForm form, @Nullable KeptTask kept, List<Fault> faults, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("kept", kept);
        model.addAttribute("details", Details.all());
        model.addAttribute("faults", faults);
        Map<String, String> faultAt = new LinkedHashMap<>();
        faults.forEach(fault -> faultAt.merge(fault.key(), sentence(fault), (one, more) -> one + " " + more));
        model.addAttribute("faultAt", faultAt);
        addPreview(form, model);
        return "tasks/form";
    }

    private static String sentence(Fault fault) {
        return fault.found().isEmpty()
                ? "This is missing. Right would be: %s.".formatted(fault.accepted())
                : "Found %s. Right would be: %s.".formatted(fault.found(), fault.accepted());
    }

    private static void addPreview(TaskForm form, Model model) {
        TaskReading reading = form.readForPreview();
        model.addAttribute("form", form);
        if (reading instanceof TaskReading.Accepted accepted) {
            model.addAttribute("preview", TaskPreview.of(accepted.task(), DrawingOptions.FULL));
        } else {
            model.addAttribute("previewFaults", ((TaskReading.Refused) reading).faults());
        }
    }

    @GetMapping("/tasks/import")
    String importForm() {
        return "tasks/import";
    }

    @PostMapping("/tasks/import")
    String importFile(
            @RequestParam(required = false) @Nullable MultipartFile file,
            @RequestParam(required = false) @Nullable String text,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        String yaml = file == null || file.isEmpty()
                ? (text == null ? "" : text)
                : new String(file.getBytes(), StandardCharsets.UTF_8);
        TaskReading reading = TaskFile.read(yaml);
        List<Fault> faults = reading instanceof TaskReading.Refused refused
                ? refused.faults()
                : guidelineFaults(((TaskReading.Accepted) reading).task());
        if (reading instanceof TaskReading.Accepted accepted && faults.isEmpty()) {
            redirect.addFlashAttribute("done", "The task is taken in.");
            return "redirect:/tasks/" + keep(accepted.task()).id();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("faults", faults);
        model.addAttribute("text", yaml);
        return "tasks/import";
    }

    /** A task whose guideline marks what the task no longer asks for is refused like any other faulty one. */
    private static TaskReading withItsGuideline(TaskReading reading) {
        List<Fault> faults =
                reading instanceof TaskReading.Accepted accepted ? guidelineFaults(accepted.task()) : List.of();
        return faults.isEmpty() ? reading : new TaskReading.Refused(faults);
    }

    private static List<Fault> guidelineFaults(DrawingTask task) {
        return Guideline.read(Solver.solve(task)) instanceof GuidelineReading.Refused refused
                ? refused.faults()
                : List.of();
    }

    @GetMapping("/tasks/{id}")
    String one(
            @PathVariable long id,
            @RequestParam(defaultValue = "true") boolean dimensions,
            @RequestParam(required = false) @Nullable String plan,
            @RequestParam(defaultValue = "") String lengths,
            Model model) {
        KeptTask kept = found(id);
        model.addAttribute(
                "planSizes",
                plan == null ? PlanSizes.empty() : PlanSizes.read(plan, lengths, kept.task().scale()));
        model.addAttribute("kept", kept);
        model.addAttribute("dimensions", dimensions);
        model.addAttribute("preview", TaskPreview.of(kept.task(), DrawingOptions.FULL.withDimensions(dimensions)));
        model.addAttribute("derived", Solver.derived(kept.task()));
        model.addAttribute("classSets", setsToPrintFor(id));
        return "tasks/one";
    }

    /** Those of the task, and the newest others. */
    private List<ClassSet> setsToPrintFor(long id) {
        return Stream.concat(
                        classSets.ofTask(id, reach.share()).stream(),
                        standings.page(reach.share(), Standings.Which.ALL, "", 0, OTHER_SETS).sets().stream()
                                .map(Standings.Standing::classSet))
                .distinct()
                .toList();
    }

    /** How the drawing is made, step by step. */
    @GetMapping("/tasks/{id}/guide")
    String guide(@PathVariable long id, Model model, Locale language) {
        KeptTask kept = found(id);
        model.addAttribute("kept", kept);
        model.addAttribute("steps", ConstructionGuide.of(kept.task(), language).steps());
        model.addAttribute("area", "tasks");
        return "tasks/guide";
    }

    /** Makes versions of a task that are different but equally hard, each a task of its own. */
    @PostMapping("/tasks/{id}/variants")
    String variants(
            @PathVariable long id, @RequestParam int number, @RequestParam long seed, RedirectAttributes redirect) {
        DrawingTask task = found(id).task();
        if (number < 1 || number > MOST_VARIANTS) {
            redirect.addFlashAttribute(
                    "wrong", "Versions found: %d; right would be from 1 to %d.".formatted(number, MOST_VARIANTS));
            return "redirect:/tasks/" + id;
        }
        List<DrawingTask> variants = Variants.of(task, Variants.usualRanges(task), seed, number);
        variants.forEach(this::keep);
        redirect.addFlashAttribute(
                "done", variants.size() == 1 ? "1 version was made." : variants.size() + " versions were made.");
        return "redirect:/tasks";
    }

    @PostMapping("/tasks/{id}/marks-shown")
    String showMarks(
            @PathVariable long id, @RequestParam(defaultValue = "false") boolean shown, RedirectAttributes redirect) {
        tasks.showMarks(found(id).id(), shown);
        redirect.addFlashAttribute(
                "done",
                shown ? "Learners now see marks when they check at home." : "Learners now see advice only, no marks.");
        return "redirect:/tasks/" + id;
    }

    private KeptTask keep(DrawingTask task) {
        KeptTask kept = tasks.add(task);
        reach.own(Kind.TASK, kept.id());
        return kept;
    }

    private KeptTask found(long id) {
        return tasks.find(id).orElseThrow(() -> new NotFound("There is no task " + id + "."));
    }
}
