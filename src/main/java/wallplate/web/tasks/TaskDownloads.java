package wallplate.web.tasks;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.drafting.ConstructionGuide;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.DrawingSheets;
import wallplate.drafting.ModelAnswer;
import wallplate.drafting.SheetOwner;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
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

    private static final int MOST_BLANK = 200;

    private final Tasks tasks;
    private final ClassSets classSets;

    TaskDownloads(Tasks tasks, ClassSets classSets) {
        this.tasks = tasks;
        this.classSets = classSets;
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

    @GetMapping("/tasks/{id}/guide.pdf")
    ResponseEntity<byte[]> guide(@PathVariable long id, Locale language) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .body(ConstructionGuide.of(found(id).task(), language).pdf());
    }

    /** Sheets to draw on: for each learner of a class set's class list, or blank ones. */
    @GetMapping("/tasks/{id}/sheets.pdf")
    ResponseEntity<byte[]> sheets(
            @PathVariable long id,
            @RequestParam(required = false) @Nullable Long classSet,
            @RequestParam(defaultValue = "1") int blank,
            @RequestParam(defaultValue = "false") boolean brief) {
        List<SheetOwner> owners = Optional.ofNullable(classSet).flatMap(classSets::find).map(this::owners).orElse(List.of());
        List<SheetOwner> wanted = owners.isEmpty()
                ? IntStream.rangeClosed(1, Math.max(1, Math.min(blank, MOST_BLANK)))
                        .mapToObj(SheetOwner::anybody)
                        .toList()
                : owners;
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .body(DrawingSheets.of(found(id).task()).withBrief(brief).pdf(wanted));
    }

    private List<SheetOwner> owners(ClassSet classSet) {
        return classSets.learners(classSet.classId()).stream()
                .map(learner -> new SheetOwner(
                        learner.sheetCode(), learner.name(), classSet.className(), "", 1))
                .toList();
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
