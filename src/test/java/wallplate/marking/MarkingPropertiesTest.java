package wallplate.marking;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.measure.Finding;
import wallplate.measure.MeasuredSheet;
import wallplate.measure.Measurement;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;

/** What holds for any sheet under any guideline; sheets and guidelines are drawn from the seed in the test's name. */
class MarkingPropertiesTest {

    private static final ExpectedDrawing ASKED = Solver.solve(Asked.boathouse());
    private static final int SHEETS = 25;

    /** Consistent working aside: what follows from a mistake is no longer credited once the mistake is put right. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void moreAccurateNeverGetsFewerMarks(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < SHEETS; round++) {
            Guideline guideline = guideline(random).withoutConsistentWorking();
            MeasuredSheet sheet = sheet(random);
            MeasuredSheet better = moved(sheet, random.nextDouble());
            Map<String, Double> before = awarded(guideline, sheet);
            awarded(guideline, better).forEach((criterion, marks) -> assertThat(marks)
                    .as("seed %d, %s", seed, criterion)
                    .isGreaterThanOrEqualTo(before.get(criterion)));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {4, 5, 6})
    void theOrderOfCriteriaChangesNothing(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < SHEETS; round++) {
            Guideline guideline = guideline(random).guideline;
            List<Criterion> shuffled = new ArrayList<>(guideline.criteria());
            Collections.shuffle(shuffled, random);
            Guideline other = new Guideline(
                    guideline.name(),
                    guideline.tolerances(),
                    guideline.borderlineDeviations(),
                    guideline.groups(),
                    shuffled);
            MeasuredSheet sheet = sheet(random);
            assertThat(awarded(other, sheet)).as("seed %d", seed).isEqualTo(awarded(guideline, sheet));
            assertThat(new Marker().mark(other, ASKED, sheet).awarded())
                    .isEqualTo(new Marker().mark(guideline, ASKED, sheet).awarded());
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {7, 8, 9})
    void markingTwiceChangesNothing(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < SHEETS; round++) {
            Guideline guideline = guideline(random).guideline;
            MeasuredSheet sheet = sheet(random);
            MarkedSheet once = new Marker().mark(guideline, ASKED, sheet);
            assertThat(new Marker().mark(guideline, ASKED, sheet))
                    .as("seed %d", seed)
                    .isEqualTo(once);
            assertThat(MarkPreview.between(once, new Marker().mark(guideline, ASKED, sheet))
                            .changesAnything())
                    .isFalse();
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {10, 11})
    void awardsBetweenNothingAndWhatIsAvailable(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < SHEETS; round++) {
            MarkedSheet marked = new Marker().mark(guideline(random).guideline, ASKED, sheet(random));
            assertThat(marked.awarded()).isBetween(0.0, marked.available());
            assertThat(marked.marks()).allSatisfy(mark -> {
                assertThat(mark.awarded()).isBetween(0.0, mark.available());
                assertThat(mark.feedback()).isNotBlank().doesNotContain("{");
                if (mark.verdict() == Verdict.UNDECIDED) {
                    assertThat(mark.awarded()).isLessThan(mark.available());
                }
            });
        }
    }

    private record Drawn(Guideline guideline) {
        Guideline withoutConsistentWorking() {
            return new Guideline(
                    guideline.name(),
                    guideline.tolerances(),
                    guideline.borderlineDeviations(),
                    guideline.groups(),
                    guideline.criteria().stream()
                            .map(one -> one.withConsistentWorking(false))
                            .toList());
        }
    }

    /** A criterion for every key, some with bands, groups and a borderline. */
    private static Drawn guideline(Random random) {
        Tolerances tolerances =
                new Tolerances(0.5 + random.nextDouble(), 0.3 + random.nextDouble() / 2, 0.5 + random.nextDouble());
        List<Criterion> criteria = new ArrayList<>();
        for (Expected value : ASKED.values()) {
            double marks = 1 + random.nextInt(3);
            boolean banded = value instanceof Expected.Length || value instanceof Expected.Angle;
            List<Band> bands = banded && random.nextBoolean() ? List.of(new Band(3, 0.5)) : List.of();
            Criterion plain = Criterion.forKey(value.key());
            criteria.add(new Criterion(
                    plain.id(),
                    plain.title(),
                    marks,
                    plain.subject(),
                    plain.tolerance(),
                    bands,
                    random.nextInt(4) == 0 ? Optional.of("some") : Optional.empty(),
                    Optional.empty(),
                    random.nextBoolean()));
        }
        List<MarkGroup> groups = List.of(new MarkGroup("some", "Some", random.nextInt(6)));
        return new Drawn(new Guideline("drawn", tolerances, random.nextInt(3), groups, criteria));
    }

    private static MeasuredSheet sheet(Random random) {
        List<Measurement> measurements = new ArrayList<>();
        for (Expected value : ASKED.values()) {
            measurements.add(Measurement.of(value.key(), finding(value, random)));
        }
        return new MeasuredSheet(measurements, Map.of(), Optional.empty());
    }

    private static Finding finding(Expected value, Random random) {
        int luck = random.nextInt(10);
        if (luck == 0) {
            return new Finding.Absent();
        }
        if (luck == 1) {
            return Finding.Uncertain.because("It is smudged.");
        }
        if (value instanceof Expected.Length length) {
            return new Finding.Quantity(length.exactMm() + random.nextGaussian() * 2, 0.05 + random.nextDouble() / 10);
        }
        if (value instanceof Expected.Angle angle) {
            return new Finding.Quantity(angle.degrees() + random.nextGaussian() * 4, 0.1);
        }
        if (value instanceof Expected.Count count) {
            return new Finding.Count(count.number() + random.nextInt(3) - 1);
        }
        return value instanceof Expected.Word
                ? new Finding.Word(random.nextBoolean() ? "left" : "right")
                : new Finding.YesNo(random.nextBoolean());
    }

    /** The same sheet with every length and angle moved towards what was asked by a share of its error. */
    private static MeasuredSheet moved(MeasuredSheet sheet, double share) {
        List<Measurement> moved = sheet.measurements().stream()
                .map(measurement -> {
                    Expected asked = ASKED.value(measurement.key()).orElseThrow();
                    if (!(measurement.finding() instanceof Finding.Quantity drawn)) {
                        return measurement;
                    }
                    double right = asked instanceof Expected.Length length
                            ? length.exactMm()
                            : ((Expected.Angle) asked).degrees();
                    double value = drawn.value() + (right - drawn.value()) * share;
                    return Measurement.of(measurement.key(), new Finding.Quantity(value, drawn.uncertainty()));
                })
                .toList();
        return new MeasuredSheet(moved, Map.of(), Optional.empty());
    }

    private static Map<String, Double> awarded(Guideline guideline, MeasuredSheet sheet) {
        Map<String, Double> awarded = new TreeMap<>();
        new Marker()
                .mark(guideline, ASKED, sheet)
                .marks()
                .forEach(mark -> awarded.put(mark.criterion(), mark.awarded()));
        return awarded;
    }
}
