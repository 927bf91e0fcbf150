package wallplate.moderation;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A sample of a class set and how far its moderation has come. It holds no marks.
 *
 * @param candidates how many sheets could have been drawn
 * @param leftOut sheets of the set that could not, because they were not read or a criterion was not decided
 * @param handedInAt when the second marks were handed in; they stand from then on, and only then are they compared
 * @param decisions the last first
 */
public record Moderation(
        long id,
        long classSetId,
        SamplingRule rule,
        int candidates,
        int leftOut,
        String moderator,
        String drawnBy,
        Instant drawnAt,
        Optional<Instant> handedInAt,
        List<SampledSheet> sheets,
        List<DecisionEntry> decisions) {

    public Moderation {
        sheets = List.copyOf(sheets);
        decisions = List.copyOf(decisions);
    }

    /** The same with its sheets, in the order of marking, and its decisions. */
    public Moderation with(List<SampledSheet> sampled, List<DecisionEntry> decided) {
        return new Moderation(
                id, classSetId, rule, candidates, leftOut, moderator, drawnBy, drawnAt, handedInAt, sampled, decided);
    }

    public boolean isHandedIn() {
        return handedInAt.isPresent();
    }

    /** How many sheets have been marked a second time. */
    public int marked() {
        return (int) sheets.stream().filter(sheet -> sheet.markedAt().isPresent()).count();
    }

    public boolean isMarked() {
        return marked() == sheets.size();
    }

    /** The first sheet that waits for its second marks. */
    public Optional<SampledSheet> next() {
        return sheets.stream().filter(sheet -> sheet.markedAt().isEmpty()).findFirst();
    }

    public Optional<SampledSheet> at(int place) {
        return sheets.stream().filter(sheet -> sheet.place() == place).findFirst();
    }
}
