package wallplate.web.sets;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.jobs.ReadingQueue;
import wallplate.ownership.Kind;
import wallplate.records.ClassList;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.ScanFiles;
import wallplate.records.Standings;
import wallplate.records.Standings.Which;
import wallplate.records.Tasks;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;

/** Class sets: making one, handing scans in, following the reading. */
@Controller
class ClassSetController {

    private static final int ON_A_PAGE = 50;

    private final ClassSets classSets;
    private final Tasks tasks;
    private final ScanFiles files;
    private final Standings standings;
    private final Intake intake;
    private final ReadingQueue queue;
    private final SetStanding standing;
    private final ProgressStream stream;
    private final Reach reach;

    ClassSetController(
            ClassSets classSets,
            Tasks tasks,
            ScanFiles files,
            Standings standings,
            Intake intake,
            ReadingQueue queue,
            SetStanding standing,
            ProgressStream stream, Reach reach) {
        this.classSets = classSets;
        this.tasks = tasks;
        this.files = files;
        this.standings = standings;
        this.intake = intake;
        this.queue = queue;
        this.standing = standing;
        this.stream = stream;
        this.reach = reach;
    }

    /**
     * The sets, a page of them.
     *
     * @param from how many are passed over
     */
    @GetMapping("/class-sets")
    String all(
            @RequestParam(defaultValue = "all") String which,
            @RequestParam(defaultValue = "") String containing,
            @RequestParam(defaultValue = "0") int from,
            Model model) {
        Which wanted = Arrays.stream(Which.values())
                .filter(one -> word(one).equals(which))
                .findFirst()
                .orElse(Which.ALL);
        int begin = Math.max(0, from);
        Standings.Page page = standings.page(reach.share(), wanted, containing, begin, ON_A_PAGE);
        model.addAttribute("page", page);
        model.addAttribute("which", word(wanted));
        model.addAttribute("containing", containing.strip());
        model.addAttribute("begin", begin);
        model.addAttribute("newer", begin == 0 ? null : Math.max(0, begin - ON_A_PAGE));
        model.addAttribute("older", begin + page.sets().size() < page.found() ? begin + ON_A_PAGE : null);
        return "sets/all";
    }

    private static String word(Which which) {
        return which.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @GetMapping("/class-sets/new")
    String form(@RequestParam(required = false) @Nullable Long task, Model model) {
        return form(ClassSetForm.empty(task), model);
    }

    @PostMapping("/class-sets")
    String add(
            @Valid @ModelAttribute("form") ClassSetForm form,
            BindingResult faults,
            @RequestParam(name = "classListFile", required = false) @Nullable MultipartFile classListFile,
            @RequestParam(name = "scans", required = false) @Nullable List<MultipartFile> scans,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        Optional<KeptTask> task = Optional.ofNullable(form.task()).flatMap(tasks::find);
        if (task.isEmpty() && !faults.hasFieldErrors("task")) {
            faults.rejectValue("task", "gone", "This task is no longer there: choose another one.");
        }
        if (faults.hasErrors() || task.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return form(form, model);
        }
        String className = form.className("");
        ClassSet classSet = classSets.add(
                form.titleOr(task.get().task().title() + ", " + className),
                className,
                classList(form, classListFile),
                task.get(),
                false);
        reach.own(Kind.CLASS_SET, classSet.id());
        Intake.Receipt receipt = intake.take(classSet, scans == null ? List.of() : scans);
        redirect.addFlashAttribute(
                "done",
                receipt.taken().isEmpty()
                        ? "The class set is made. Now hand in the scans."
                        : "The class set is made. " + receipt.sentence());
        return "redirect:/class-sets/" + classSet.id();
    }

    private static List<ClassListEntry> classList(ClassSetForm form, @Nullable MultipartFile file) throws IOException {
        String text = file == null || file.isEmpty()
                ? form.classListText()
                : new String(file.getBytes(), StandardCharsets.UTF_8);
        return ClassList.read(text);
    }

    private String form(ClassSetForm form, Model model) {
        model.addAttribute("form", form);
        model.addAttribute("tasks", tasks.all(reach.shareOfTasks()));
        return "sets/form";
    }

    @GetMapping("/class-sets/{id}")
    String one(@PathVariable long id, Model model) {
        standing.show(found(id), model);
        return "sets/one";
    }

    /** The part of the page that changes while sheets are read. */
    @GetMapping("/class-sets/{id}/standing")
    String standing(@PathVariable long id, Model model) {
        standing.show(found(id), model);
        return "sets/standing :: standing";
    }

    @GetMapping(path = "/class-sets/{id}/progress", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter progress(@PathVariable long id) {
        return stream.listen(found(id).id());
    }

    @PostMapping("/class-sets/{id}/stop")
    String stop(@PathVariable long id, RedirectAttributes redirect) {
        files.stop(found(id).id());
        redirect.addFlashAttribute("done", "The reading is stopped. Sheets that were read are kept.");
        return "redirect:/class-sets/" + id;
    }

    @PostMapping("/class-sets/{id}/go-on")
    String goOn(@PathVariable long id, RedirectAttributes redirect) {
        files.takeUpAgain(found(id).id()).forEach(queue::add);
        redirect.addFlashAttribute("done", "The reading goes on.");
        return "redirect:/class-sets/" + id;
    }

    @PostMapping("/class-sets/{id}/release")
    String release(@PathVariable long id, RedirectAttributes redirect) {
        classSets.release(found(id).id());
        redirect.addFlashAttribute("done", "The marks are released to the learners.");
        return "redirect:/class-sets/" + id;
    }

    @PostMapping("/class-sets/{id}/withdraw")
    String withdraw(@PathVariable long id, RedirectAttributes redirect) {
        classSets.withdraw(found(id).id());
        redirect.addFlashAttribute("done", "The marks are no longer released.");
        return "redirect:/class-sets/" + id;
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
