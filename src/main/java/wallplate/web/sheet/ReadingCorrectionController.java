package wallplate.web.sheet;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.security.Principal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.CorrectedPage;
import wallplate.geometry.Segment;
import wallplate.measure.LinesByHand;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.MarkEntry;
import wallplate.records.PageFacts;
import wallplate.records.SheetCorrection;
import wallplate.records.SheetCorrections;
import wallplate.records.SheetEntry;
import wallplate.records.SheetState;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;
import wallplate.web.page.Words;

/** What a person corrects about the reading of a sheet: its millimetres, and the lines of a part. */
@Controller
class ReadingCorrectionController {

    private final Sheets sheets;
    private final ClassSets classSets;
    private final SheetCorrections corrections;
    private final SheetCorrecting correcting;
    private final Words words;

    ReadingCorrectionController(
            Sheets sheets,
            ClassSets classSets,
            SheetCorrections corrections,
            SheetCorrecting correcting,
            Words words) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.corrections = corrections;
        this.correcting = correcting;
        this.words = words;
    }

    @GetMapping("/sheets/{id}/scale")
    String scale(@PathVariable long id, Model model) {
        SheetEntry sheet = read(id);
        model.addAttribute("ticks", TicksForm.of(standing(id, Optional.empty()), asRead(id).assessment().page()));
        return showScale(sheet, model);
    }

    private String showScale(SheetEntry sheet, Model model) {
        SheetCorrections.AsRead asRead = asRead(sheet.id());
        show(sheet, standing(sheet.id(), Optional.empty()), model);
        model.addAttribute("page", asRead.assessment().page());
        model.addAttribute("picture", asRead.screenPicture());
        model.addAttribute("fullPicture", asRead.pagePicture());
        return "sheet/scale";
    }

    @PostMapping("/sheets/{id}/scale")
    String setScale(
            @PathVariable long id,
            TicksForm form,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        SheetEntry sheet = read(id);
        PageFacts before = asRead(id).assessment().page();
        Optional<Segment> bar = form.bar();
        Optional<String> fault = bar.isEmpty()
                ? Optional.of(words.say("scale.no-numbers"))
                : correct(sheet, Optional.empty(), List.of(bar.get()), person);
        if (fault.isPresent()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("fault", fault.get());
            model.addAttribute("ticks", form);
            return showScale(sheet, model);
        }
        PageFacts now = sheets.assessment(id).orElseThrow().page();
        redirect.addFlashAttribute("done", words.say("scale.done", words.tenth(percentLarger(before, now))));
        return "redirect:/sheets/" + id;
    }

    /** How much larger sizes are now than as the sheet was read; a page keeps its area but for the millimetre. */
    private static double percentLarger(PageFacts before, PageFacts now) {
        double area = now.widthMm() * now.heightMm() / (before.widthMm() * before.heightMm());
        return 100 * (Math.sqrt(area) - 1);
    }

    @PostMapping("/sheets/{id}/scale/restore")
    String restoreScale(@PathVariable long id, @Nullable Principal person, RedirectAttributes redirect)
            throws IOException {
        return takeBack(read(id), Optional.empty(), person, redirect, "");
    }

    @GetMapping("/sheets/{id}/lines/{criterion}")
    String lines(@PathVariable long id, @PathVariable String criterion, Model model) throws IOException {
        SheetEntry sheet = read(id);
        return showLines(sheet, mark(sheet, criterion), List.of(), model);
    }

    private String showLines(SheetEntry sheet, MarkEntry mark, List<String> chosen, Model model) throws IOException {
        String key = mark.key().filter(LinesByHand::isFor).orElseThrow(() -> new NotFound(words.say("lines.not-for")));
        CorrectedPage page = page(sheet);
        List<Segment> evidence = sheets.assessment(sheet.id())
                .flatMap(kept -> kept.measured().measurement(key))
                .map(measurement -> measurement.evidence())
                .orElse(List.of());
        List<Segment> choices =
                LinesByHand.on(page.page()).map(lines -> lines.choices(key)).orElse(List.of());
        show(sheet, standing(sheet.id(), Optional.of(key)), model);
        model.addAttribute("mark", mark);
        model.addAttribute("asked", LinesByHand.asks(key).orElseThrow());
        model.addAttribute("lines", LineChoices.of(choices, evidence, chosen, page.page()));
        return "sheet/lines";
    }

    private CorrectedPage page(SheetEntry sheet) throws IOException {
        AssessedSheet.Read asRead = correcting.asRead(classSet(sheet), sheet);
        return correcting.page(asRead, sheet);
    }

    @PostMapping("/sheets/{id}/lines/{criterion}")
    String setLines(
            @PathVariable long id,
            @PathVariable String criterion,
            @RequestParam(name = "line", defaultValue = "") List<String> chosen,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect)
            throws IOException {
        SheetEntry sheet = read(id);
        MarkEntry mark = mark(sheet, criterion);
        CorrectedPage page = page(sheet);
        List<Segment> pieces = LineChoices.pieces(chosen).stream().map(page::toRead).toList();
        Optional<String> fault = correct(sheet, mark.key(), pieces, person);
        if (fault.isPresent()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("fault", fault.get());
            return showLines(sheet, mark, chosen, model);
        }
        redirect.addFlashAttribute("done", words.say("lines.done", mark.title()));
        return "redirect:/sheets/" + id + "#" + criterion;
    }

    @PostMapping("/sheets/{id}/lines/{criterion}/restore")
    String restoreLines(
            @PathVariable long id,
            @PathVariable String criterion,
            @Nullable Principal person,
            RedirectAttributes redirect)
            throws IOException {
        SheetEntry sheet = read(id);
        return takeBack(sheet, mark(sheet, criterion).key(), person, redirect, "#" + criterion);
    }

    private Optional<String> correct(
            SheetEntry sheet, Optional<String> key, List<Segment> places, @Nullable Principal person)
            throws IOException {
        if (places.isEmpty()) {
            return Optional.of(words.say("lines.none"));
        }
        return correcting.correct(classSet(sheet), sheet, key, places, Person.name(person));
    }

    private String takeBack(
            SheetEntry sheet,
            Optional<String> key,
            @Nullable Principal person,
            RedirectAttributes redirect,
            String anchor)
            throws IOException {
        Optional<String> fault = correcting.takeBack(classSet(sheet), sheet, key, Person.name(person));
        redirect.addFlashAttribute(fault.isPresent() ? "wrong" : "done", fault.orElse(words.say("corrected.back")));
        return "redirect:/sheets/" + sheet.id() + anchor;
    }

    private void show(SheetEntry sheet, Optional<SheetCorrection> standing, Model model) {
        model.addAttribute("sheet", sheet);
        model.addAttribute("classSet", classSet(sheet));
        model.addAttribute("standing", standing.orElse(null));
        model.addAttribute("barMm", classSet(sheet).task().sheet().referenceBarMm());
    }

    private Optional<SheetCorrection> standing(long sheetId, Optional<String> key) {
        return SheetCorrections.standing(corrections.of(sheetId)).stream()
                .filter(correction -> correction.key().equals(key))
                .findFirst();
    }

    private SheetCorrections.AsRead asRead(long id) {
        return corrections.asRead(id).orElseThrow();
    }

    private ClassSet classSet(SheetEntry sheet) {
        return classSets.find(sheet.classSetId()).orElseThrow();
    }

    private SheetEntry read(long id) {
        if (sheets.isPictureRemoved(id)) {
            throw new NotFound(words.say("lines.picture-removed"));
        }
        return sheets.find(id)
                .filter(sheet -> sheet.state() == SheetState.READ)
                .orElseThrow(() -> new NotFound("There is no sheet " + id + " that was read."));
    }

    private MarkEntry mark(SheetEntry sheet, String criterion) {
        return sheets.marks(sheet.id()).stream()
                .filter(mark -> mark.criterion().equals(criterion))
                .findFirst()
                .orElseThrow(() -> new NotFound("This sheet has no criterion " + criterion + "."));
    }
}
