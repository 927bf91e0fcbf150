package wallplate.jobs;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.core.io.support.ResourcePatternResolver;
import org.springframework.stereotype.Component;
import wallplate.records.ClassList;
import wallplate.records.ClassListEntry;
import wallplate.records.ClassSet;
import wallplate.records.ClassSets;
import wallplate.records.KeptTask;
import wallplate.records.ScanFileEntry;
import wallplate.records.ScanFiles;
import wallplate.records.ScanStore;
import wallplate.records.Sheets;
import wallplate.records.Tasks;
import wallplate.task.DrawingTask;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/**
 * Lays the invented class set into an empty database at the first start, so that there is something to look at.
 *
 * <p>Its task, class list and sheets lie in the program itself. They go the same way as everything that is handed in.
 */
@Component
class Demonstration {

    private static final Logger LOG = LoggerFactory.getLogger(Demonstration.class);
    private static final List<String> SCAN_ENDINGS = List.of(".png", ".jpg", ".jpeg", ".tif", ".tiff", ".pdf");
    private static final String CLASS_NAME = "10B (invented)";

    private final Tasks tasks;
    private final ClassSets classSets;
    private final ScanFiles files;
    private final Sheets sheets;
    private final ScanStore store;
    private final ReadingQueue queue;
    private final boolean enabled;
    private final String folder;
    private final ResourcePatternResolver resources = new PathMatchingResourcePatternResolver();

    Demonstration(
            Tasks tasks,
            ClassSets classSets,
            ScanFiles files,
            Sheets sheets,
            ScanStore store,
            ReadingQueue queue,
            @Value("${wallplate.demonstration.enabled}") boolean enabled,
            @Value("${wallplate.demonstration.folder}") String folder) {
        this.tasks = tasks;
        this.classSets = classSets;
        this.files = files;
        this.sheets = sheets;
        this.store = store;
        this.queue = queue;
        this.enabled = enabled;
        this.folder = folder;
    }

    @EventListener(ApplicationReadyEvent.class)
    void layOutWhereNothingIs() throws IOException {
        if (!enabled || !classSets.all().isEmpty() || !tasks.all().isEmpty()) {
            return;
        }
        Optional<DrawingTask> task = task();
        if (task.isEmpty()) {
            LOG.info("no demonstration sheets are packed into this program: it starts empty");
            return;
        }
        KeptTask kept = tasks.add(task.get());
        ClassSet classSet = classSets.add(
                "The demonstration: " + task.get().title(), CLASS_NAME, classList(), kept, true);
        for (Resource scan : scans()) {
            take(classSet, scan);
        }
    }

    private void take(ClassSet classSet, Resource scan) throws IOException {
        ScanStore.Kept kept;
        try (InputStream content = scan.getInputStream()) {
            kept = store.put(content);
        }
        String name = Optional.ofNullable(scan.getFilename()).orElse("scan");
        Optional<ScanFileEntry> file = files.add(classSet.id(), name, kept.name(), kept.sizeBytes());
        file.ifPresent(added -> {
            sheets.page(added.id(), 1);
            queue.add(added);
        });
    }

    private Optional<DrawingTask> task() throws IOException {
        Optional<String> yaml = text("task.yml");
        if (yaml.isEmpty()) {
            return Optional.empty();
        }
        TaskReading reading = TaskFile.read(yaml.get());
        if (reading instanceof TaskReading.Accepted accepted) {
            return Optional.of(accepted.task());
        }
        throw new IllegalStateException("the demonstration's task is not accepted: " + reading);
    }

    private List<ClassListEntry> classList() throws IOException {
        return text("class-list.csv").map(ClassList::read).orElse(List.of());
    }

    private Optional<String> text(String name) throws IOException {
        Resource resource = resources.getResource("classpath:" + folder + "/" + name);
        return resource.exists()
                ? Optional.of(resource.getContentAsString(StandardCharsets.UTF_8))
                : Optional.empty();
    }

    private List<Resource> scans() throws IOException {
        return Arrays.stream(resources.getResources("classpath*:" + folder + "/*"))
                .filter(resource -> isScan(resource.getFilename()))
                .sorted(Comparator.comparing(Resource::getFilename, Comparator.nullsFirst(Comparator.naturalOrder())))
                .toList();
    }

    private static boolean isScan(@Nullable String name) {
        return name != null && SCAN_ENDINGS.stream().anyMatch(name.toLowerCase(Locale.ROOT)::endsWith);
    }
}
