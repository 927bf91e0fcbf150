package wallplate.web.today;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.Progress;
import wallplate.records.Sheets;
import wallplate.records.Tasks;

/** The first page. */
@Controller
class TodayController {

    private static final Progress NOTHING_YET = Progress.of(List.of());

    private final ClassSets classSets;
    private final Sheets sheets;
    private final Tasks tasks;

    TodayController(ClassSets classSets, Sheets sheets, Tasks tasks) {
        this.classSets = classSets;
        this.sheets = sheets;
        this.tasks = tasks;
    }

    /** A class set with how far it has come. */
    record Standing(ClassSet classSet, Progress progress) {

        /** Read, and looked at where a person had to. */
        boolean isReady() {
            return progress.sheets() > 0 && !progress.isAtWork() && progress.needsPerson() == 0;
        }
    }

    @GetMapping("/")
    String today(Model model) {
        List<Standing> standing = standing();
        model.addAttribute("standing", standing);
        model.addAttribute("toCheck", standing.stream().filter(set -> set.progress().needsPerson() > 0).toList());
        model.addAttribute("atWork", standing.stream().filter(set -> set.progress().isAtWork()).toList());
        model.addAttribute(
                "toRelease",
                standing.stream()
                        .filter(set -> set.isReady() && set.classSet().releasedAt().isEmpty())
                        .toList());
        model.addAttribute("taskCount", tasks.all().size());
        return "today/today";
    }

    @GetMapping("/today/standing")
    String standingOnly(Model model) {
        today(model);
        return "today/today :: standing";
    }

    private List<Standing> standing() {
        Map<Long, Progress> progress = sheets.progressOfAll();
        return classSets.all().stream()
                .map(classSet -> new Standing(classSet, progress.getOrDefault(classSet.id(), NOTHING_YET)))
                .toList();
    }
}
