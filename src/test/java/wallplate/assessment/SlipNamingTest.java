package wallplate.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wallplate.marking.Guideline;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.marking.Verdict;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.samples.SampleSet;

/**
 * The slips named on many drawn sheets held against those that were made; measured as by a good scan, without a scan.
 *
 * <p>The rule was made with other seeds in view. A value that two slips spoiled is left out: no one slip explains it.
 * Where two slips are named together, that counts as named if one of them was made, and as wrong if none was. {@code
 * -Dwallplate.drawn=N} draws N sheets of each seed and prints the table.
 */
class SlipNamingTest {

    private static final List<Long> SEEDS = 
            List.of(63_001L, 63_002L, 63_003L, 63_004L, 63_005L, 63_006L, 63_007L, 63_008L);
    private static final int SHEETS = Integer.getInteger("wallplate.drawn", 150);
    private static final double UNCERTAINTY = 0.05;

    private static final double LEAST_NAMED = 0.85;

    /** The share of sheets on which any slip may be named that was not made. */
    private static final double MOST_WRONG = 0.02;

    /** A slip is spoken of from so many on. */
    private static final int ENOUGH = 12;

    private static final Map<String, Count> BY_SLIP = new TreeMap<>();
    private static int sheets;
    private static int wrongSheets;

    /** How often a slip was made where the value is marked wrong, named there, and named on a sheet where it was not. */
    private static final class Count {
        private int made;
        private int counted;
        private int named;
        private int wrongSheets;
    }

    @BeforeAll
    static void markManySheets() {
        BY_SLIP.clear();
        sheets = 0;
        wrongSheets = 0;
        for (long seed : SEEDS) {
            SampleSet.drawn(seed, SHEETS, 12).stream()
                    .map(TruthSheet::of)
                    .filter(sheet -> sheet.slips().stream().noneMatch(slip -> slip.getKey().equals("drawing")))
                    .forEach(SlipNamingTest::count);
        }
        if (Integer.getInteger("wallplate.drawn") != null) {
            System.out.printf(Locale.ROOT, "%d sheets, a slip named wrongly on %d of them%n", sheets, wrongSheets);
            BY_SLIP.forEach((slip, count) -> System.out.printf(
                    Locale.ROOT,
                    "%-22s made %4d, of those marked wrong %4d named %5.1f %%, named wrongly on %.2f %% of sheets%n",
                    slip,
                    count.made,
                    count.counted,
                    100.0 * count.named / Math.max(1, count.counted),
                    100.0 * count.wrongSheets / sheets));
        }
    }

    private static void count(TruthSheet sheet) {
        MarkedSheet marked =
                new Marker().mark(Guideline.defaultFor(sheet.expected()), sheet.expected(), measured(sheet));
        Set<String> wrong = new HashSet<>();
        for (Mark mark : marked.marks()) {
            String key = mark.key().orElseThrow();
            List<String> made = made(sheet, key);
            if (made.size() > 1 || isLeftUnhatched(sheet, mark)) {
                continue;
            }
            if (!made.isEmpty() && mark.measured().orElseThrow().isMeasured()) {
                made.forEach(slip -> countMade(slip, mark));
            }
            if (mark.slips().stream().noneMatch(made::contains)) {
                wrong.addAll(mark.slips());
            }
        }
        wrong.forEach(slip -> BY_SLIP.computeIfAbsent(slip, one -> new Count()).wrongSheets++);
        wrongSheets += wrong.isEmpty() ? 0 : 1;
        sheets++;
    }

    /** Whether hatching has no room, as between the rafters over a plate that was drawn too wide: it is not there, and no slip. */
    private static boolean isLeftUnhatched(TruthSheet sheet, Mark mark) {
        String key = mark.key().orElseThrow();
        return key.endsWith(".hatched") && made(sheet, key).isEmpty() && mark.verdict() == Verdict.NOT_MET;
    }

    private static void countMade(String slip, Mark mark) {
        Count count = BY_SLIP.computeIfAbsent(slip, one -> new Count());
        count.made++;
        if (mark.verdict() == Verdict.NOT_MET) {
            count.counted++;
            count.named += mark.slips().contains(slip) ? 1 : 0;
        }
    }

    /** The slips made at a key; the truth names parts for missing diagonals and hatching, and tells another part's size apart. */
    private static List<String> made(TruthSheet sheet, String key) {
        String part = key.substring(0, key.indexOf('.'));
        List<String> made = new ArrayList<>();
        sheet.slips().forEach(slip -> {
            String what = slip.getValue();
            boolean ofPart = what.equals("not-crossed") && key.endsWith(".crossed")
                    || what.equals("not-hatched") && key.endsWith(".hatched");
            if (slip.getKey().equals(key) || ofPart && List.of(part, "all").contains(slip.getKey())) {
                made.add(what.equals("other-part") ? "wrong-size" : what);
            }
        });
        return made;
    }

    private static MeasuredSheet measured(TruthSheet sheet) {
        Random random = new Random(sheet.name().hashCode());
        List<Measurement> measurements = sheet.drawn().measurements().stream()
                .map(measurement -> measurement.finding() instanceof Finding.Quantity drawn
                        ? Measurement.of(
                                measurement.key(),
                                new Finding.Quantity(
                                        drawn.value() + UNCERTAINTY * random.nextGaussian(), UNCERTAINTY))
                        : measurement)
                .toList();
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }

    @Test
    void namesEverySlipThatWasMade() {
        assertThat(BY_SLIP.values().stream().filter(count -> count.counted >= ENOUGH)).hasSizeGreaterThan(7);
        BY_SLIP.forEach((slip, count) -> {
            if (count.counted >= ENOUGH) {
                assertThat((double) count.named / count.counted)
                        .as(slip)
                        .isGreaterThanOrEqualTo(LEAST_NAMED);
            }
        });
    }

    @Test
    void seldomNamesASlipThatWasNotMade() {
        assertThat(BY_SLIP).allSatisfy((slip, count) -> assertThat((double) count.wrongSheets / sheets)
                .as(slip)
                .isLessThanOrEqualTo(MOST_WRONG));
        assertThat((double) wrongSheets / sheets).isLessThanOrEqualTo(MOST_WRONG);
    }
}
