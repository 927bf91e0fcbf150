package wallplate.privacy;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionOperations;
import wallplate.audit.AuditTrail;

/** Says what is over its time and takes it away, each kind in one step with its entry in the audit trail. */
@Service
@EnableConfigurationProperties(RetentionSettings.class)
public class Retention {

    private static final Logger LOG = LoggerFactory.getLogger(Retention.class);
    private static final int ADDRESSES_SHOWN = 20;

    private final RetentionSettings settings;
    private final Overdue overdue;
    private final LeftOvers leftOvers;
    private final AuditTrail trail;
    private final TransactionOperations together;
    private final Clock clock;

    Retention(
            RetentionSettings settings,
            Overdue overdue,
            LeftOvers leftOvers,
            AuditTrail trail,
            TransactionOperations together,
            Clock clock) {
        this.settings = settings;
        this.overdue = overdue;
        this.leftOvers = leftOvers;
        this.trail = trail;
        this.together = together;
        this.clock = clock;
    }

    /**
     * One kind of data, how long it stays and what of it is over its time.
     *
     * @param keep empty where it stays for good
     * @param before what is older is over its time; empty where it stays for good
     */
    public record Listed(Kind kind, Optional<Period> keep, Optional<Instant> before, Overdue.Found found) {}

    /** What the next run would take away; changes nothing. */
    public List<Listed> listing() {
        return Arrays.stream(Kind.values()).map(this::listed).toList();
    }

    private Listed listed(Kind kind) {
        Optional<Instant> before = before(kind);
        return new Listed(
                kind,
                settings.of(kind),
                before,
                before.map(moment -> overdue.of(kind, moment, ADDRESSES_SHOWN))
                        .orElseGet(() -> new Overdue.Found(0, List.of())));
    }

    private Optional<Instant> before(Kind kind) {
        return settings.of(kind)
                .map(keep -> clock.instant().atZone(ZoneOffset.UTC).minus(keep).toInstant());
    }

    /**
     * Takes away what is over its time.
     *
     * @param person who asked for it
     * @return how much of each kind was taken away; kinds of which there was nothing are left out
     * @throws IOException where the scan store did not answer; what the records let go of is cleared out by its sweep later
     */
    public List<Taken> run(String person) throws IOException {
        List<Taken> all = new ArrayList<>();
        List<String> contents = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            Optional<Instant> before = before(kind);
            if (before.isPresent()) {
                Overdue.Removed removed = remove(kind, before.get(), person);
                contents.addAll(removed.contents());
                if (removed.number() > 0) {
                    all.add(new Taken(kind, removed.number()));
                    LOG.info("took away {} of the kind {} that were over their time", removed.number(), kind.word());
                }
            }
        }
        leftOvers.clear(contents);
        return all;
    }

    /** So much of a kind was taken away. */
    public record Taken(Kind kind, long number) {}

    private Overdue.Removed remove(Kind kind, Instant before, String person) {
        Overdue.Removed removed = together.execute(step -> {
            Overdue.Removed gone = overdue.remove(kind, before);
            if (gone.number() > 0) {
                trail.append(person, "retention %s %d".formatted(kind.word(), gone.number()), "/privacy");
            }
            return gone;
        });
        return java.util.Objects.requireNonNull(removed);
    }
}
