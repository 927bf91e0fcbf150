package wallplate.web.classes;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Valid;
import java.util.List;
import java.util.Optional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.classes.ClassLists;
import wallplate.classes.Classes;
import wallplate.classes.Enrolment;
import wallplate.classes.SchoolClass;
import wallplate.marksheets.MarkSheetBook;
import wallplate.ownership.Kind;
import wallplate.records.Histories;
import wallplate.records.HomeChecks;
import wallplate.records.LearnerHistory;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;

/** One learner: the classes over the years, the sheets, name and candidate number. */
@Controller
class LearnerPageController {

    private final Classes classes;
    private final ClassLists lists;
    private final Histories histories;
    private final MarkSheetBook book;
    private final HomeChecks homeChecks;
    private final Reach reach;

    LearnerPageController(
            Classes classes,
            ClassLists lists,
            Histories histories,
            MarkSheetBook book,
            HomeChecks homeChecks,
            Reach reach) {
        this.classes = classes;
        this.lists = lists;
        this.histories = histories;
        this.book = book;
        this.homeChecks = homeChecks;
        this.reach = reach;
    }

    /** A time in a class; the class is empty where it was the list of one set. */
    record Stay(Enrolment enrolment, Optional<SchoolClass> schoolClass) {}

    @GetMapping("/learners/{id}")
    String one(@PathVariable long id, Model model) {
        Enrolment enrolment = found(id);
        model.addAttribute("form", new LearnerForm(enrolment.name(), enrolment.candidateNumber()));
        return show(enrolment, model);
    }

    private String show(Enrolment enrolment, Model model) {
        List<Stay> stays = classes.history(enrolment.id()).stream()
                .map(one -> new Stay(one, classes.find(one.classId())))
                .toList();
        model.addAttribute("enrolment", enrolment);
        model.addAttribute("stays", stays);
        model.addAttribute(
                "entries", histories.of(enrolment.id(), reach.share()).map(LearnerHistory::entries).orElse(List.of()));
        model.addAttribute("lines", book.resultsOf(enrolment.id(), reach.share()));
        model.addAttribute(
                "homeChecks",
                homeChecks.of(stays.stream()
                        .map(Stay::enrolment)
                        .filter(enrolled -> reach.sees(Kind.CLASS, enrolled.classId()))
                        .map(Enrolment::id)
                        .toList()));
        model.addAttribute("schoolClass", classes.find(enrolment.classId()).orElse(null));
        return "classes/learner";
    }

    @PostMapping("/learners/{id}")
    String rename(
            @PathVariable long id,
            @Valid @ModelAttribute("form") LearnerForm form,
            BindingResult faults,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Enrolment enrolment = found(id);
        boolean numbersShown =
                classes.find(enrolment.classId()).filter(SchoolClass::numbersShown).isPresent();
        if (numbersShown && form.strippedNumber().isEmpty()) {
            faults.rejectValue("number", "missing", "This class goes by candidate numbers: the learner needs one.");
        }
        lists.present(enrolment.classId()).stream()
                .filter(other -> other.id() != id
                        && !form.strippedNumber().isEmpty()
                        && other.candidateNumber().equalsIgnoreCase(form.strippedNumber()))
                .findFirst()
                .ifPresent(other ->
                        faults.rejectValue("number", "taken", "This number belongs to " + other.name() + " already."));
        if (faults.hasErrors()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return show(enrolment, model);
        }
        classes.rename(id, form.strippedName(), form.strippedNumber());
        redirect.addFlashAttribute("done", "Name and number are changed.");
        return "redirect:/learners/" + id;
    }

    private Enrolment found(long id) {
        return classes.enrolment(id).orElseThrow(() -> new NotFound("There is no learner " + id + "."));
    }
}
