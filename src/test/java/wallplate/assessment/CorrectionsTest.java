package wallplate.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import wallplate.assessment.Corrections.Ticks;
import wallplate.geometry.Angles;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.measure.Finding;
import wallplate.measure.LinesByHand;
import wallplate.measure.Measurement;
import wallplate.sheet.BarByHand;
import wallplate.sheet.Calibration;
import wallplate.sheet.LevelPage;

/**
 * Sheets corrected by a person, held against what was really drawn on them ({@code wallplate.samples}, which knows every
 * line and shares no code with reading and measuring).
 */
class CorrectionsTest {

    private static final long SEED = 41;
    private static final int SHEETS = 4;
    private static final Assessor ASSESSOR = new Assessor();

    private static List<GeneratedSheet> sheets = List.of();

    @BeforeAll
    static void readGeneratedSheets() {
        sheets = GeneratedSheet.first(SEED, SHEETS);
        assertThat(sheets).hasSize(SHEETS);
    }

    /** A bar read 8 in 100 too short makes every size too large; both ticks shown bring the true ones back. */
    @Test
    void givesTheTrueSizesBackWhereTheBarWasMisread() {
        List<Double> before = new ArrayList<>();
        List<Double> after = new ArrayList<>();
        for (GeneratedSheet sheet : sheets) {
            Segment bar = sheet.bar();
            BarByHand.Calibrated misread = shown(sheet.read(), bar.at(0), bar.at(0.92));
            AssessedSheet.Read wrong = measured(sheet.read(), misread.page());
            Segment there = misread.fromBefore().apply(bar);

            AssessedSheet.Read right = corrected(
                    wrong, byBar(there.start().plus(new Vector(0.7, 1.2)), there.end().plus(new Vector(-0.8, 0.9))));

            assertThat(right.levelPage().calibration().source()).isEqualTo(Calibration.Source.BY_HAND);
            assertThat(right.levelPage().bar().orElseThrow().length())
                    .isCloseTo(sheet.truth().get("bar").get("nominalMm").asDouble(), within(1e-6));
            before.addAll(shareOff(sheet, wrong));
            after.addAll(shareOff(sheet, right));
        }
        assertThat(median(before)).as("long sizes of the misread sheets").isBetween(0.07, 0.1);
        assertThat(median(after)).as("long sizes after the correction, %d of them", after.size()).isLessThan(0.004);
        assertThat(after).as("as many sizes are measured").hasSizeGreaterThanOrEqualTo(before.size());
    }

    /** Sheets put in upside down or on their side are turned by showing first the tick that should be on the left. */
    @Test
    void turnsTheSheetSoThatTheFirstTickIsOnTheLeft() {
        GeneratedSheet sheet = sheets.get(0);
        Segment bar = sheet.bar();
        BarByHand.Calibrated upsideDown = shown(sheet.read(), bar.end(), bar.start());
        AssessedSheet.Read wrong = measured(sheet.read(), upsideDown.page());
        Segment there = upsideDown.fromBefore().apply(bar);

        AssessedSheet.Read right = corrected(wrong, byBar(there.start(), there.end()));

        assertThat(there.start().x()).isGreaterThan(there.end().x());
        assertThat(right.levelPage().ink().widthPx()).isEqualTo(sheet.read().levelPage().ink().widthPx());
        assertThat(median(shareOff(sheet, right))).isLessThan(0.004);
        Segment onScan = right.levelPage().toScan().apply(right.levelPage().bar().orElseThrow());
        Segment asRead = sheet.read().levelPage().toScan().apply(bar);
        assertThat(onScan.start().distanceTo(asRead.start())).as("pixels of the scan").isLessThan(4);
    }

    @Test
    void takesThePlaceItselfWhereNoTickIsSeenAndKnowsTheSizesLessWell() {
        AssessedSheet.Read read = sheets.get(0).read();
        LevelPage page = read.levelPage();
        Point empty = new Point(page.ink().widthMm() / 2, page.ink().heightMm() - 4);

        AssessedSheet.Read corrected = corrected(read, byBar(empty.plus(new Vector(-45, 0)), empty.plus(new Vector(45, 0))));

        assertThat(corrected.levelPage().warnings()).anyMatch(warning -> warning.contains("the place itself was taken"));
        assertThat(corrected.levelPage().calibration().uncertaintyPercent())
                .isGreaterThan(2 * page.calibration().uncertaintyPercent());
    }

    @Test
    void refusesTwoPlacesThatCannotBeTicks() {
        AssessedSheet.Read read = sheets.get(0).read();

        assertThat(refusal(read, byBar(new Point(30, 30), new Point(33, 30)))).contains("lie 3.0 mm apart");
        assertThat(refusal(read, byBar(new Point(30, 30), new Point(-3, 30)))).contains("outside the sheet");
    }

    /**
     * For every key whose two lines are known, the line nearest to a click beside the true one is chosen; the value must
     * be that of the lines drawn. The shared scoring leaves a tenth of a millimetre for the pencil.
     */
    @Test
    void measuresWhatWasDrawnBetweenLinesThatAPersonChose() {
        List<Double> errors = new ArrayList<>();
        List<Double> deviations = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        Set<String> measured = new TreeSet<>();
        for (GeneratedSheet sheet : sheets) {
            LinesByHand lines = LinesByHand.on(sheet.read().levelPage()).orElseThrow();
            GeneratedSheet.LINES.keySet().forEach(key -> {
                Optional<List<Segment>> chosen = clicked(sheet, lines, key, sheet.linesOf(key));
                OptionalDouble truth = sheet.value(key);
                if (chosen.isEmpty() || truth.isEmpty()) {
                    return;
                }
                Finding.Quantity found = quantity(lines.measure(key, chosen.get()));
                double error = Math.abs(found.value() - truth.getAsDouble());
                errors.add(error);
                measured.add(key);
                deviations.add(error / found.uncertainty());
                if (error > 0.6) {
                    wrong.add("%s %s: true %.2f, measured %s".formatted(sheet.name(), key, truth.getAsDouble(), found));
                }
            });
        }
        assertThat(errors).hasSizeGreaterThan(40);
        assertThat(measured).contains("rafter.heel-offset", "covering.projection", "post.position");
        assertThat(wrong).as("of %d", errors.size()).hasSizeLessThanOrEqualTo(errors.size() / 50);
        assertThat(median(errors)).as("millimetres and degrees").isLessThan(0.06);
        assertThat(share(deviations, 3)).as("within three stated standard deviations").isGreaterThan(0.9);
    }

    /** A wrong line gives a wrong value, so that the test above can fail; and what is chosen is marked. */
    @Test
    void marksTheValueOfTheLinesChosenAndLeavesTheOthersAlone() {
        GeneratedSheet sheet = sheets.get(0);
        AssessedSheet.Read read = sheet.read();
        Segment outer = sheet.line("wall.outer").orElseThrow();
        Segment plate = sheet.line("wall-plate.inner").orElseThrow();

        AssessedSheet.Read corrected = corrected(read, byLines("wall.thickness", outer, plate));

        Measurement again = corrected.measured().measurement("wall.thickness").orElseThrow();
        double between = Math.abs(outer.midpoint().x() - plate.midpoint().x());
        assertThat(((Finding.Quantity) again.finding()).value()).isCloseTo(between, within(0.3));
        assertThat(again.evidence()).hasSize(2);
        assertThat(corrected.marked().mark("wall-thickness").orElseThrow().measured()).contains(again.finding());
        assertThat(corrected.measured().measurement("rafter.depth"))
                .isEqualTo(read.measured().measurement("rafter.depth"));
    }

    @Test
    void keepsTheChosenLinesWhenTheMillimetresAreCorrectedToo() {
        GeneratedSheet sheet = sheets.get(0);
        Segment bar = sheet.bar();
        Segment outer = sheet.line("wall.outer").orElseThrow();
        Segment plate = sheet.line("wall-plate.inner").orElseThrow();
        Corrections lines = byLines("wall.thickness", outer, plate);
        Corrections both = new Corrections(Optional.of(new Ticks(bar.start(), bar.at(0.5))), lines.lines());

        double alone = quantity(corrected(sheet.read(), lines));
        double twice = quantity(corrected(sheet.read(), both));

        assertThat(twice).isCloseTo(2 * alone, within(0.15));
    }

    @Test
    void refusesLinesThatCannotGiveTheValue() {
        GeneratedSheet sheet = sheets.get(0);
        Segment outer = sheet.line("wall.outer").orElseThrow();
        Segment rafter = sheet.line("rafter.top").orElseThrow();

        assertThat(refusal(sheet.read(), byLines("wall.thickness", outer, rafter))).contains("two upright lines");
        assertThat(refusal(sheet.read(), byLines("wall.thickness", outer))).contains("1 lines are chosen");
        assertThat(refusal(sheet.read(), byLines("wall.thickness", outer, outer))).contains("the same line");
        assertThat(refusal(sheet.read(), byLines("support.count", outer, outer))).contains("cannot be measured");
        Segment nowhere = Segment.between(5, 150, 5, 170);
        assertThat(refusal(sheet.read(), byLines("wall.thickness", outer, nowhere))).contains("too little ink");
    }

    /** The nearest to a click beside the line, of those that run its way: a person sees which line is meant. */
    private static Optional<Segment> clicked(Segment line, List<Segment> choices) {
        Point place = line.at(0.4).plus(new Vector(0.15, 0.1));
        return choices.stream()
                .filter(choice -> Angles.between(choice.inclinationDegrees(), line.inclinationDegrees()) < 5)
                .min(Comparator.comparingDouble(choice -> choice.distanceTo(place)))
                .filter(choice -> choice.distanceTo(place) < 0.8);
    }

    private static Optional<List<Segment>> clicked(
            GeneratedSheet sheet, LinesByHand lines, String key, List<String> names) {
        List<Segment> choices = lines.choices(key);
        List<Segment> chosen = new ArrayList<>();
        for (String name : names) {
            sheet.line(name).flatMap(line -> clicked(line, choices)).ifPresent(chosen::add);
        }
        return chosen.size() == names.size() && chosen.stream().distinct().count() == chosen.size()
                ? Optional.of(chosen)
                : Optional.empty();
    }

    private static BarByHand.Calibrated shown(AssessedSheet.Read read, Point left, Point right) {
        double bar = read.expected().task().sheet().referenceBarMm();
        return (BarByHand.Calibrated) BarByHand.calibrate(read.levelPage(), left, right, bar);
    }

    private static AssessedSheet.Read measured(AssessedSheet.Read read, LevelPage page) {
        return new AssessedSheet.Read(
                read.scan(),
                read.page(),
                read.expected(),
                page,
                new wallplate.measure.Measurer().measure(page, read.expected()),
                read.marked());
    }

    private static Corrections byBar(Point left, Point right) {
        return new Corrections(Optional.of(new Ticks(left, right)), new TreeMap<>());
    }

    private static Corrections byLines(String key, Segment... lines) {
        return new Corrections(Optional.empty(), new TreeMap<>(Map.of(key, List.of(lines))));
    }

    private static AssessedSheet.Read corrected(AssessedSheet.Read read, Corrections corrections) {
        return ((CorrectedSheet.Corrected) ASSESSOR.correct(read, corrections)).sheet();
    }

    private static String refusal(AssessedSheet.Read read, Corrections corrections) {
        return ((CorrectedSheet.Refused) ASSESSOR.correct(read, corrections)).reason();
    }

    private static double quantity(AssessedSheet.Read sheet) {
        return ((Finding.Quantity) sheet.measured().measurement("wall.thickness").orElseThrow().finding()).value();
    }

    private static Finding.Quantity quantity(LinesByHand.Outcome outcome) {
        assertThat(outcome).isInstanceOf(LinesByHand.Measured.class);
        return (Finding.Quantity) ((LinesByHand.Measured) outcome).measurement().finding();
    }

    /** How far the measured sizes of 15 mm and more are off, as a share of what was drawn. */
    private static List<Double> shareOff(GeneratedSheet sheet, AssessedSheet.Read read) {
        List<Double> off = new ArrayList<>();
        for (Measurement measurement : read.measured().measurements()) {
            OptionalDouble truth = sheet.value(measurement.key());
            if (truth.isPresent()
                    && !measurement.key().equals("roof.pitch")
                    && truth.getAsDouble() >= 15
                    && measurement.finding() instanceof Finding.Quantity found) {
                off.add(Math.abs(found.value() / truth.getAsDouble() - 1));
            }
        }
        return off;
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().skip(values.size() / 2).findFirst().orElseThrow();
    }

    private static double share(List<Double> values, double most) {
        return values.stream().filter(value -> value <= most).count() / (double) values.size();
    }
}
