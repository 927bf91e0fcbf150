package wallplate.web.marksheets;

import jakarta.servlet.http.HttpServletResponse;
import java.security.Principal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.classes.Classes;
import wallplate.marksheets.Heading;
import wallplate.marksheets.Line;
import wallplate.marksheets.MarkSheet;
import wallplate.marksheets.MarkSheetBook;
import wallplate.marksheets.MarkSheets;
import wallplate.marksheets.NewMarkSheet;
import wallplate.ownership.Kind;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;

/** Mark sheets: beginning one, saying who was late, absent or excused or marked on paper, submitting it. */
@Controller
class MarkSheetController {

    private final MarkSheetBook book;
    private final MarkSheets kept;
    private final ClassSets classSets;
    private final Classes classes;
    private final Reach reach;

    MarkSheetController(MarkSheetBook book, MarkSheets kept, ClassSets classSets, Classes classes, Reach reach) {
        this.book = book;
        this.kept = kept;
        this.classSets = classSets;
        this.classes = classes;
        this.reach = reach;
    }

    /** The mark sheets of one term of one school year; the year is empty for sets with lists of their own. */
    record Term(String schoolYear, String term, List<Heading> sheets) {}

    @GetMapping("/mark-sheets")
    String all(Model model) {
        List<Term> terms = kept.all(reach.share()).stream()
                .collect(Collectors.groupingBy(heading -> List.of(heading.schoolYear(), heading.term())))
                .entrySet()
                .stream()
                .map(entry -> new Term(entry.getKey().get(0), entry.getKey().get(1), entry.getValue()))
                .sorted(Comparator.comparing(Term::schoolYear).thenComparing(Term::term).reversed())
                .toList();
        model.addAttribute("terms", terms);
        return "marksheets/all";
    }

    @GetMapping("/mark-sheets/new")
    String form(
            @RequestParam(name = "class") long classId,
            @RequestParam(required = false) @Nullable Long classSet,
            Model model) {
        List<ClassSet> sets = setsOf(classId);
        return form(classId, sets, MarkSheetForm.fresh(sets, Optional.ofNullable(classSet)), model);
    }

    private static String form(long classId, List<ClassSet> sets, MarkSheetForm form, Model model) {
        model.addAttribute("classId", classId);
        model.addAttribute("className", sets.get(0).className());
        model.addAttribute("sets", sets);
        model.addAttribute("form", form);
        return "marksheets/form";
    }

    private List<ClassSet> setsOf(long classId) {
        List<ClassSet> sets = classSets.ofClass(classId, reach.share());
        if (sets.isEmpty()) {
            throw new NotFound("This class has no class set yet, so there is nothing to put into a mark sheet.");
        }
        return sets;
    }

    @PostMapping("/mark-sheets")
    String add(
            @RequestParam(name = "class") long classId,
            @RequestParam Map<String, String> fields,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response) {
        List<ClassSet> sets = setsOf(classId);
        MarkSheetForm form = MarkSheetForm.of(fields, sets);
        if (!form.faults().isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return form(classId, sets, form, model);
        }
        String className = sets.get(0).className();
        long id = kept.add(new NewMarkSheet(
                classId,
                form.title().isEmpty() ? className + ", " + form.term() : form.title(),
                className,
                classes.find(classId).map(one -> one.year().label()).orElse(""),
                form.term(),
                form.latePercent(),
                form.tasks(sets),
                Person.name(person)));
        reach.own(Kind.MARK_SHEET, id);
        return "redirect:/mark-sheets/" + id;
    }

    @GetMapping("/mark-sheets/{id}")
    String one(@PathVariable long id, Model model) {
        return draft(found(id), model);
    }

    /** With what was said about learners, also where a late sheet is still open. */
    private String draft(MarkSheet sheet, Model model) {
        return show(sheet, StandingsForm.of(kept.said(sheet.heading().id())), model);
    }

    private static String show(MarkSheet sheet, StandingsForm form, Model model) {
        model.addAttribute("said", form.standings());
        model.addAttribute("onPaper", form.onPaper());
        model.addAttribute("outOf", StandingsForm.outOf(sheet));
        return show(sheet, model);
    }

    static String show(MarkSheet sheet, Model model) {
        model.addAttribute("sheet", sheet);
        model.addAttribute("heading", sheet.heading());
        model.addAttribute("reckoning", sheet.reckoning());
        return "marksheets/one";
    }

    /** Who was late, absent or excused, and the marks of sheets marked on paper; what is not said is taken from the sheets. */
    @PostMapping("/mark-sheets/{id}/standings")
    String say(
            @PathVariable long id,
            @RequestParam Map<String, String> fields,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        MarkSheet sheet = found(id);
        if (!sheet.heading().isDraft()) {
            redirect.addFlashAttribute("wrong", "This mark sheet is submitted: correct single entries, with a reason.");
            return "redirect:/mark-sheets/" + id;
        }
        StandingsForm form = StandingsForm.of(fields, sheet);
        if (!form.faults().isEmpty()) {
            return faulty(sheet, form, model, response);
        }
        kept.say(id, form.said());
        redirect.addFlashAttribute("done", "It is kept so.");
        return "redirect:/mark-sheets/" + id;
    }

    private static String faulty(MarkSheet sheet, StandingsForm form, Model model, HttpServletResponse response) {
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute(
                "wrong",
                "Nothing was kept. Marks are a number from 0 to what the task is out of, with at most two decimals: "
                        + String.join("; ", form.faults()) + ".");
        return show(sheet, form, model);
    }

    /** What stands in the form is kept first: a draft is not frozen without what was just said in it. */
    @PostMapping("/mark-sheets/{id}/submit")
    String submit(
            @PathVariable long id,
            @RequestParam Map<String, String> fields,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        MarkSheet sheet = found(id);
        if (sheet.heading().isDraft() && StandingsForm.isIn(fields)) {
            StandingsForm form = StandingsForm.of(fields, sheet);
            if (!form.faults().isEmpty()) {
                return faulty(sheet, form, model, response);
            }
            kept.say(id, form.said());
            sheet = found(id);
        }
        MarkSheetBook.Outcome outcome = book.submit(sheet, Person.name(person));
        if (outcome instanceof MarkSheetBook.StillOpen still) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute(
                    "wrong",
                    "Not submitted: these learners have an open entry. Decide their sheets, enter the marks of those marked on"
                            + " paper, or say that they were absent or excused: "
                            + still.open().stream().map(Line::name).collect(Collectors.joining(", ")) + ".");
            return draft(found(id), model);
        }
        if (outcome instanceof MarkSheetBook.NobodyInIt) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("wrong", "Not submitted: there is nobody in it. Take a class list in first.");
            return draft(found(id), model);
        }
        redirect.addFlashAttribute(
                "done",
                outcome instanceof MarkSheetBook.Submitted
                        ? "The mark sheet is submitted and frozen."
                        : "The mark sheet was submitted before.");
        return "redirect:/mark-sheets/" + id;
    }

    @PostMapping("/mark-sheets/{id}/throw-away")
    String throwAway(@PathVariable long id, RedirectAttributes redirect) {
        found(id);
        if (!kept.throwAway(id)) {
            redirect.addFlashAttribute("wrong", "A submitted mark sheet is not thrown away.");
            return "redirect:/mark-sheets/" + id;
        }
        redirect.addFlashAttribute("done", "The draft is thrown away. Sheets and marks are as they were.");
        return "redirect:/mark-sheets";
    }

    private MarkSheet found(long id) {
        return book.find(id).orElseThrow(() -> new NotFound("There is no mark sheet " + id + "."));
    }
}
