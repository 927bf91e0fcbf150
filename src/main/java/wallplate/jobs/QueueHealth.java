package wallplate.jobs;

import java.time.Clock;
import java.time.Duration;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Says that the queue is late where its oldest sheet has been waiting too long: there are too few workers, or none. */
@Component("queue")
class QueueHealth implements HealthIndicator {

    private final QueueTable table;
    private final Clock clock;
    private final Duration lateAfter;

    QueueHealth(QueueTable table, Clock clock, @Value("${wallplate.queue.late-after}") Duration lateAfter) {
        this.table = table;
        this.clock = clock;
        this.lateAfter = lateAfter;
    }

    @Override
    public Health health() {
        QueueTable.Waiting waiting = table.waiting(ReadingQueue.READ_SHEET.getTaskName());
        Duration age = waiting.age(clock.instant());
        Health.Builder health = age.compareTo(lateAfter) > 0 ? Health.outOfService() : Health.up();
        return health.withDetail("waiting", waiting.jobs())
                .withDetail("oldestSeconds", age.toSeconds())
                .build();
    }
}
