package wallplate.web.moderation;

import jakarta.servlet.http.HttpServletResponse;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.moderation.BlindSheet;
import wallplate.moderation.Moderating;
import wallplate.moderation.Moderation;
import wallplate.moderation.Moderations;
import wallplate.moderation.SecondMarks;
import wallplate.records.ClassSets;
import wallplate.task.PlainNumber;
import wallplate.web.page.NotFound;

/**
 * The page on which a sample is marked a second time. It is given nothing but {@link BlindSheet}, which holds no first
 * mark, no verdict, no measured value and no name.
 */
@Controller
class SecondMarkingController {

    private static final String MARK = "mark-";

    private final Moderating moderating;
    private final Moderations moderations;
    private final ClassSets classSets;

    SecondMarkingController(Moderating moderating, Moderations moderations, ClassSets classSets) {
        this.moderating = moderating;
        this.moderations = moderations;
        this.classSets = classSets;
    }

    @GetMapping("/moderations/{id}/sheets/{place}")
    String sheet(@PathVariable long id, @PathVariable int place, Model model) {
        BlindSheet sheet = found(id, place);
        Map<String, String> typed = new LinkedHashMap<>();
        for (BlindSheet.Criterion criterion : sheet.criteria()) {
            criterion.given().ifPresent(given -> typed.put(criterion.id(), PlainNumber.text(given)));
        }
        return show(sheet, typed, Map.of(), model);
    }

    private String show(BlindSheet sheet, Map<String, String> typed, Map<String, String> faults, Model model) {
        model.addAttribute("sheet", sheet);
        model.addAttribute("typed", typed);
        model.addAttribute("faults", faults);
        model.addAttribute(
                "task", classSets.find(sheet.moderation().classSetId()).orElseThrow().task());
        return "moderation/sheet";
    }

    @PostMapping("/moderations/{id}/sheets/{place}")
    String mark(
            @PathVariable long id,
            @PathVariable int place,
            @RequestParam Map<String, String> form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        BlindSheet sheet = found(id, place);
        if (sheet.moderation().isHandedIn()) {
            redirect.addFlashAttribute("wrong", "The second marks are handed in: they can no longer be changed.");
            return "redirect:/moderations/" + id;
        }
        Map<String, String> typed = new LinkedHashMap<>();
        sheet.criteria().forEach(criterion ->
                typed.put(criterion.id(), form.getOrDefault(MARK + criterion.id(), "")));
        SecondMarks second = SecondMarks.read(sheet.criteria(), typed);
        if (!second.isComplete()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return show(sheet, typed, second.faults(), model);
        }
        moderating.mark(sheet, second);
        return moderations
                .find(id)
                .flatMap(Moderation::next)
                .map(next -> "redirect:/moderations/%d/sheets/%d".formatted(id, next.place()))
                .orElse("redirect:/moderations/" + id);
    }

    private BlindSheet found(long id, int place) {
        return moderating
                .sheet(id, place)
                .orElseThrow(() -> new NotFound("There is no sheet %d in moderation %d.".formatted(place, id)));
    }
}
