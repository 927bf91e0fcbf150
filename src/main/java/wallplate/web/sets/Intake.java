package wallplate.web.sets;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.springframework.web.multipart.MultipartFile;
import wallplate.audit.AuditedEvent;
import wallplate.jobs.ReadingQueue;
import wallplate.records.ClassSet;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;
import wallplate.sheet.ScanFile;

/** Takes scan files in: each is kept first, then written down and queued to be read, in one step with its entry in the audit trail. */
@Component
class Intake {

    private final ScanStore store;
    private final ScanFiles files;
    private final Sheets sheets;
    private final ReadingQueue queue;
    private final TransactionOperations together;
    private final ApplicationEventPublisher events;

    Intake(
            ScanStore store,
            ScanFiles files,
            Sheets sheets,
            ReadingQueue queue,
            TransactionOperations together,
            ApplicationEventPublisher events) {
        this.store = store;
        this.files = files;
        this.sheets = sheets;
        this.queue = queue;
        this.together = together;
        this.events = events;
    }

    /**
     * What became of the files of one upload, by their names.
     *
     * @param same files whose content the set has already
     * @param empty files without content
     * @param wrong files that are no scans, each with its name and why
     */
    record Receipt(List<String> taken, List<String> same, List<String> empty, List<String> wrong) {

        String sentence() {
            List<String> parts = new ArrayList<>();
            if (!taken.isEmpty()) {
                parts.add(taken.size() == 1 ? "1 file was taken in and is being read." : taken.size() + " files were taken in and are being read.");
            }
            if (!same.isEmpty()) {
                parts.add("Already here, so not taken twice: " + String.join(", ", same) + ".");
            }
            if (!empty.isEmpty()) {
                parts.add("Empty, so left out: " + String.join(", ", empty) + ".");
            }
            parts.addAll(wrong);
            return parts.isEmpty() ? "No file was chosen." : String.join(" ", parts);
        }
    }

    Receipt take(ClassSet classSet, List<MultipartFile> uploaded) throws IOException {
        Receipt receipt = new Receipt(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (MultipartFile file : uploaded) {
            String name = plainName(file.getOriginalFilename());
            if (name.isEmpty() && file.isEmpty()) {
                continue;
            }
            Optional<String> refusal = file.isEmpty() ? Optional.empty() : refusal(file);
            if (file.isEmpty()) {
                receipt.empty().add(name);
            } else if (refusal.isPresent()) {
                receipt.wrong().add("Not taken, " + name + ": " + refusal.get());
            } else {
                try (InputStream content = file.getInputStream()) {
                    (take(classSet, name, content) ? receipt.taken() : receipt.same()).add(name);
                }
            }
        }
        return receipt;
    }

    private static Optional<String> refusal(MultipartFile file) throws IOException {
        try (InputStream content = file.getInputStream()) {
            return ScanFile.refusalOf(content.readNBytes(ScanFile.BYTES_TO_TELL));
        }
    }

    /** Whether it is new to the set; what the set has already is not taken twice. */
    boolean take(ClassSet classSet, String name, InputStream content) throws IOException {
        ScanStore.Kept kept = store.put(content);
        return Boolean.TRUE.equals(together.execute(step -> {
            Optional<ScanFileEntry> entry = files.add(classSet.id(), name, kept.name(), kept.sizeBytes());
            entry.ifPresent(added -> {
                sheets.page(added.id(), 1);
                queue.add(added);
                events.publishEvent(
                        new AuditedEvent("scan-taken", "/class-sets/" + classSet.id() + "/files/" + added.id()));
            });
            return entry.isPresent();
        }));
    }

    /** The file's own name without the folders that some browsers send along. */
    static String plainName(@Nullable String sent) {
        if (sent == null) {
            return "";
        }
        String name = sent.replace('\\', '/');
        return name.substring(name.lastIndexOf('/') + 1).strip();
    }
}
