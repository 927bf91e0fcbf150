package wallplate.web.moderation;

import jakarta.servlet.http.HttpServletResponse;
import java.security.Principal;
import java.security.SecureRandom;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import wallplate.accounts.Account;
import wallplate.audit.AuditedEvent;
import wallplate.moderation.AgreementReport;
import wallplate.moderation.DrawOutcome;
import wallplate.moderation.Moderating;
import wallplate.moderation.Moderation;
import wallplate.moderation.Moderations;
import wallplate.ownership.Belongings;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.web.page.NotFound;
import wallplate.web.page.Person;

/** Samples of a class set: drawing them, how far they have come, the comparison and the decision. */
@Controller
class ModerationController {

    private static final int SEEDS = 1_000_000;
    private static final String NOBODY_CHOSEN = "Choose one of those who may mark samples again.";

    private final Moderating moderating;
    private final Moderations moderations;
    private final ClassSets classSets;
    private final SecondMarkers secondMarkers;
    private final Belongings belongings;
    private final ApplicationEventPublisher events;
    private final SecureRandom random = new SecureRandom();

    ModerationController(
            Moderating moderating,
            Moderations moderations,
            ClassSets classSets,
            SecondMarkers secondMarkers,
            Belongings belongings,
            ApplicationEventPublisher events) {
        this.moderating = moderating;
        this.moderations = moderations;
        this.classSets = classSets;
        this.secondMarkers = secondMarkers;
        this.belongings = belongings;
        this.events = events;
    }

    @GetMapping("/class-sets/{id}/moderation")
    String ofSet(@PathVariable long id, Model model) {
        return ofSet(classSet(id), DrawForm.proposed(random.nextInt(SEEDS)), Map.of(), model);
    }

    private String ofSet(ClassSet classSet, DrawForm form, Map<String, String> faults, Model model) {
        model.addAttribute("classSet", classSet);
        model.addAttribute("moderations", moderations.of(classSet.id()));
        model.addAttribute("form", form);
        model.addAttribute("faults", faults);
        model.addAttribute("haveAccounts", secondMarkers.haveAccounts());
        model.addAttribute("markers", secondMarkers.of(classSet.id()));
        return "moderation/of-set";
    }

    @PostMapping("/class-sets/{id}/moderation")
    String draw(
            @PathVariable long id,
            DrawForm form,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response) {
        ClassSet classSet = classSet(id);
        Map<String, String> faults = new LinkedHashMap<>(form.faults());
        Optional<Account> marker = secondMarkers.named(id, form.name());
        if (secondMarkers.haveAccounts() && marker.isEmpty()) {
            faults.put("moderator", NOBODY_CHOSEN);
        }
        if (!faults.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return ofSet(classSet, form, faults, model);
        }
        DrawOutcome outcome = moderating.draw(id, form.rule(), form.name(), Person.name(person));
        if (outcome instanceof DrawOutcome.NotDrawn notDrawn) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return ofSet(classSet, form, Map.of("sample", notDrawn.because()), model);
        }
        long drawn = ((DrawOutcome.Drawn) outcome).moderation().id();
        marker.ifPresent(account -> give(drawn, account));
        return "redirect:/moderations/" + drawn;
    }

    private void give(long moderationId, Account account) {
        belongings.giveSample(moderationId, account.id());
        events.publishEvent(new AuditedEvent("sample-given " + account.id(), "/moderations/" + moderationId));
    }

    /** Gives a sample on which nobody has begun to another second marker. */
    @PostMapping("/moderations/{id}/moderator")
    String giveToAnother(
            @PathVariable long id,
            @RequestParam(defaultValue = "") String moderator,
            RedirectAttributes redirect) {
        Moderation moderation = found(id);
        Optional<Account> marker = secondMarkers.named(moderation.classSetId(), moderator);
        if (moderation.marked() > 0) {
            redirect.addFlashAttribute(
                    "wrong", "Some sheets are marked already: draw another sample, so that one person marks all of it.");
        } else if (marker.isEmpty()) {
            redirect.addFlashAttribute("wrong", NOBODY_CHOSEN);
        } else {
            give(id, marker.get());
            redirect.addFlashAttribute("done", "The sample is given to " + marker.get().name() + ".");
        }
        return "redirect:/moderations/" + id;
    }

    @GetMapping("/moderations/{id}")
    String one(@PathVariable long id, Model model) {
        return show(found(id), DecisionForm.empty(), model);
    }

    private String show(Moderation moderation, DecisionForm form, Model model) {
        Optional<AgreementReport> report = moderating.report(moderation.id());
        model.addAttribute("moderation", moderation);
        model.addAttribute("classSet", classSet(moderation.classSetId()));
        model.addAttribute("report", report.orElse(null));
        model.addAttribute("plot", report.flatMap(DifferencePlot::of).orElse(null));
        model.addAttribute("form", form);
        model.addAttribute("markers", secondMarkers.of(moderation.classSetId()));
        return "moderation/one";
    }

    @PostMapping("/moderations/{id}/hand-in")
    String handIn(@PathVariable long id, RedirectAttributes redirect) {
        found(id);
        if (moderating.handIn(id)) {
            redirect.addFlashAttribute("done", "The second marks are handed in. They stand from now on.");
        } else {
            redirect.addFlashAttribute("wrong", "Some sheets have no second marks yet. Nothing was handed in.");
        }
        return "redirect:/moderations/" + id;
    }

    @PostMapping("/moderations/{id}/decision")
    String decide(
            @PathVariable long id,
            DecisionForm form,
            @RequestParam(defaultValue = "0") int seen,
            @Nullable Principal person,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        Moderation moderation = found(id);
        Optional<AgreementReport> report = moderating.report(id);
        Optional<String> fault = report.isEmpty()
                ? Optional.of("The second marks are not handed in yet: there is nothing to decide on.")
                : form.fault(report.get());
        if (fault.isPresent()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("fault", fault.get());
            return show(moderation, form, model);
        }
        moderating
                .decide(id, form.chosen(report.orElseThrow()), form.reasonText(), Person.name(person), seen)
                .ifPresentOrElse(
                        entry -> redirect.addFlashAttribute("done", "Decided. " + entry.outcome()),
                        () -> redirect.addFlashAttribute(
                                "wrong",
                                "A decision was made since you opened this page. Nothing was added to it: look at what was decided."));
        return "redirect:/moderations/" + id;
    }

    private Moderation found(long id) {
        return moderations.find(id).orElseThrow(() -> new NotFound("There is no moderation " + id + "."));
    }

    private ClassSet classSet(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }
}
