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
    private final KeptLines lines;
    private final Words words;

    ReadingCorrectionController(
            Sheets sheets,
            ClassSets classSets,
            SheetCorrections corrections,
            SheetCorrecting correcting,
            KeptLines lines,
            Words words) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.corrections = corrections;
        this.correcting = correcting;
        this.lines = lines;
        this.words = words;
    }

    @GetMapping("/sheets/{id}/scale")
    String scale(@PathVariable long id, Model model) {
        SheetEntry sheet = withLevelPage(id);
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
        SheetEntry sheet = withLevelPage(id);
        SheetCorrections.AsRead asRead = asRead(id);
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
        redirect.addFlashAttribute(
                "done",
                asRead.refused().isPresent()
                        ? words.say("scale.rescued")
                        : words.say(
                                "scale.done",
                                words.tenth(percentLarger(asRead.assessment().page(), now))));
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

    /**
     * The page of a criterion's lines.
     *
     * @param wait whether to wait for the lines where they are not found yet, for browsers that do not fetch them later
     */
    @GetMapping("/sheets/{id}/lines/{criterion}")
    String lines(
            @PathVariable long id,
            @PathVariable String criterion,
            @RequestParam(defaultValue = "false") boolean wait,
            Model model)
            throws IOException {
        SheetEntry sheet = read(id);
        MarkEntry mark = mark(sheet, criterion);
        String key = lineKey(mark);
        if (wait || lines.ready(sheet, key).isPresent()) {
            return showLines(sheet, mark, List.of(), model);
        }
        showAround(sheet, mark, model);
        return "sheet/lines";
    }

    /** The lines alone, for a page that was shown before they were found. */
    @GetMapping("/sheets/{id}/lines/{criterion}/choices")
    String choices(@PathVariable long id, @PathVariable String criterion, Model model) throws IOException {
        SheetEntry sheet = read(id);
        showLines(sheet, mark(sheet, criterion), List.of(), model);
        return "sheet/lines :: chooser";
    }

    private String showLines(SheetEntry sheet, MarkEntry mark, List<String> chosen, Model model) throws IOException {
        String key = lineKey(mark);
        List<Segment> evidence = sheets.assessment(sheet.id())
                .flatMap(kept -> kept.measured().measurement(key))
                .map(measurement -> measurement.evidence())
                .orElse(List.of());
        showAround(sheet, mark, model);
        model.addAttribute("lines", LineChoices.of(lines.of(classSet(sheet), sheet, key), evidence, chosen));
        return "sheet/lines";
    }

    private String lineKey(MarkEntry mark) {
        return mark.key().filter(LinesByHand::isFor).orElseThrow(() -> new NotFound(words.say("lines.not-for")));
    }

    private void showAround(SheetEntry sheet, MarkEntry mark, Model model) {
        String key = lineKey(mark);
        show(sheet, standing(sheet.id(), Optional.of(key)), model);
        model.addAttribute("mark", mark);
        model.addAttribute("asked", LinesByHand.asks(key).orElseThrow());
        model.addAttribute("most", LinesByHand.most(key));
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

    /** A sheet that was read, or one that was refused for want of a scale alone. */
    private SheetEntry withLevelPage(long id) {
        refuseWithoutPicture(id);
        return sheets.find(id)
                .filter(sheet -> corrections.asReadPicture(sheet.id()).isPresent())
                .orElseThrow(() -> new NotFound("There is no sheet " + id + " whose bar can be shown."));
    }

    private SheetEntry read(long id) {
        refuseWithoutPicture(id);
        return sheets.find(id)
                .filter(sheet -> sheet.state() == SheetState.READ)
                .orElseThrow(() -> new NotFound("There is no sheet " + id + " that was read."));
    }

    private void refuseWithoutPicture(long id) {
        if (sheets.isPictureRemoved(id)) {
            throw new NotFound(words.say("lines.picture-removed"));
        }
    }

    private MarkEntry mark(SheetEntry sheet, String criterion) {
        return sheets.marks(sheet.id()).stream()
                .filter(mark -> mark.criterion().equals(criterion))
                .findFirst()
                .orElseThrow(() -> new NotFound("This sheet has no criterion " + criterion + "."));
    }
}
