package wallplate.moderation;

import java.util.List;
import wallplate.statistics.Disagreement;
import wallplate.statistics.IntraclassCorrelation;
import wallplate.statistics.Kappa;
import wallplate.statistics.PairedDifference;
import wallplate.statistics.RatingTable;
import wallplate.statistics.Statistic;

/**
 * How the two markings of one criterion, or of the totals, agree.
 *
 * @param id the criterion's id; empty for the totals
 * @param sheets how many were marked twice
 * @param same how many got the same marks both times
 * @param kappa weighted by the square of the difference in marks
 * @param difference second marks minus first
 */
public record Agreement(
        String id,
        String title,
        double available,
        int sheets,
        int same,
        Statistic<Kappa> kappa,
        Statistic<IntraclassCorrelation> correlation,
        Statistic<PairedDifference> difference) {

    static Agreement of(String id, String title, double available, List<Double> first, List<Double> second) {
        int same = 0;
        for (int sheet = 0; sheet < first.size(); sheet++) {
            same += first.get(sheet).equals(second.get(sheet)) ? 1 : 0;
        }
        return new Agreement(
                id,
                title,
                available,
                first.size(),
                same,
                Kappa.of(RatingTable.of(first, second), Disagreement.QUADRATIC),
                IntraclassCorrelation.of(first, second),
                PairedDifference.of(first, second));
    }
}
