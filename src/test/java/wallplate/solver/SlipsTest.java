package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import wallplate.task.Scale;
import wallplate.task.Tasks;

/** Known slips at the boathouse, 1:20, 26 degrees; the values are worked out by hand beside each. */
class SlipsTest {

    private static final ExpectedDrawing DRAWING = Solver.solve(Tasks.boathouse());
    private static final Slips SLIPS = Slips.of(DRAWING);

    @ParameterizedTest(name = "{0} = {1} is {3}")
    @CsvSource({
        "roof.pitch, 36.3, 1, pitch-ten-off", // 26 + 10
        "roof.pitch, 16.2, 1, pitch-ten-off", // 26 - 10
        "roof.pitch, 64, 1, pitch-complement", // 90 - 26
        "roof.pitch, 29, 1, pitch-misread", // no formula
        "rafter.overhang, 17.98, 1, overhang-along-slope", // 20 cos 26 = 17.98
        "rafter.depth, 6.74, 0.5, depth-plumb", // 7.5 cos 26 = 6.74
        "support.spacing, 50.07, 1, spacing-level", // 45 / cos 26 = 50.07
        "support.spacing, 47.6, 1, spacing-clear", // 45 + 2.5
        "brander.spacing, 22.5, 1, spacing-clear", // 20 + 2.5
        "tie-beam.depth, 3.8, 0.5, half-size", // 7.5 / 2
        "tie-beam.depth, 15.05, 0.5, double-size", // 7.5 x 2
        "barge-board.depth, 16.7, 0.5, depth-square", // 15 / cos 26 = 16.69
        "rafter.heel-offset, -2.2, 1, off-the-heel", // 5 sin 26 = 2.19 below
        "rafter.heel-offset, 6, 1, off-the-heel", // no corner of the plate
        "post.position, 74.25, 1, wrong-datum", // 80 - 11.5 / 2
        "post.position, 32, 1, plan-scale", // 1600 / 50
        "fascia.depth, 8.2, 0.5, wrong-size",
    })
    void namesTheSlip(String key, double measured, double tolerance, String slip) {
        assertThat(Slips.of(DRAWING, exactLengths(DRAWING)).fitting(key, measured, 0.05, tolerance))
                .extracting(SlipFit::slip)
                .containsExactly(slip);
    }

    /** The lengths of a sheet by a true hand. */
    private static Map<String, Double> exactLengths(ExpectedDrawing drawing) {
        Map<String, Double> exact = new HashMap<>();
        drawing.values().stream()
                .filter(Expected.Length.class::isInstance)
                .forEach(length -> exact.put(length.key(), ((Expected.Length) length).exactMm()));
        return exact;
    }

    @Test
    void namesNoSlipWhoseOwnValueStillCounts() {
        // 3 / cos 26 = 3.34, which is within 1 mm of 3: it does not explain 4.2
        assertThat(SLIPS.fitting("covering.projection", 4.2, 0.05, 1))
                .extracting(SlipFit::slip)
                .doesNotContain("projection-level");
    }

    @Test
    void namesNothingWhereTheValueIsRight() {
        assertThat(SLIPS.fitting("rafter.overhang", 19.2, 0.05, 1)).isEmpty();
        // 75 / 20 = 3.75 is drawn 4: anything between counts as right
        assertThat(SLIPS.fitting("support.depth", 4.4, 0.05, 0.5)).isEmpty();
        // a little careless, but no slip: only what is clearly off counts as another size
        assertThat(SLIPS.fitting("fascia.depth", 12.1, 0.05, 0.5)).isEmpty();
        assertThat(SLIPS.fitting("gutter.depth", 99, 0.05, 0.5)).isEmpty();
        assertThat(SLIPS.fitting("no.such-key", 1, 0.05, 1)).isEmpty();
    }

    @Test
    void listsTogetherWhatCannotBeToldApart() {
        // half of the plate's width of 5, its depth, and the width of purlins and branders are all 2.5
        assertThat(SLIPS.fitting("wall-plate.width", 2.6, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("half-size", "width-depth-swapped", "wrong-size");
        // five spaces instead of four: 80 x 4 / 5 = 64, and 80 x 20 / 25 = 64 at 1:25
        assertThat(SLIPS.fitting("post.position", 64, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("space-count-off", "wrong-scale");
    }

    @Test
    void prefersTheCommonerOfTwoThatGiveOneValue() {
        // 45 x 20 / 10 is the double size and the length at 1:10, one of eight scales that might have been taken
        assertThat(SLIPS.fitting("support.spacing", 90, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("double-size");
    }

    @Test
    void namesAnotherSizeBesideASlipThatIsSeldomMade() {
        // 80 - 5 / 2 = 77.5: a side of the post for its centre, or a ruler misread
        assertThat(SLIPS.fitting("post.position", 77.5, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("position-to-face", "wrong-size");
        // 20 cos 26 = 17.98: what is often made stands alone
        assertThat(SLIPS.fitting("rafter.overhang", 17.98, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("overhang-along-slope");
    }

    @Test
    void takesTheSizeOfAnotherPartForOneWhereNoHalvingFitsAsWell() {
        // 216 / 20 = 10.8, half of it 5.4; the plate is 5 wide
        ExpectedDrawing drawing = Solver.solve(Tasks.boathouse("tie-beam: {depth: 150}", "tie-beam: {depth: 216}"));
        Slips slips = Slips.of(drawing, exactLengths(drawing));
        assertThat(slips.fitting("tie-beam.depth", 5.4, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("half-size");
        assertThat(slips.fitting("tie-beam.depth", 5, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("wrong-size");
    }

    @Test
    void tellsAMissedHeelPointFromAHandThatStrays() {
        // a true hand that misses the heel by 1.6 mm drew the rafter through another point
        assertThat(Slips.of(DRAWING, exactLengths(DRAWING)).fitting("rafter.heel-offset", 1.6, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("off-the-heel");
    }

    @Test
    void tellsFromTheOtherSizesToWhatALearnerRounds() {
        // 75 / 20 = 3.75; twice that is 7.5, or 8 where whole millimetres are set off
        Map<String, Double> whole = exactLengths(DRAWING);
        whole.replaceAll((key, size) -> size < 1.5 ? size : (double) Math.round(size));
        double rounded = confidence(whole, "support.depth", 8.0);
        assertThat(rounded).isGreaterThan(confidence(exactLengths(DRAWING), "support.depth", 8.0));
    }

    private static double confidence(Map<String, Double> drawn, String key, double measured) {
        return Slips.of(DRAWING, drawn).fitting(key, measured, 0.05, 0.5).stream()
                .filter(fit -> fit.slip().equals("double-size"))
                .mapToDouble(SlipFit::confidence)
                .sum();
    }

    @Test
    void takesALengthWithAFreeEndForAStraySooner() {
        // both 5 mm asked: the gutter's side ends free, the plate's ends at lines
        assertThat(densityWithoutSlip("gutter.depth", 5.9)).isGreaterThan(densityWithoutSlip("wall-plate.width", 5.9));
        assertThat(densityWithoutSlip("gutter.depth", 5)).isLessThan(densityWithoutSlip("wall-plate.width", 5));
    }

    private static double densityWithoutSlip(String key, double measured) {
        return Hand.of(DRAWING, Map.of(), key).density(DRAWING.value(key).orElseThrow(), measured, 0.05);
    }

    @Test
    void namesWidthAndDepthSwappedOnlyTogether() {
        // the gutter is 125 wide and 100 deep, 6.25 and 5 on paper
        Slips both = Slips.of(DRAWING, Map.of("gutter.width", 5.0, "gutter.depth", 6.2));
        assertThat(both.fitting("gutter.width", 5.0, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("width-depth-swapped");
        // the purlins are 50 wide and 75 deep, 2.5 and 3.75 on paper, the latter drawn 4
        assertThat(Slips.of(DRAWING, Map.of("support.width", 4.0, "support.depth", 2.5)).fitting("support.width", 4.0, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("width-depth-swapped");
        Slips onlyOne = Slips.of(DRAWING, Map.of("gutter.width", 5.0, "gutter.depth", 5.0));
        assertThat(onlyOne.fitting("gutter.width", 5.0, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .doesNotContain("width-depth-swapped");
    }

    @Test
    void believesASlipTheMoreTheTruerTheHand() {
        // 7.5 cos 26 = 6.74: a plumb depth, or a hand that strays by half a millimetre
        Map<String, Double> exact = exactLengths(DRAWING);
        Map<String, Double> stray = new HashMap<>(exact);
        stray.replaceAll((key, size) -> size - 0.45);
        assertThat(Slips.of(DRAWING, exact).fitting("rafter.depth", 6.8, 0.05, 0.5))
                .extracting(SlipFit::slip)
                .containsExactly("depth-plumb");
        assertThat(Slips.of(DRAWING, stray).fitting("rafter.depth", 6.8, 0.05, 0.5))
                .isEmpty();
    }

    @Test
    void tellsACauseFromAValueThatIsOnlyOff() {
        assertThat(SLIPS.fitting("rafter.overhang", 18, 0.05, 1)).allMatch(SlipFit::namesACause);
        // no corner of the plate lies there: that it misses the heel point is all that can be said
        assertThat(SLIPS.fitting("rafter.heel-offset", 6, 0.05, 1)).noneMatch(SlipFit::namesACause);
    }

    @Test
    void statesHowSureItIs() {
        double near = SLIPS.fitting("support.spacing", 50.1, 0.05, 1).get(0).confidence();
        assertThat(near).isBetween(0.8, 1.0);
        assertThat(SLIPS.fitting("support.spacing", 48.9, 0.05, 1))
                .allSatisfy(fit -> assertThat(fit.confidence()).isLessThan(near));
    }

    @Test
    void tellsApartWhatLiesFarEnoughApart() {
        // 45 + 2.5 = 47.5 clear, 45 / cos 26 = 50.07 level: 2.6 apart
        assertThat(SLIPS.fitting("support.spacing", 48.2, 0.05, 2))
                .extracting(SlipFit::slip)
                .containsExactly("spacing-clear");
    }

    @Test
    void goesByThePitchThatWasDrawn() {
        // drawn at 40 degrees: 45 / cos 40 = 58.74 measured level
        assertThat(SLIPS.fitting("support.spacing", 58.7, 0.05, 1))
                .extracting(SlipFit::slip)
                .doesNotContain("spacing-level");
        assertThat(Slips.of(DRAWING, Map.of("roof.pitch", 40.0)).fitting("support.spacing", 58.7, 0.05, 1))
                .extracting(SlipFit::slip)
                .containsExactly("spacing-level");
    }

    @Test
    void speaksToTheLearnerWithItsOwnValues() {
        assertThat(SLIPS.fitting("support.spacing", 50.1, 0.05, 1).get(0).sentence())
                .isEqualTo("The purlins are 50.1 mm apart along the slope; 45 mm is asked. It seems that 45 mm was"
                        + " measured level: step the spacing off along the rafter's top.");
        assertThat(SLIPS.fitting("fascia.depth", 7.5, 0.05, 0.5).get(0).sentence())
                .contains("It has the depth of the tie beam");
        assertThat(SLIPS.fitting("drawing.eaves", "left").orElseThrow().sentence())
                .startsWith("The eaves are on the left; the task asks for them on the right.");
        assertThat(SLIPS.fitting("support.crossed", false).orElseThrow().slip()).isEqualTo("not-crossed");
        assertThat(SLIPS.fitting("beam-filling.hatched", false).orElseThrow().slip())
                .isEqualTo("not-hatched");
        assertThat(SLIPS.fitting("drawing.eaves", "right")).isEmpty();
        assertThat(SLIPS.fitting("support.crossed", true)).isEmpty();
    }

    @Test
    void leavesNoPlaceOfASentenceOpen() {
        assertThat(DRAWING.slips()).isNotEmpty().allSatisfy(slip -> assertThat(slip.sentence())
                .doesNotContain("{", "  ")
                .endsWith("."));
        assertThat(SlipCatalogue.all())
                .allSatisfy(slip -> assertThat(slip.name()).isNotBlank());
    }

    @Test
    void tellsWhichQuantityFollowsFromWhich() {
        Dependencies dependencies = Dependencies.of(Tasks.boathouse());
        assertThat(dependencies.followsFrom("support.spacing")).isEmpty();
        assertThat(dependencies.followsFrom("support.count")).contains("roof.pitch", "support.spacing");
        assertThat(dependencies.causes("covering.gap")).containsExactly("support.depth");
        assertThat(Dependencies.of(Tasks.accepted(Tasks.LEAN_TO)).causes("high-plate.rise"))
                .contains("roof.pitch");
    }

    @Test
    void solvesAgainForWhatWasDrawn() {
        ExpectedDrawing drawn = Solver.solveAsDrawn(
                Tasks.boathouse(),
                Map.of("roof.pitch", 36.0, "support.depth", 5.0, "support.spacing", 30.0, "wall-plate.width", 50.0));
        assertThat(((Expected.Length) drawn.value("covering.gap").orElseThrow()).exactMm())
                .isCloseTo(5, within(1e-9));
        // slope (113.5 + 26.5) / cos 36 = 173.05; (173.05 - 2.5) / 30 = 5.7: 5 spaces and one more
        assertThat(((Expected.Count) drawn.value("support.count").orElseThrow()).number())
                .isEqualTo(6);
        // a plate of 50 mm on a wall of 11.5 cannot be built: it stays as asked
        assertThat(((Expected.Length) drawn.value("wall-plate.width").orElseThrow()).exactMm())
                .isEqualTo(5);
    }

    @Test
    void tellsAWholeDrawingAtAnotherScale() {
        Map<String, Double> measured = new HashMap<>();
        DRAWING.values().forEach(value -> {
            if (value instanceof Expected.Length length) {
                measured.put(length.key(), length.exactMm() * 20 / 25 + 0.3);
            }
        });
        assertThat(DrawnScale.of(DRAWING, measured)).contains(new Scale(25));
        measured.replaceAll((key, value) -> value * 25 / 20);
        assertThat(DrawnScale.of(DRAWING, measured)).isEmpty();
        assertThat(DrawnScale.of(DRAWING, Map.of("rafter.overhang", 40.0))).isEmpty();
    }

    @Test
    void tellsTheSheetsThatWereDrawnAtAnotherScaleFromTheOthers() throws java.io.IOException {
        for (TruthSheets.Sheet sheet : TruthSheets.readable()) {
            Map<String, Double> measured = new HashMap<>();
            for (Map.Entry<String, JsonNode> value : sheet.truth().get("truth").properties()) {
                if (value.getValue().has("value")
                        && value.getValue().get("value").isNumber()) {
                    measured.put(value.getKey(), value.getValue().get("value").asDouble());
                }
            }
            List<String> scales = sheet.truth()
                    .get("slips")
                    .valueStream()
                    .map(slip -> slip.get("slip").asString())
                    .filter(slip -> slip.startsWith("scale-"))
                    .map(slip -> slip.substring("scale-".length()))
                    .toList();
            assertThat(DrawnScale.of(Solver.solve(sheet.task()), measured).map(Scale::toString).stream())
                    .as(sheet.name())
                    .containsExactlyElementsOf(scales);
        }
    }
}
