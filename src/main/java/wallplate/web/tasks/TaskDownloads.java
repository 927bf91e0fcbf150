package wallplate.web.tasks;

import java.nio.charset.StandardCharsets;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.ModelAnswer;
import wallplate.records.KeptTask;
import wallplate.records.Tasks;
import wallplate.solver.Solver;
import wallplate.web.page.NotFound;

/** What a teacher takes away from a task: its file and the model answer in every form. */
@Controller
class TaskDownloads {

    private static final MediaType YAML = new MediaType("application", "yaml", StandardCharsets.UTF_8);
    private static final MediaType SVG = new MediaType("image", "svg+xml", StandardCharsets.UTF_8);
    private static final MediaType DXF = new MediaType("image", "vnd.dxf");

    private final Tasks tasks;

    TaskDownloads(Tasks tasks) {
        this.tasks = tasks;
    }

    @GetMapping("/tasks/{id}/task.yml")
    ResponseEntity<byte[]> file(@PathVariable long id) {
        KeptTask kept = found(id);
        return saved(kept.task().id() + ".yml", YAML, kept.yaml().getBytes(StandardCharsets.UTF_8));
    }

    @GetMapping("/tasks/{id}/model-answer.svg")
    ResponseEntity<byte[]> svg(@PathVariable long id, @RequestParam(defaultValue = "true") boolean dimensions) {
        byte[] svg = answer(id, dimensions).svgFile().getBytes(StandardCharsets.UTF_8);
        return ResponseEntity.ok().contentType(SVG).body(svg);
    }

    @GetMapping("/tasks/{id}/model-answer.pdf")
    ResponseEntity<byte[]> pdf(@PathVariable long id, @RequestParam(defaultValue = "true") boolean dimensions) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .body(answer(id, dimensions).pdf());
    }

    @GetMapping("/tasks/{id}/model-answer.dxf")
    ResponseEntity<byte[]> dxf(@PathVariable long id, @RequestParam(defaultValue = "true") boolean dimensions) {
        return saved(found(id).task().id() + ".dxf", DXF, answer(id, dimensions).dxf());
    }

    private ModelAnswer answer(long id, boolean dimensions) {
        return ModelAnswer.of(Solver.solve(found(id).task())).with(DrawingOptions.FULL.withDimensions(dimensions));
    }

    private static ResponseEntity<byte[]> saved(String fileName, MediaType type, byte[] content) {
        ContentDisposition disposition =
                ContentDisposition.attachment().filename(fileName).build();
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, disposition.toString())
                .contentType(type)
                .body(content);
    }

    private KeptTask found(long id) {
        return tasks.find(id).orElseThrow(() -> new NotFound("There is no task " + id + "."));
    }
}
