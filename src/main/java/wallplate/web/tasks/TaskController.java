package wallplate.web.tasks;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.marking.Guideline;
import wallplate.marking.GuidelineReading;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.solver.Solver;
import wallplate.task.Fault;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;
import wallplate.web.page.NotFound;

/** Drawing tasks as files: the list, one of them, import and export. */
@Controller
class TaskController {

    private static final MediaType YAML = new MediaType("application", "yaml", StandardCharsets.UTF_8);

    private final Tasks tasks;

    TaskController(Tasks tasks) {
        this.tasks = tasks;
    }

    @GetMapping("/tasks")
    String all(Model model) {
        model.addAttribute("tasks", tasks.all());
        return "tasks/all";
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
        List<Fault> faults;
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            GuidelineReading guideline = Guideline.read(Solver.solve(accepted.task()));
            if (guideline instanceof GuidelineReading.Accepted) {
                KeptTask kept = tasks.add(accepted.task());
                redirect.addFlashAttribute("done", "The task is taken in.");
                return "redirect:/tasks/" + kept.id();
            }
            faults = ((GuidelineReading.Refused) guideline).faults();
        } else {
            faults = ((TaskReading.Refused) reading).faults();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("faults", faults);
        model.addAttribute("text", yaml);
        return "tasks/import";
    }

    @GetMapping("/tasks/{id}")
    String one(@PathVariable long id, Model model) {
        KeptTask kept = found(id);
        model.addAttribute("kept", kept);
        model.addAttribute("expected", Solver.solve(kept.task()));
        return "tasks/one";
    }

    @GetMapping("/tasks/{id}/task.yml")
    ResponseEntity<String> export(@PathVariable long id) {
        KeptTask kept = found(id);
        return ResponseEntity.ok()
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(kept.task().id() + ".yml")
                                .build()
                                .toString())
                .contentType(YAML)
                .body(kept.yaml());
    }

    @PostMapping("/tasks/{id}/marks-shown")
    String showMarks(@PathVariable long id, @RequestParam(defaultValue = "false") boolean shown) {
        tasks.showMarks(found(id).id(), shown);
        return "redirect:/tasks/" + id;
    }

    private KeptTask found(long id) {
        return tasks.find(id).orElseThrow(() -> new NotFound("There is no task " + id + "."));
    }
}
