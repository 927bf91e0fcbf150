package wallplate.privacy;

import java.io.IOException;
import java.util.List;
import java.util.Objects;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import wallplate.audit.AuditedEvent;
import wallplate.privacy.PersonalRecords.PersonalSheet;
import wallplate.privacy.PersonalRecords.Stay;

/** Erases one learner: what leads to the person goes, what the figures of sets are made of stays. */
@Service
public class Erasing {

    private final PersonalRecords records;
    private final BlankPages blank;
    private final LeftOvers leftOvers;
    private final TransactionOperations together;
    private final ApplicationEventPublisher events;

    Erasing(
            PersonalRecords records,
            BlankPages blank,
            LeftOvers leftOvers,
            TransactionOperations together,
            ApplicationEventPublisher events) {
        this.records = records;
        this.blank = blank;
        this.leftOvers = leftOvers;
        this.together = together;
        this.events = events;
    }

    /**
     * What erasing would touch.
     *
     * @param sharedScans scan files that hold sheets of others too: they go as a whole; pictures and marks of the others stay
     */
    public record Plan(List<Stay> stays, int sheets, int scans, int sharedScans, int markSheetLines) {}

    /** Changes nothing; without stays where there is no such learner. */
    public Plan plan(long learnerId) {
        List<Stay> stays = records.stays(learnerId);
        List<PersonalSheet> sheets = records.sheets(stays);
        return new Plan(
                stays,
                sheets.size(),
                (int) sheets.stream().filter(PersonalSheet::hasScan).map(PersonalSheet::fileId).distinct().count(),
                (int) sheets.stream()
                        .filter(sheet -> sheet.hasScan() && sheet.otherSheets() > 0)
                        .map(PersonalSheet::fileId)
                        .distinct()
                        .count(),
                records.lines(stays).size());
    }

    /** Erases the learner; contents are deleted once the records have let go of them for good. */
    public void erase(long learnerId) {
        together.executeWithoutResult(step -> {
            List<Stay> stays = records.stays(learnerId);
            List<PersonalSheet> sheets = records.sheets(stays);
            List<String> names = records.erase(stays, sheets, blank);
            events.publishEvent(
                    new AuditedEvent("learner-erased %d".formatted(sheets.size()), "/learners/" + learnerId));
            TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
                @Override
                public void afterCommit() {
                    clear(names);
                }
            });
        });
    }

    /** Where the store does not answer now, its sweep clears them out later. */
    private void clear(List<String> names) {
        try {
            leftOvers.clear(names.stream().filter(Objects::nonNull).toList());
        } catch (IOException | java.io.UncheckedIOException unreachable) {
            org.slf4j.LoggerFactory.getLogger(Erasing.class)
                    .warn("contents of an erased learner are left to the sweep of the scan store", unreachable);
        }
    }
}
