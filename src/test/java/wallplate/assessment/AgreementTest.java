package wallplate.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wallplate.marking.Guideline;
import wallplate.marking.Mark;
import wallplate.marking.MarkedSheet;
import wallplate.marking.Marker;
import wallplate.marking.Verdict;
import wallplate.sheet.ScanFile;

/**
 * The marks from scans held against the marks from the truth of what was drawn, and the slips named against those that
 * were made, on the shared test sheets.
 *
 * <p>Every fourth sheet is taken; with {@code -Dwallplate.sheets=all} every one.
 */
class AgreementTest {

    /** Slips of the interchange page: one that was made must be named, and one that is named must have been made. */
    private static final Set<String> NAMED = Set.of(
            "pitch-ten-off",
            "pitch-complement",
            "overhang-along-slope",
            "depth-plumb",
            "spacing-level",
            "spacing-clear",
            "half-size",
            "double-size",
            "wrong-size",
            "width-depth-swapped",
            "wrong-scale",
            "off-the-heel",
            "mirrored");

    private static final List<Pair> PAIRS = new ArrayList<>();

    /** One sheet's marks both ways. */
    private record Pair(TruthSheet sheet, MarkedSheet fromTruth, MarkedSheet fromScan) {}

    @BeforeAll
    static void markBothWays() throws IOException {
        int step = System.getProperty("wallplate.sheets", "").equals("all") ? 1 : 4;
        List<TruthSheet> sheets = TruthSheet.readable();
        for (int index = 0; index < sheets.size(); index += step) {
            TruthSheet sheet = sheets.get(index);
            Guideline guideline = Guideline.defaultFor(sheet.expected());
            MarkedSheet fromTruth = new Marker().mark(guideline, sheet.expected(), sheet.drawn());
            ScanFile.forEachPage(sheet.scan(), page -> {
                if (new Assessor().assess(page, sheet.expected(), guideline) instanceof AssessedSheet.Read read) {
                    PAIRS.add(new Pair(sheet, fromTruth, read.marked()));
                }
            });
        }
    }

    @AfterAll
    static void forget() {
        PAIRS.clear();
    }

    @Test
    void marksFromScansAgreeWithMarksFromTheTruth() {
        int decided = 0;
        List<String> apart = new ArrayList<>();
        for (Pair pair : PAIRS) {
            for (Mark fromScan : pair.fromScan().marks()) {
                Mark fromTruth = pair.fromTruth().mark(fromScan.criterion()).orElseThrow();
                if (fromScan.verdict() == Verdict.UNDECIDED || fromTruth.verdict() == Verdict.UNDECIDED) {
                    continue;
                }
                decided++;
                if (fromScan.awarded() != fromTruth.awarded()) {
                    apart.add("%s %s: truth %s %s, scan %s %s"
                            .formatted(
                                    pair.sheet().name(),
                                    fromScan.criterion(),
                                    fromTruth.verdict(),
                                    fromTruth.measured().orElseThrow(),
                                    fromScan.verdict(),
                                    fromScan.measured().orElseThrow()));
                }
            }
        }
        assertThat(apart)
                .as("of %d decided marks%n%s", decided, String.join("\n", apart))
                .hasSizeLessThanOrEqualTo(decided / 100);
    }

    @Test
    void namesTheSlipsThatWereMade() {
        int made = 0;
        List<String> missed = new ArrayList<>();
        for (Pair pair : PAIRS) {
            for (Map.Entry<String, String> slip : pair.sheet().slips()) {
                Mark mark =
                        pair.fromScan().mark(slip.getKey().replace('.', '-')).orElse(null);
                if (!NAMED.contains(slip.getValue())
                        || mark == null
                        || !mark.measured().orElseThrow().isMeasured()) {
                    continue;
                }
                made++;
                if (!mark.slips().contains(slip.getValue())) {
                    missed.add("%s %s: %s %s named %s"
                            .formatted(
                                    pair.sheet().name(),
                                    slip,
                                    mark.verdict(),
                                    mark.measured().orElseThrow(),
                                    mark.slips()));
                }
            }
        }
        assertThat(missed)
                .as("of %d slips made%n%s", made, String.join("\n", missed))
                .hasSizeLessThanOrEqualTo(made * 15 / 100);
    }

    @Test
    void seldomNamesASlipThatWasNotMade() {
        int sheets = 0;
        Map<String, List<String>> wrong = new TreeMap<>();
        for (Pair pair : PAIRS) {
            Set<String> made = new HashSet<>();
            pair.sheet().slips().forEach(slip -> made.add(slip.getKey()));
            if (made.contains("drawing")) {
                continue;
            }
            sheets++;
            for (Mark mark : pair.fromScan().marks()) {
                if (mark.key().isPresent() && !made.contains(mark.key().get())) {
                    mark.slips().stream()
                            .filter(NAMED::contains)
                            .forEach(slip -> wrong.computeIfAbsent(slip, one -> new ArrayList<>())
                                    .add(pair.sheet().name() + " " + mark.key().get()));
                }
            }
        }
        double most = Math.ceil(0.02 * sheets);
        assertThat(wrong).as("of %d sheets", sheets).allSatisfy((slip, where) -> assertThat(where.size())
                .as("%s: %s", slip, where)
                .isLessThanOrEqualTo((int) most));
    }
}
