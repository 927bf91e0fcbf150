package wallplate.web.handouts;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import wallplate.handouts.FeedbackFiles;
import wallplate.handouts.PreparedFile;
import wallplate.handouts.PreparedFile.Kind;
import wallplate.handouts.PreparedFiles;
import wallplate.jobs.HandoutQueue;
import wallplate.privacy.LearnerExport;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;
import wallplate.web.access.Permissions;
import wallplate.web.page.FileName;
import wallplate.web.page.NotFound;
import wallplate.web.page.Words;

/** The feedback of a whole set, and everything about one learner: prepared in the background, then handed out at once. */
@Controller
class PreparedFilesController {

    private static final double MEGABYTE = 1_000_000;
    private static final MediaType ZIP = new MediaType("application", "zip");

    private final ClassSets classSets;
    private final Sheets sheets;
    private final LearnerExport learners;
    private final PreparedFiles files;
    private final FeedbackFiles feedback;
    private final HandoutQueue queue;
    private final ScanStore store;
    private final Permissions may;
    private final Words words;

    PreparedFilesController(
            ClassSets classSets,
            Sheets sheets,
            LearnerExport learners,
            PreparedFiles files,
            FeedbackFiles feedback,
            HandoutQueue queue,
            ScanStore store,
            Permissions may,
            Words words) {
        this.classSets = classSets;
        this.sheets = sheets;
        this.learners = learners;
        this.files = files;
        this.feedback = feedback;
        this.queue = queue;
        this.store = store;
        this.may = may;
        this.words = words;
    }

    /**
     * A kind of file and how far it is.
     *
     * @param address where it is saved
     * @param file null where none was asked for
     * @param hasChanged whether something is known to have changed since it was made
     */
    record Offer(String kind, String address, @Nullable PreparedFile file, boolean hasChanged) {

        public double megabytes() {
            return file == null ? 0 : file.sizeBytes() / MEGABYTE;
        }

        /** A file about a learner is always to be had anew: nothing tells whether it is of now. */
        public boolean canBeAskedFor() {
            return file == null
                    || file.hasFailed()
                    || file.isReady() && (hasChanged || file.kind().isAboutALearner());
        }
    }

    @GetMapping("/class-sets/{id}/feedback-files")
    String ofSet(@PathVariable long id, Locale language, Model model) {
        ClassSet classSet = classSet(id);
        String state = feedback.stateOf(classSet);
        List<Offer> offers = List.of(
                offer("/class-sets/" + id + "/feedback.pdf", Kind.PDF, files.find(id, Kind.PDF, language), state),
                offer("/class-sets/" + id + "/feedback.zip", Kind.ZIP, files.find(id, Kind.ZIP, language), state));
        model.addAttribute("reading", sheets.progress(id).isAtWork());
        model.addAttribute("area", "sets");
        model.addAttribute("mayAsk", may.send("/class-sets/{id}/feedback-files", id));
        return show("feedback", "/class-sets/" + id + "/feedback-files", "/class-sets/" + id, classSet.title(), offers, model);
    }

    @GetMapping("/learners/{id}/everything")
    String ofLearner(@PathVariable long id, Locale language, Model model) {
        learner(id);
        List<Offer> offers = List.of(offer(
                "/learners/" + id + "/everything.zip", Kind.EVERYTHING, files.find(id, Kind.EVERYTHING, language), ""));
        model.addAttribute("reading", false);
        model.addAttribute("area", "classes");
        model.addAttribute("mayAsk", may.send("/learners/{id}/everything", id));
        return show("everything", "/learners/" + id + "/everything", "/learners/" + id, "", offers, model);
    }

    private String show(
            String about, String address, String back, String subject, List<Offer> offers, Model model) {
        model.addAttribute("heading", words.say("files." + about));
        model.addAttribute("lead", words.say("files." + about + ".lead"));
        model.addAttribute("backWords", words.say("files." + about + ".back"));
        model.addAttribute("address", address);
        model.addAttribute("back", back);
        model.addAttribute("subject", subject);
        model.addAttribute("offers", offers);
        model.addAttribute(
                "preparing", offers.stream().anyMatch(offer -> offer.file() != null && offer.file().isWaiting()));
        return "handouts/files";
    }

    private static Offer offer(String address, Kind kind, Optional<PreparedFile> file, String state) {
        return new Offer(
                kind.word(),
                address,
                file.orElse(null),
                file.filter(one -> one.isReady() && !one.state().equals(state)).isPresent());
    }

    @PostMapping("/class-sets/{id}/feedback-files")
    String prepareOfSet(@PathVariable long id, @RequestParam String kind, Locale language) {
        Kind wanted = Kind.of(kind)
                .filter(one -> !one.isAboutALearner())
                .orElseThrow(() -> new NotFound("There is no file of this kind."));
        queue.prepare(classSet(id).id(), wanted, language);
        return "redirect:/class-sets/" + id + "/feedback-files";
    }

    @PostMapping("/learners/{id}/everything")
    String prepareOfLearner(@PathVariable long id, Locale language) {
        queue.prepare(learner(id), Kind.EVERYTHING, language);
        return "redirect:/learners/" + id + "/everything";
    }

    @GetMapping("/class-sets/{id}/feedback.pdf")
    ResponseEntity<InputStreamResource> pdf(@PathVariable long id, Locale language) throws IOException {
        String name = "feedback-" + FileName.of(classSet(id).title()) + ".pdf";
        return handedOut(id, Kind.PDF, language, MediaType.APPLICATION_PDF, name, "/class-sets/" + id + "/feedback-files");
    }

    @GetMapping("/class-sets/{id}/feedback.zip")
    ResponseEntity<InputStreamResource> zip(@PathVariable long id, Locale language) throws IOException {
        String name = "feedback-" + FileName.of(classSet(id).title()) + ".zip";
        return handedOut(id, Kind.ZIP, language, ZIP, name, "/class-sets/" + id + "/feedback-files");
    }

    @GetMapping("/learners/{id}/everything.zip")
    ResponseEntity<InputStreamResource> everything(@PathVariable long id, Locale language) throws IOException {
        String name = "learner-" + learner(id) + ".zip";
        return handedOut(id, Kind.EVERYTHING, language, ZIP, name, "/learners/" + id + "/everything");
    }

    /** The file as it was prepared last, or the way to the page that prepares it. */
    private ResponseEntity<InputStreamResource> handedOut(
            long subject, Kind kind, Locale language, MediaType type, String name, String page) throws IOException {
        Optional<PreparedFile> file = files.find(subject, kind, language);
        Optional<InputStream> content = content(file);
        if (content.isEmpty()) {
            return ResponseEntity.status(HttpStatus.FOUND).header(HttpHeaders.LOCATION, page).build();
        }
        ContentDisposition saved = ContentDisposition.attachment().filename(name, StandardCharsets.UTF_8).build();
        return ResponseEntity.ok()
                .header(HttpHeaders.CONTENT_DISPOSITION, saved.toString())
                .contentType(type)
                .contentLength(file.orElseThrow().sizeBytes())
                .body(new InputStreamResource(content.get()));
    }

    private Optional<InputStream> content(Optional<PreparedFile> file) throws IOException {
        Optional<String> name = file.flatMap(PreparedFile::content);
        try {
            return name.isEmpty() ? Optional.empty() : Optional.of(store.open(name.get()));
        } catch (NoSuchFileException gone) {
            return Optional.empty();
        }
    }

    private ClassSet classSet(long id) {
        return classSets.find(id).orElseThrow(() -> new NotFound("There is no class set " + id + "."));
    }

    private long learner(long id) {
        if (!learners.isThere(id)) {
            throw new NotFound("There is no learner " + id + ".");
        }
        return id;
    }
}
