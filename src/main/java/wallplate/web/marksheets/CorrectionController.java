package wallplate.web.marksheets;

import jakarta.servlet.http.HttpServletResponse;
import java.math.BigDecimal;
import java.security.Principal;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.marksheets.Entry;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.Standing;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;

/** Corrections of submitted mark sheets. */
@Controller
class CorrectionController {

    private static final int LONGEST_REASON = 1000;

    private final MarkSheetBook book;

    CorrectionController(MarkSheetBook book) {
        this.book = book;
    }

    @PostMapping("/mark-sheets/{id}/corrections")
    String correct(
            @PathVariable long id,
            @RequestParam Map<String, String> fields,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        MarkSheet sheet = book.find(id).orElseThrow(() -> new NotFound("There is no mark sheet " + id + "."));
        String reason = fields.getOrDefault("reason", "").strip();
        Optional<Integer> line = number(fields, "line", sheet.lines().size());
        Optional<Integer> place = number(fields, "place", sheet.columns().size());
        Optional<Entry> entry = entry(fields);
        Optional<String> wrong = wrong(sheet, line, place, entry, reason);
        if (wrong.isPresent()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("wrong", "Nothing was corrected. " + wrong.get());
            model.addAttribute("typed", fields);
            return MarkSheetController.show(sheet, model);
        }
        book.correct(sheet, line.orElseThrow(), place.orElseThrow(), entry.orElseThrow(), reason, Person.name(person));
        redirect.addFlashAttribute("done", "The correction is entered with its reason.");
        return "redirect:/mark-sheets/" + id + "#corrections";
    }

    private static Optional<String> wrong(
            MarkSheet sheet, Optional<Integer> line, Optional<Integer> place, Optional<Entry> entry, String reason) {
        if (sheet.heading().isDraft()) {
            return Optional.of("A draft follows the marks by itself.");
        }
        if (line.isEmpty() || place.isEmpty()) {
            return Optional.of("Choose a learner and a task.");
        }
        if (entry.isEmpty()) {
            return Optional.of("Marks are a number from 0 to the marks available, with at most two decimals.");
        }
        return reason.isEmpty() || reason.length() > LONGEST_REASON
                ? Optional.of("Say in up to 1000 letters why.")
                : Optional.empty();
    }

    private static Optional<Integer> number(Map<String, String> fields, String field, int most) {
        return Optional.ofNullable(fields.get(field))
                .filter(text -> text.matches("\\d{1,5}"))
                .map(Integer::valueOf)
                .filter(number -> number >= 1 && number <= most);
    }

    /** Empty where the marks are no marks. */
    private static Optional<Entry> entry(Map<String, String> fields) {
        String word = fields.getOrDefault("standing", "");
        if (word.matches("absent|excused")) {
            return Optional.of(new Entry(Standing.of(word), BigDecimal.ZERO, BigDecimal.ZERO));
        }
        Optional<BigDecimal> awarded = TypedMarks.of(fields.get("awarded"));
        Optional<BigDecimal> available = TypedMarks.of(fields.get("available"));
        boolean fit = word.matches("marked|late")
                && awarded.isPresent()
                && available.isPresent()
                && available.get().signum() > 0
                && awarded.get().compareTo(available.get()) <= 0;
        return fit ? Optional.of(new Entry(Standing.of(word), awarded.get(), available.get())) : Optional.empty();
    }
}
