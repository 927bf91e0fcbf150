package wallplate.moderation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How two markings of a sample agree, for the totals and criterion by criterion.
 *
 * @param criteria in the guideline's order
 * @param totals by the order of marking
 */
public record AgreementReport(Agreement total, List<Agreement> criteria, List<PairedTotal> totals) {

    public AgreementReport {
        criteria = List.copyOf(criteria);
        totals = List.copyOf(totals);
    }

    public static AgreementReport of(List<PairedMark> marks, List<PairedTotal> totals) {
        Map<String, List<PairedMark>> byCriterion = new LinkedHashMap<>();
        marks.stream()
                .sorted(Comparator.comparingInt(PairedMark::position).thenComparingInt(PairedMark::place))
                .forEach(mark -> byCriterion.computeIfAbsent(mark.criterion(), id -> new ArrayList<>()).add(mark));
        Agreement total = Agreement.of(
                "",
                "Total",
                totals.stream().mapToDouble(PairedTotal::available).max().orElse(0),
                totals.stream().map(PairedTotal::first).toList(),
                totals.stream().map(PairedTotal::second).toList());
        return new AgreementReport(
                total,
                byCriterion.values().stream().map(AgreementReport::ofCriterion).toList(),
                totals);
    }

    private static Agreement ofCriterion(List<PairedMark> marks) {
        PairedMark one = marks.get(0);
        return Agreement.of(
                one.criterion(),
                one.title(),
                one.available(),
                marks.stream().map(PairedMark::first).toList(),
                marks.stream().map(PairedMark::second).toList());
    }
}
