package wallplate.operations;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import org.springframework.boot.test.context.TestComponent;
import wallplate.jobs.ReadingQueue;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;

/** Hands scans in as the page for it does: into the store, into the records, into the queue. */
@TestComponent
class HandIn {

    private final ClassSets classSets;
    private final ScanFiles files;
    private final Sheets sheets;
    private final ScanStore store;
    private final ReadingQueue queue;

    HandIn(ClassSets classSets, ScanFiles files, Sheets sheets, ScanStore store, ReadingQueue queue) {
        this.classSets = classSets;
        this.files = files;
        this.sheets = sheets;
        this.store = store;
        this.queue = queue;
    }

    /** A set of its own with these scans. */
    ClassSet set(String title, KeptTask task, List<byte[]> scans) throws IOException {
        ClassSet set = classSets.add(title, "class", List.of(), task, false);
        for (int number = 1; number <= scans.size(); number++) {
            scan(set, "sheet-" + number + ".jpg", scans.get(number - 1));
        }
        return set;
    }

    /** One scan more, of a single sheet. */
    void scan(ClassSet set, String name, byte[] content) throws IOException {
        ScanStore.Kept kept = store.put(new ByteArrayInputStream(content));
        ScanFileEntry file = files.add(set.id(), name, kept.name(), kept.sizeBytes()).orElseThrow();
        sheets.page(file.id(), 1);
        queue.add(file);
    }

    /** How many sheets of a set have been looked at. */
    long finished(ClassSet set) {
        return sheets.of(set.id()).stream().filter(sheet -> sheet.state().isFinished()).count();
    }
}
