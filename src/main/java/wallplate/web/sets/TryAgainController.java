package wallplate.web.sets;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.jobs.ReadingQueue;
import wallplate.records.ClassSets;
import wallplate.records.SheetEntry;
import wallplate.records.Sheets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** Has sheets read once more that were set aside. */
@Controller
class TryAgainController {

    private final Sheets sheets;
    private final ClassSets classSets;
    private final ReadingQueue queue;
    private final Words words;

    TryAgainController(Sheets sheets, ClassSets classSets, ReadingQueue queue, Words words) {
        this.sheets = sheets;
        this.classSets = classSets;
        this.queue = queue;
        this.words = words;
    }

    @PostMapping("/sheets/{id}/try-again")
    String one(@PathVariable long id, RedirectAttributes redirect) {
        SheetEntry sheet = sheets.find(id).orElseThrow(() -> new NotFound(words.say("sheet.gone", id)));
        say(queue.tryAgain(sheet.id()) ? 1 : 0, redirect);
        return "redirect:/class-sets/" + sheet.classSetId();
    }

    @PostMapping("/class-sets/{id}/try-again")
    String all(@PathVariable long id, RedirectAttributes redirect) {
        long classSetId = classSets.find(id).orElseThrow(() -> new NotFound(words.say("set.gone", id))).id();
        say(queue.tryAllAgain(classSetId), redirect);
        return "redirect:/class-sets/" + classSetId;
    }

    private void say(int sheets, RedirectAttributes redirect) {
        redirect.addFlashAttribute("done", words.say("try-again.done", sheets));
    }
}
