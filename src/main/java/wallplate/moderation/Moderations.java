package wallplate.moderation;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The moderations of the class sets. Samples, second marks and decisions are added, never overwritten by others. */
public interface Moderations {

    /** Of one class set, the newest first. */
    List<Moderation> of(long classSetId);

    /** Those given to a second marker: first those that wait, then the newest first. */
    List<Moderation> givenTo(long account, int most);

    Optional<Moderation> find(long id);

    /** As {@link #find}, and keeps others from changing it until the transaction ends. */
    Optional<Moderation> take(long id);

    Moderation add(Draw draw);

    /** What the second marker gave on one sheet so far, by criterion. */
    Map<String, Double> secondMarks(long id, int place);

    /** Keeps the second marks of a sheet in place of those given before, and its total. */
    void mark(long id, int place, Map<String, Double> marks, double total);

    /** Says that the second marks stand. */
    void handIn(long id);

    /** The two marks of every criterion of every sheet that was marked twice. */
    List<PairedMark> pairs(long id);

    /** The two totals of every sheet that was marked twice, in the order of marking. */
    List<PairedTotal> totals(long id);

    void decide(long id, DecisionEntry entry);
}
