package wallplate.web.feedback;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Map;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.FeedbackCodes;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.PublicAddress;

/**
 * The list of codes that a teacher hands out.
 *
 * <p>The answer to making codes is the list at once and no redirect, because only their hashes are kept.
 */
@Controller
class CodesController {

    private final FeedbackCodes codes;
    private final Sheets sheets;
    private final ClassSets classSets;
    private final PublicAddress address;

    CodesController(FeedbackCodes codes, Sheets sheets, ClassSets classSets, PublicAddress address) {
        this.codes = codes;
        this.sheets = sheets;
        this.classSets = classSets;
        this.address = address;
    }

    /** A code and whose it is. */
    record Slip(SheetEntry sheet, String code) {}

    @GetMapping("/class-sets/{id}/feedback-codes")
    String codes(@PathVariable long id, Model model) {
        return show(found(id), List.of(), model);
    }

    @PostMapping("/class-sets/{id}/feedback-codes")
    String make(@PathVariable long id, Model model, HttpServletResponse response) {
        ClassSet classSet = found(id);
        Map<Long, String> made = codes.make(id);
        List<Slip> slips = sheets.of(id).stream()
                .filter(sheet -> made.containsKey(sheet.id()))
                .map(sheet -> new Slip(sheet, made.get(sheet.id())))
                .toList();
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        return show(classSet, slips, model);
    }

    private String show(ClassSet classSet, List<Slip> slips, Model model) {
        model.addAttribute("classSet", classSet);
        model.addAttribute("slips", slips);
        model.addAttribute("address", address.root());
        model.addAttribute("count", codes.count(classSet.id()));
        return "feedback/codes";
    }

    private ClassSet found(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
