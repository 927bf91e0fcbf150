package wallplate.web.today;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import wallplate.accounts.Account;
import wallplate.moderation.Moderation;
import wallplate.moderation.Moderations;
import wallplate.ownership.Share;
import wallplate.records.Standings;
import wallplate.records.Standings.Which;
import wallplate.records.Tasks;
import wallplate.web.access.Reach;
import wallplate.web.access.Visitor;

/** The first page. */
@Controller
class TodayController {

    /** The newest; the others are a link away. */
    private static final int SHOWN = 12;

    private final Standings standings;
    private final Tasks tasks;
    private final Reach reach;
    private final Moderations moderations;
    private final Visitor visitor;

    TodayController(Standings standings, Tasks tasks, Reach reach, Moderations moderations, Visitor visitor) {
        this.standings = standings;
        this.tasks = tasks;
        this.reach = reach;
        this.moderations = moderations;
        this.visitor = visitor;
    }

    @GetMapping("/")
    String today(Model model) {
        Share share = reach.share();
        model.addAttribute("setCount", standings.page(share, Which.ALL, "", 0, 1).found());
        model.addAttribute("atWork", standings.page(share, Which.AT_WORK, "", 0, SHOWN));
        model.addAttribute("toCheck", standings.page(share, Which.NEEDS_PERSON, "", 0, SHOWN));
        model.addAttribute("toRelease", standings.page(share, Which.TO_RELEASE, "", 0, SHOWN));
        model.addAttribute("taskCount", tasks.count(reach.shareOfTasks()));
        model.addAttribute("samples", samples());
        return "today/today";
    }

    /** What is given to whoever looks to be marked a second time. */
    private List<Moderation> samples() {
        return visitor.account()
                .filter(account -> !account.isDemonstration())
                .map(Account::id)
                .map(account -> moderations.givenTo(account, SHOWN))
                .orElse(List.of());
    }

    @GetMapping("/today/standing")
    String standingOnly(Model model) {
        today(model);
        return "today/today :: standing";
    }
}
