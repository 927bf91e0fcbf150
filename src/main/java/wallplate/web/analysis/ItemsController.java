package wallplate.web.analysis;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import wallplate.analysis.ItemRemark;
import wallplate.analysis.SetItems;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Sheets;
import wallplate.statistics.ItemAnalysis;
import wallplate.statistics.ItemFigures;
import wallplate.web.page.NotFound;

/** Item analysis of a class set: which criteria are hard, and which tell strong sheets from weak ones. */
@Controller
class ItemsController {

    private final ClassSets classSets;
    private final Sheets sheets;

    ItemsController(ClassSets classSets, Sheets sheets) {
        this.classSets = classSets;
        this.sheets = sheets;
    }

    /** One row of the table. */
    record Row(ItemFigures figures, List<ItemRemark> remarks) {}

    @GetMapping("/class-sets/{id}/items")
    String items(@PathVariable long id, Model model) {
        ClassSet classSet = classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
        ItemAnalysis analysis = SetItems.of(sheets.marksOfSet(id));
        model.addAttribute("classSet", classSet);
        model.addAttribute("analysis", analysis);
        model.addAttribute(
                "rows",
                analysis.items().stream()
                        .map(figures -> new Row(figures, ItemRemark.on(figures)))
                        .toList());
        model.addAttribute("plot", ItemPlot.of(analysis).orElse(null));
        return "analysis/items";
    }
}
