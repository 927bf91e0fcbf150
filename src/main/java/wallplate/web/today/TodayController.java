package wallplate.web.today;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import wallplate.records.Standings;
import wallplate.records.Standings.Which;
import wallplate.records.Tasks;

/** The first page. */
@Controller
class TodayController {

    /** The newest; the others are a link away. */
    private static final int SHOWN = 12;

    private final Standings standings;
    private final Tasks tasks;

    TodayController(Standings standings, Tasks tasks) {
        this.standings = standings;
        this.tasks = tasks;
    }

    @GetMapping("/")
    String today(Model model) {
        model.addAttribute("setCount", standings.page(Which.ALL, "", 0, 1).found());
        model.addAttribute("atWork", standings.page(Which.AT_WORK, "", 0, SHOWN));
        model.addAttribute("toCheck", standings.page(Which.NEEDS_PERSON, "", 0, SHOWN));
        model.addAttribute("toRelease", standings.page(Which.TO_RELEASE, "", 0, SHOWN));
        model.addAttribute("taskCount", tasks.count());
        return "today/today";
    }

    @GetMapping("/today/standing")
    String standingOnly(Model model) {
        today(model);
        return "today/today :: standing";
    }
}
