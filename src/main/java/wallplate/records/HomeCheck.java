package wallplate.records;

import java.time.Instant;
import java.util.Map;
import wallplate.marking.Verdict;

/**
 * A check at home that was kept for the learner's class.
 *
 * @param verdicts a verdict's word by criterion
 */
public record HomeCheck(
        long id, String taskTitle, Map<String, String> verdicts, double awarded, double available, Instant keptAt) {

    public HomeCheck {
        verdicts = Map.copyOf(verdicts);
    }

    public long met() {
        return count(Verdict.MET) + count(Verdict.CARRIED);
    }

    public long notMet() {
        return count(Verdict.NOT_MET);
    }

    public long undecided() {
        return count(Verdict.UNDECIDED);
    }

    private long count(Verdict verdict) {
        return verdicts.values().stream().filter(verdict.word()::equals).count();
    }
}
