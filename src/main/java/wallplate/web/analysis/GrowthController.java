package wallplate.web.analysis;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import wallplate.analysis.Growth;
import wallplate.records.Histories;
import wallplate.records.LearnerHistory;
import wallplate.records.Sheets;
import wallplate.web.access.Reach;
import wallplate.web.page.NotFound;

/** How one learner grows over tasks. */
@Controller
class GrowthController {

    private final Histories histories;
    private final Sheets sheets;
    private final Reach reach;

    GrowthController(Histories histories, Sheets sheets, Reach reach) {
        this.histories = histories;
        this.sheets = sheets;
        this.reach = reach;
    }

    @GetMapping("/learners/{id}/growth")
    String growth(@PathVariable long id, Model model) {
        LearnerHistory history = histories.of(id, reach.share()).orElseThrow(() -> new NotFound("There is no learner " + id + "."));
        List<Growth.Sitting> sittings = history.entries().stream()
                .map(entry -> new Growth.Sitting(
                        entry,
                        sheets.marks(entry.sheet().id()),
                        sheets.of(entry.classSet().id())))
                .toList();
        Growth growth = Growth.of(sittings);
        model.addAttribute("history", history);
        model.addAttribute("growth", growth);
        model.addAttribute("plot", GrowthPlot.of(growth).orElse(null));
        return "analysis/growth";
    }
}
