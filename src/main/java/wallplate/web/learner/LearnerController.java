package wallplate.web.learner;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import wallplate.audit.AuditedEvent;
import wallplate.drafting.ConstructionGuide;
import wallplate.marking.Reasons;
import wallplate.jobs.SelfCheckQueue;
import wallplate.privacy.LeftOvers;
import wallplate.records.HomeChecks;
import wallplate.records.KeptTask;
import wallplate.records.ScanStore;
import wallplate.records.SelfCheckEntry;
import wallplate.records.SelfChecks;
import wallplate.records.Tasks;
import wallplate.report.LastTry;
import wallplate.sheet.ScanFile;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/**
 * Check my drawing: a task code, a photograph, advice.
 *
 * <p>The photograph is queued to be read before every class set and the answer leads to its result, which says how many are before it
 * until it is there. Who has the address sees the result. It is gone when the learner ends the visit, a moment after the page was left, or
 * when no page asked for it for a quarter of an hour; only what a learner wants kept for a class stays, without the picture.
 */
@Controller
class LearnerController {

    private static final String BEFORE = "was.";
    private static final int LONGEST_CODE = 12;
    private static final int SOONEST_SECONDS = 2;
    private static final int LATEST_SECONDS = 30;
    private static final int READ_IN_A_SECOND = 2;

    private final Tasks tasks;
    private final SelfCheckQueue queue;
    private final SelfChecks checks;
    private final ScanStore store;
    private final HomeChecks homeChecks;
    private final LeftOvers leftOvers;
    private final ApplicationEventPublisher events;
    private final Words words;

    LearnerController(
            Tasks tasks,
            SelfCheckQueue queue,
            SelfChecks checks,
            ScanStore store,
            HomeChecks homeChecks,
            LeftOvers leftOvers,
            ApplicationEventPublisher events,
            Words words) {
        this.tasks = tasks;
        this.queue = queue;
        this.checks = checks;
        this.store = store;
        this.homeChecks = homeChecks;
        this.leftOvers = leftOvers;
        this.events = events;
        this.words = words;
    }

    @GetMapping("/check")
    String enter(@RequestParam(required = false) @Nullable String ended, Model model) {
        if (ended != null) {
            // Said by the address, so that no session is begun for it.
            model.addAttribute("done", words.say("learner.ended"));
        }
        return "learner/enter";
    }

    @PostMapping("/check")
    String open(@RequestParam(defaultValue = "") String code, Model model, HttpServletResponse response) {
        String typed = code.replaceAll("\\s", "");
        Optional<KeptTask> kept = typed.length() <= LONGEST_CODE ? tasks.byLearnerCode(typed) : Optional.empty();
        if (kept.isPresent()) {
            return "redirect:/check/" + kept.get().learnerCode();
        }
        response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
        model.addAttribute("code", code.substring(0, Math.min(code.length(), LONGEST_CODE)));
        model.addAttribute("fault", words.say(typed.isEmpty() ? "learner.code.missing" : "learner.code.unknown"));
        return "learner/enter";
    }

    @GetMapping("/check/{code}")
    String task(@PathVariable String code, Model model) {
        model.addAttribute("kept", found(code));
        return "learner/task";
    }

    @PostMapping("/check/{code}")
    String photograph(
            @PathVariable String code,
            @RequestParam(required = false) @Nullable MultipartFile photograph,
            @RequestParam Map<String, String> fields,
            Locale language,
            Model model,
            HttpServletResponse response)
            throws IOException {
        KeptTask kept = found(code);
        model.addAttribute("kept", kept);
        if (photograph == null || photograph.isEmpty()) {
            return refuse(words.say("learner.photograph.missing"), HttpStatus.UNPROCESSABLE_CONTENT, model, response);
        }
        Optional<String> refusal;
        try (InputStream content = photograph.getInputStream()) {
            refusal = ScanFile.refusalOf(content.readNBytes(ScanFile.BYTES_TO_TELL));
        }
        if (refusal.isPresent()) {
            model.addAttribute("was", before(fields));
            return refuse(Reasons.in(language).say(refusal.get()), HttpStatus.UNPROCESSABLE_CONTENT, model, response);
        }
        Optional<String> token;
        try (InputStream content = photograph.getInputStream()) {
            token = queue.add(kept, language.toLanguageTag(), before(fields), content);
        }
        return token.isPresent()
                ? "redirect:/check/" + kept.learnerCode() + "/results/" + token.get()
                : refuse(words.say("learner.busy"), HttpStatus.SERVICE_UNAVAILABLE, model, response);
    }

    /** What came of a photograph, or how many are before it; browsers ask again by themselves. */
    @GetMapping("/check/{code}/results/{token}")
    String result(
            @PathVariable String code,
            @PathVariable String token,
            Locale language,
            Model model,
            HttpServletResponse response)
            throws IOException {
        KeptTask kept = found(code);
        SelfCheckEntry check = check(kept, token);
        checks.seen(check.id());
        model.addAttribute("kept", kept);
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noStore().getHeaderValue());
        if (!check.state().isFinished()) {
            int before = checks.waitingBefore(check.id());
            response.setHeader("Refresh", Integer.toString(lookAgainAfterSeconds(before)));
            model.addAttribute("waitingBefore", before);
            return "learner/waiting";
        }
        if (check.found().isEmpty()) {
            model.addAttribute("was", check.before());
            // The page of the photograph itself is there; what it says is that nothing could be read.
            return refuse(Reasons.in(language).say(check.reason().orElse("")), HttpStatus.OK, model, response);
        }
        return show(kept, check, token, language, model);
    }

    private SelfCheckEntry check(KeptTask kept, String token) {
        return checks.byToken(token)
                .filter(one -> one.taskId() == kept.id())
                .orElseThrow(() -> new NotFound(words.say("learner.result.gone")));
    }

    private String show(KeptTask kept, SelfCheckEntry check, String token, Locale language, Model model)
            throws IOException {
        model.addAttribute("kept", kept);
        model.addAttribute("token", token);
        model.addAttribute("keptForClass", check.kept());
        try (InputStream picture = store.open(check.screenPicture().orElseThrow())) {
            model.addAttribute(
                    "result",
                    CheckResult.of(
                            check.found().orElseThrow(),
                            kept.task(),
                            picture.readAllBytes(),
                            LastTry.read(check.before()),
                            language,
                            words));
        }
        return "learner/result";
    }

    /** Keeps what was found, without the picture, for a learner who says to belong to a class. */
    @PostMapping("/check/{code}/keep")
    String keep(
            @PathVariable String code,
            @RequestParam(defaultValue = "") String token,
            @RequestParam(defaultValue = "") String classCode,
            @RequestParam(defaultValue = "") String who,
            Locale language,
            Model model,
            HttpServletResponse response)
            throws IOException {
        KeptTask kept = found(code);
        SelfCheckEntry check = check(kept, token);
        if (check.found().isEmpty()) {
            throw new NotFound(words.say("learner.result.gone"));
        }
        Optional<Long> learner = homeChecks.learner(classCode, who);
        if (learner.isEmpty()) {
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            model.addAttribute("keepFault", words.say("learner.keep.unknown"));
            model.addAttribute("classCode", classCode);
            model.addAttribute("who", who);
            return show(kept, check, token, language, model);
        }
        if (homeChecks.keep(check, learner.get())) {
            events.publishEvent(new AuditedEvent("home-check-kept", "/learners/" + learner.get()));
        }
        return "redirect:/check/" + kept.learnerCode() + "/results/" + token;
    }

    /** The end of a visit: everything of it is gone. */
    @PostMapping("/check/{code}/end")
    String end(@PathVariable String code, @RequestParam(defaultValue = "") String token) throws IOException {
        leftOvers.clear(checks.remove(token));
        return "redirect:/check?ended=yes";
    }

    /** What a browser sends while it leaves the page: gone in a moment, unless the page comes back. */
    @PostMapping(path = "/check/{code}/end", params = "leaving")
    ResponseEntity<Void> leaving(@PathVariable String code, @RequestParam(defaultValue = "") String token) {
        checks.leaving(token);
        return ResponseEntity.noContent().build();
    }

    /** The more are before it, the later, so that many who wait do not keep the server from reading. */
    private static int lookAgainAfterSeconds(int waitingBefore) {
        return Math.min(LATEST_SECONDS, SOONEST_SECONDS + waitingBefore / READ_IN_A_SECOND);
    }

    private static String refuse(String reason, HttpStatus status, Model model, HttpServletResponse response) {
        response.setStatus(status.value());
        model.addAttribute("fault", reason);
        return "learner/task";
    }

    /** What the page before found, so that a picture that cannot be read loses nothing of the comparison. */
    private static Map<String, String> before(Map<String, String> fields) {
        Map<String, String> before = new LinkedHashMap<>();
        fields.forEach((name, value) -> {
            if (name.startsWith(BEFORE)) {
                before.put(name.substring(BEFORE.length()), value);
            }
        });
        return before;
    }

    /** How the drawing is made, step by step. */
    @GetMapping("/check/{code}/guide")
    String guide(@PathVariable String code, Model model, Locale language) {
        KeptTask kept = found(code);
        model.addAttribute("kept", kept);
        model.addAttribute("steps", ConstructionGuide.of(kept.task(), language).steps());
        model.addAttribute("area", "check");
        return "tasks/guide";
    }

    private KeptTask found(String code) {
        return Optional.of(code)
                .filter(typed -> typed.length() <= LONGEST_CODE)
                .flatMap(tasks::byLearnerCode)
                .orElseThrow(() -> new NotFound(words.say("learner.code.unknown")));
    }
}
