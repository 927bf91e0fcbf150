package wallplate.privacy;

import java.time.Period;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * How long each kind of data stays.
 *
 * @param keep the time by the kind's word, such as {@code scans: P1Y}; a kind that is not named stays for good
 */
@ConfigurationProperties("wallplate.retention")
public record RetentionSettings(Map<String, Period> keep) {

    public RetentionSettings {
        Map<String, Period> known = new TreeMap<>(keep == null ? Map.of() : keep);
        for (Kind kind : Kind.values()) {
            known.remove(kind.word());
        }
        if (!known.isEmpty()) {
            throw new IllegalArgumentException("wallplate.retention.keep has kinds of data that are not known: "
                    + known.keySet() + "; known are " + java.util.Arrays.stream(Kind.values()).map(Kind::word).toList());
        }
        keep = keep == null ? Map.of() : Map.copyOf(keep);
        keep.forEach((kind, period) -> {
            if (period.isNegative() || period.isZero()) {
                throw new IllegalArgumentException(
                        "wallplate.retention.keep." + kind + " is a time longer than nothing, such as P1Y, not " + period);
            }
        });
    }

    /** Empty where it stays for good. */
    public Optional<Period> of(Kind kind) {
        return Optional.ofNullable(keep.get(kind.word()));
    }
}
