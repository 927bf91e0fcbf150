package wallplate.jobs;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import wallplate.records.ScanFiles;

/** Queues files again whose job was lost, by a crash between keeping a file and queuing it. */
@Component
class LostFiles {

    private static final Logger LOG = LoggerFactory.getLogger(LostFiles.class);

    private final ScanFiles files;
    private final QueueTable table;
    private final ReadingQueue queue;

    LostFiles(ScanFiles files, QueueTable table, ReadingQueue queue) {
        this.files = files;
        this.table = table;
        this.queue = queue;
    }

    void queueAgain() {
        for (long fileId : table.lostFiles()) {
            LOG.info("file {} has no job: it is queued again", fileId);
            files.find(fileId).ifPresent(queue::add);
        }
    }
}
