package wallplate.moderation;

import java.util.List;

/**
 * A sample that is to be kept.
 *
 * @param candidates how many sheets could have been drawn
 * @param leftOut sheets of the set that could not, because they were not read or a criterion is not decided
 * @param moderator who marks it a second time
 * @param drawnBy who drew it
 * @param sheets in the order in which they are to be marked
 */
public record Draw(
        long classSetId,
        SamplingRule rule,
        int candidates,
        int leftOut,
        String moderator,
        String drawnBy,
        List<DrawnSheet> sheets) {
    public Draw {
        sheets = List.copyOf(sheets);
    }
}
