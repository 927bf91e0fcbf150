package wallplate.web.sets;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.multipart.MultipartFile;
import wallplate.jobs.ReadingQueue;
import wallplate.records.ClassSet;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;

/** Takes scan files in: each is kept first, then written down, then queued to be read. */
@Component
class Intake {

    private final ScanStore store;
    private final ScanFiles files;
    private final Sheets sheets;
    private final ReadingQueue queue;

    Intake(ScanStore store, ScanFiles files, Sheets sheets, ReadingQueue queue) {
        this.store = store;
        this.files = files;
        this.sheets = sheets;
        this.queue = queue;
    }

    /**
     * What became of the files of one upload, by their names.
     *
     * @param same files whose content the set has already
     * @param empty files without content
     */
    record Receipt(List<String> taken, List<String> same, List<String> empty) {

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
            return parts.isEmpty() ? "No file was chosen." : String.join(" ", parts);
        }
    }

    Receipt take(ClassSet classSet, List<MultipartFile> uploaded) throws IOException {
        Receipt receipt = new Receipt(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (MultipartFile file : uploaded) {
            String name = plainName(file.getOriginalFilename());
            if (name.isEmpty() && file.isEmpty()) {
                continue;
            }
            if (file.isEmpty()) {
                receipt.empty().add(name);
            } else if (take(classSet, name, file)) {
                receipt.taken().add(name);
            } else {
                receipt.same().add(name);
            }
        }
        return receipt;
    }

    private boolean take(ClassSet classSet, String name, MultipartFile file) throws IOException {
        ScanStore.Kept kept;
        try (InputStream content = file.getInputStream()) {
            kept = store.put(content);
        }
        Optional<ScanFileEntry> entry = files.add(classSet.id(), name, kept.name(), kept.sizeBytes());
        entry.ifPresent(added -> {
            sheets.page(added.id(), 1);
            queue.add(added);
        });
        return entry.isPresent();
    }

    /** The file's own name without the folders that some browsers send along. */
    private static String plainName(@Nullable String sent) {
        if (sent == null) {
            return "";
        }
        String name = sent.replace('\\', '/');
        return name.substring(name.lastIndexOf('/') + 1).strip();
    }
}
