package wallplate.jobs;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Component;
import wallplate.assessment.AssessedSheet;
import wallplate.assessment.StageTimes;
import wallplate.marking.MarkedSheet;

/** What can be watched about the reading: how much, how fast, how much waits and how much is left to a person. */
@Component
class ReadingMetrics implements StageTimes {

    private final MeterRegistry registry;

    ReadingMetrics(MeterRegistry registry, QueueTable table, Clock clock) {
        this.registry = registry;
        for (String kind : List.of(ReadingQueue.READ_FILE.getTaskName(), ReadingQueue.READ_SHEET.getTaskName())) {
            Gauge.builder("wallplate.queue.jobs", table, queue -> queue.waiting(kind).jobs())
                    .description("Jobs that are due and not taken")
                    .tag("kind", kind)
                    .register(registry);
            Gauge.builder("wallplate.queue.age", table, queue -> queue.waiting(kind).age(clock.instant()).toMillis() / 1e3)
                    .description("How long the oldest of them has been due")
                    .baseUnit("seconds")
                    .tag("kind", kind)
                    .register(registry);
        }
    }

    @Override
    public void took(Stage stage, Duration time) {
        took(stage.name().toLowerCase(Locale.ROOT), time);
    }

    /** What it takes to get a page's picture, and to keep what it gave. */
    void took(String stage, Duration time) {
        Timer.builder("wallplate.stage")
                .description("Time that one sheet spends in a stage")
                .tag("stage", stage)
                .register(registry)
                .record(time);
    }

    void finished(AssessedSheet sheet) {
        if (sheet instanceof AssessedSheet.Read read) {
            MarkedSheet marked = read.marked();
            sheets("read").increment();
            criteria("undecided").increment(marked.undecided());
            criteria("decided").increment(marked.marks().size() - marked.undecided());
        } else {
            sheets("unreadable").increment();
        }
    }

    void setAside() {
        sheets("set-aside").increment();
    }

    private Counter sheets(String outcome) {
        return Counter.builder("wallplate.sheets")
                .description("Sheets whose reading came to an end")
                .tag("outcome", outcome)
                .register(registry);
    }

    private Counter criteria(String outcome) {
        return Counter.builder("wallplate.criteria")
                .description("Criteria on sheets that were read: decided, or left to a person")
                .tag("outcome", outcome)
                .register(registry);
    }
}
