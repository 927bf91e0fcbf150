package wallplate.jobs;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.Assessor;
import wallplate.privacy.LeftOvers;
import wallplate.records.KeptAssessment;
import wallplate.records.KeptTask;
import wallplate.records.ScanStore;
import wallplate.records.SelfCheckEntry;
import wallplate.records.SelfChecks;
import wallplate.records.Tasks;
import wallplate.report.PagePicture;
import wallplate.sheet.ScanPages;

/** Reads a learner's photograph; the photograph is deleted as soon as it was read, and what was found when the visit is over. */
@Component
class SelfCheckReading {

    private static final Logger LOG = LoggerFactory.getLogger(SelfCheckReading.class);

    /** A photograph that has been begun this often without coming to an end is given up. */
    private static final int MOST_ATTEMPTS = 2;

    /** A visit is over when no page has asked for its result for that long. */
    private static final Duration AWAY_FOR = Duration.ofMinutes(15);

    /** A page that was left may only have been loaded again. */
    private static final Duration LEFT_FOR = Duration.ofMinutes(1);

    /** In place of the file's own name, which may hold the learner's. */
    private static final String NAME = "photograph";

    private static final String SEVERAL_PAGES =
            "%d pages were sent: the first one is read. Send the others one at a time.";

    private final SelfChecks checks;
    private final Tasks tasks;
    private final ScanStore store;
    private final LeftOvers leftOvers;
    private final Clock clock;

    SelfCheckReading(SelfChecks checks, Tasks tasks, ScanStore store, LeftOvers leftOvers, Clock clock) {
        this.checks = checks;
        this.tasks = tasks;
        this.store = store;
        this.leftOvers = leftOvers;
        this.clock = clock;
    }

    /**
     * Does nothing where it was read or is gone.
     *
     * @throws IOException where the store did not give or take what was asked; it waits again
     */
    void read(long id) throws IOException {
        int attempt = checks.begin(id);
        if (attempt == 0) {
            return;
        }
        if (attempt > MOST_ATTEMPTS) {
            giveUp(id, "Reading this photograph stopped the program twice.");
            return;
        }
        boolean ended = false;
        try {
            SelfCheckEntry check = checks.find(id).orElseThrow();
            read(check, tasks.find(check.taskId()).orElseThrow());
            leftOvers.clear(check.content().stream().toList());
            ended = true;
        } finally {
            if (!ended) {
                checks.handBack(id);
            }
        }
    }

    private void read(SelfCheckEntry check, KeptTask task) throws IOException {
        long began = System.nanoTime();
        Path copy = java.nio.file.Files.createTempDirectory("wallplate-check-").resolve(NAME);
        AssessedSheet assessed;
        int pages;
        try {
            store.copyTo(check.content().orElseThrow(), copy);
            assessed = new Assessor(Locale.forLanguageTag(check.language()))
                    .assess(ScanPages.page(NAME, copy, 1), task.task());
            pages = ScanPages.count(copy);
        } finally {
            org.springframework.util.FileSystemUtils.deleteRecursively(copy.getParent());
        }
        if (assessed instanceof AssessedSheet.Read sheet) {
            byte[] screen = PagePicture.forScreen(sheet.levelPage().ink());
            String picture = store.put(new ByteArrayInputStream(screen)).name();
            if (!checks.keep(check.id(), found(sheet, pages), picture)) {
                leftOvers.clear(List.of(picture));
            }
        } else if (assessed instanceof AssessedSheet.Unreadable unreadable) {
            checks.refuse(check.id(), unreadable.reason());
        }
        LOG.info("self-check {} was read in {} ms", check.id(), Duration.ofNanos(System.nanoTime() - began).toMillis());
    }

    private static KeptAssessment found(AssessedSheet.Read sheet, int pages) {
        KeptAssessment found = KeptAssessment.of(sheet);
        return pages == 1
                ? found
                : new KeptAssessment(
                        found.page().withWarning(SEVERAL_PAGES.formatted(pages)), found.measured(), found.marked());
    }

    void giveUp(long id, String reason) {
        Optional<String> content = checks.find(id).flatMap(SelfCheckEntry::content);
        checks.refuse(id, reason);
        try {
            leftOvers.clear(content.stream().toList());
        } catch (IOException unreachable) {
            LOG.warn("the photograph of self-check {} is left to the sweep of the scan store", id, unreachable);
        }
    }

    /** Takes away what is left of visits that are over. */
    void forget() throws IOException {
        Instant now = clock.instant();
        leftOvers.clear(checks.removeOver(now.minus(AWAY_FOR), now.minus(LEFT_FOR)));
    }
}
