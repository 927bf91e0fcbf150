package wallplate.web.classes;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.RollChange;
import wallplate.classes.SchoolClass;
import wallplate.tables.LineFault;
import wallplate.web.page.NotFound;
import wallplate.web.page.TableDownload;

/** Class lists taken in and handed out. */
@Controller
class ClassListController {

    private final Classes classes;
    private final ClassLists lists;
    private final ClassController pages;

    ClassListController(Classes classes, ClassLists lists, ClassController pages) {
        this.classes = classes;
        this.lists = lists;
        this.pages = pages;
    }

    @PostMapping("/classes/{id}/list")
    String take(
            @PathVariable long id,
            @RequestParam(name = "list", required = false) @Nullable String typed,
            @RequestParam(name = "listFile", required = false) @Nullable MultipartFile file,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        SchoolClass schoolClass = found(id);
        String text = typed == null ? "" : typed;
        byte[] content = file == null || file.isEmpty() ? text.getBytes(StandardCharsets.UTF_8) : file.getBytes();
        RollChange change = lists.take(schoolClass, content);
        if (change instanceof RollChange.Refused refused) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("faultHeading", "The list was not taken in, and nothing was changed:");
            model.addAttribute("faults", refused.faults().stream().map(LineFault::text).toList());
            model.addAttribute("typed", text);
            return pages.show(schoolClass, model);
        }
        redirect.addFlashAttribute("done", sentence((RollChange.Done) change));
        return "redirect:/classes/" + id;
    }

    private static String sentence(RollChange.Done done) {
        StringBuilder sentence = new StringBuilder("%d added, %d changed, %d as before."
                .formatted(done.added(), done.changed(), done.same()));
        if (!done.notListed().isEmpty()) {
            sentence.append(" Not in the list, and still in the class: ")
                    .append(String.join(", ", done.notListed()))
                    .append('.');
        }
        if (!done.unused().isEmpty()) {
            sentence.append(" These columns are not kept: ")
                    .append(String.join(", ", done.unused()))
                    .append('.');
        }
        return sentence.toString();
    }

    @GetMapping("/classes/{id}/list.csv")
    ResponseEntity<byte[]> csv(@PathVariable long id) throws IOException {
        SchoolClass schoolClass = found(id);
        return TableDownload.csv(lists.list(schoolClass), "class-" + schoolClass.name());
    }

    @GetMapping("/classes/{id}/list.xlsx")
    ResponseEntity<byte[]> xlsx(@PathVariable long id) throws IOException {
        SchoolClass schoolClass = found(id);
        return TableDownload.xlsx(lists.list(schoolClass), "class-" + schoolClass.name());
    }

    private SchoolClass found(long id) {
        return classes.find(id).orElseThrow(() -> new NotFound("There is no class " + id + "."));
    }
}
