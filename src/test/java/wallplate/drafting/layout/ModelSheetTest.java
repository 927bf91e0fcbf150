package wallplate.drafting.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Geometry;
import wallplate.drafting.DraftingTasks;
import wallplate.drafting.DrawingOptions;
import wallplate.drafting.Figures;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Picture;
import wallplate.drafting.pdf.FaceWidths;
import wallplate.solver.ConstructionStep;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;
import wallplate.solver.Solver;
import wallplate.task.DrawingTask;
import wallplate.task.RandomTasks;
import wallplate.task.Tasks;

/** The model answer's composition, looked at with JTS: what a teacher would send back is found here. */
class ModelSheetTest {

    private static final int RANDOM_TASKS = 40;

    static List<DrawingTask> tasks() {
        List<DrawingTask> tasks = new ArrayList<>();
        tasks.add(Tasks.boathouse());
        tasks.add(Tasks.accepted(Tasks.LEAN_TO));
        DraftingTasks.ALL.forEach(yaml -> tasks.add(Tasks.accepted(yaml)));
        return tasks;
    }

    /** Random tasks whose drawing and dimensions have room on their sheet; the number is the seed. */
    static Stream<Long> fittingSeeds() {
        return LongStream.range(1, 1000).boxed().filter(seed -> fits(random(seed))).limit(RANDOM_TASKS);
    }

    private static DrawingTask random(long seed) {
        return seed % 4 == 0 ? RandomTasks.leanTo(seed) : RandomTasks.eavesSection(seed);
    }

    private static boolean fits(DrawingTask task) {
        Box lines = new DetailLines(Solver.solve(task).lines()).bounds();
        Box frame = SheetPlan.frame(task.sheet());
        return lines.width() + 50 < frame.width() && lines.height() + 100 < frame.height() && lines.height() > 25;
    }

    private static Picture picture(DrawingTask task, DrawingOptions options) {
        return new ModelSheet(Solver.solve(task), options, FaceWidths.shared()).picture();
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void noLineRunsThroughALetter(DrawingTask task) {
        for (Figures figures : Figures.values()) {
            assertThat(InkShapes.throughLetters(picture(task, DrawingOptions.FULL.withFigures(figures))))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("fittingSeeds")
    void noLineRunsThroughALetterOfARandomTask(long seed) {
        assertThat(InkShapes.throughLetters(picture(random(seed), DrawingOptions.FULL))).as("seed %d", seed).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void leadersDoNotCrossEachOther(DrawingTask task) {
        assertThat(crossingLeaders(picture(task, DrawingOptions.FULL))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("fittingSeeds")
    void leadersOfARandomTaskDoNotCrossEachOther(long seed) {
        assertThat(crossingLeaders(picture(random(seed), DrawingOptions.FULL))).as("seed %d", seed).isEmpty();
    }

    private static List<String> crossingLeaders(Picture picture) {
        List<Ink.Stroke> leaders = InkShapes.inks(picture, Ink.Stroke.class).stream()
                .filter(stroke -> stroke.owner().layer() == Layer.LABEL)
                .toList();
        List<String> found = new ArrayList<>();
        for (Ink.Stroke first : leaders) {
            for (Ink.Stroke second : leaders) {
                boolean others = first.owner().part().compareTo(second.owner().part()) < 0;
                if (others && InkShapes.of(first).intersects(InkShapes.of(second))) {
                    found.add(first.owner().part() + " and " + second.owner().part());
                }
            }
        }
        return found;
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void everyPartWithSizesIsLabelledOnce(DrawingTask task) {
        ExpectedDrawing drawing = Solver.solve(task);
        Set<String> drawn = drawing.lines().stream().map(line -> line.part()).collect(Collectors.toCollection(TreeSet::new));
        drawn.remove("break");
        drawn.remove("high-end");
        List<String> labelled = InkShapes.inks(picture(task, DrawingOptions.FULL), Ink.Lettering.class).stream()
                .filter(text -> text.owner().layer() == Layer.LABEL)
                .map(text -> text.owner().part())
                .sorted()
                .toList();
        assertThat(labelled).containsExactlyElementsOf(drawn);
    }

    /** On a crowded sheet a part may have no leader; then it stands with its sizes in the notes under the drawing. */
    @ParameterizedTest
    @MethodSource("fittingSeeds")
    void everyPartOfARandomTaskIsNamedAtALeaderOrInTheNotes(long seed) {
        DrawingTask task = random(seed);
        Picture picture = picture(task, DrawingOptions.FULL);
        List<Ink.Lettering> labels = InkShapes.inks(picture, Ink.Lettering.class).stream()
                .filter(text -> text.owner().layer() == Layer.LABEL)
                .toList();
        Set<String> atLeaders =
                labels.stream().map(text -> text.owner().part()).collect(Collectors.toSet());
        String notes = labels.stream()
                .filter(text -> text.owner().part().isEmpty())
                .map(Ink.Lettering::text)
                .collect(Collectors.joining(" "));
        PartNames names = new PartNames(
                task.sizes(), new SizeFigures(Solver.solve(task), Figures.REAL), false, Set.of());
        assertThat(Solver.solve(task).lines().stream()
                        .filter(line -> line.role() != LineRole.BREAK)
                        .map(line -> line.part())
                        .filter(names::hasSizes)
                        .distinct())
                .as("seed %d, notes: %s", seed, notes)
                .allMatch(part -> atLeaders.contains(part) || notes.contains(names.label(part).split(" ")[0]));
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void everythingStaysOnTheSheet(DrawingTask task) {
        Picture picture = picture(task, DrawingOptions.FULL);
        Geometry sheet = InkShapes.polygon(List.of(
                new wallplate.geometry.Point(0, 0),
                new wallplate.geometry.Point(picture.widthMm(), 0),
                new wallplate.geometry.Point(picture.widthMm(), picture.heightMm()),
                new wallplate.geometry.Point(0, picture.heightMm())));
        assertThat(InkShapes.inks(picture, Ink.Stroke.class)).allMatch(stroke -> sheet.contains(InkShapes.of(stroke)));
        assertThat(InkShapes.inks(picture, Ink.Lettering.class)).allMatch(text -> sheet.contains(InkShapes.of(text)));
    }

    /** Whether or not it fits: a drawing larger than its sheet is drawn as well as can be, with the solver's advice. */
    @ParameterizedTest
    @ValueSource(longs = {1, 101, 201, 301})
    void everyAcceptedTaskIsDrawn(long firstSeed) {
        for (long seed = firstSeed; seed < firstSeed + 40; seed++) {
            DrawingTask task = random(seed);
            Picture picture = picture(task, DrawingOptions.FULL);
            assertThat(InkShapes.inks(picture, Ink.Stroke.class))
                    .as("seed %d", seed)
                    .hasSizeGreaterThan(Solver.solve(task).lines().size());
            List<ConstructionStep> steps = Solver.construction(task);
            StepPicture pictures = new StepPicture(
                    Solver.solve(task), steps, GuideWords.in(Locale.ENGLISH), FaceWidths.shared());
            for (int index = 0; index < steps.size(); index++) {
                assertThat(pictures.of(index).inks()).as("seed %d, step %d", seed, index + 1).isNotEmpty();
            }
        }
    }

    @Test
    void longTitleIsBrokenIntoLinesInsideTheFrame() {
        String title = "Section through the eaves of the long boathouse by the upper lock, with its store and the covered"
                + " landing stage";
        Picture picture = picture(
                Tasks.boathouse("Section through the eaves of the boathouse", title), DrawingOptions.FULL);
        assertThat(InkShapes.throughLetters(picture)).isEmpty();
        assertThat(InkShapes.inks(picture, Ink.Lettering.class))
                .allMatch(text -> InkShapes.of(text).getEnvelopeInternal().getMaxX() < 287
                        && InkShapes.of(text).getEnvelopeInternal().getMinX() > 20);
    }

    @Test
    void sizesAreGivenOnce() {
        List<String> texts = InkShapes.inks(picture(Tasks.boathouse(), DrawingOptions.FULL), Ink.Lettering.class).stream()
                .map(Ink.Lettering::text)
                .toList();
        assertThat(texts).contains("50 × 75 purlins", "rafter", "150", "26°", "25 × 225 fascia board");
        assertThat(texts).doesNotContain("rafter 150 deep");
    }

    @Test
    void paperFiguresAreTheRealOnesDividedByTheScale() {
        // Common practice, no source: at 1:20, 900 is drawn 45 and 400 is drawn 20
        List<String> texts = InkShapes.inks(
                        picture(Tasks.boathouse(), DrawingOptions.FULL.withFigures(Figures.PAPER)), Ink.Lettering.class)
                .stream()
                .map(Ink.Lettering::text)
                .toList();
        assertThat(texts).contains("45", "20", "11.5", "7.5", "2.5 × 3.75 purlins");
    }

    @Test
    void withoutLabelsAndDimensionsOnlyTheDrawingAndItsSheetAreLeft() {
        Picture bare = picture(
                Tasks.boathouse(), DrawingOptions.FULL.withDimensions(false).withLabels(false));
        assertThat(bare.inks())
                .extracting(ink -> ink.owner().layer())
                .doesNotContain(Layer.DIMENSION, Layer.LABEL)
                .contains(Layer.CUT_OUTLINE, Layer.HATCH, Layer.FRAME, Layer.TITLE, Layer.REFERENCE_BAR);
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void theDrawingKeepsItsSizesAndItsHand(DrawingTask task) {
        ExpectedDrawing drawing = Solver.solve(task);
        ModelSheet sheet = new ModelSheet(drawing, DrawingOptions.FULL, FaceWidths.shared());
        List<Ink.Stroke> strokes = InkShapes.inks(sheet.picture(), Ink.Stroke.class);
        double sign = task.eaves() == wallplate.task.EavesSide.RIGHT ? -1 : 1;
        for (int index = 0; index < drawing.lines().size(); index++) {
            var detail = drawing.lines().get(index).segment();
            var placed = strokes.get(index).segment();
            assertThat(placed.start().x() - sheet.heel().x()).isCloseTo(sign * detail.start().x(), within());
            assertThat(placed.end().y() - sheet.heel().y()).isCloseTo(detail.end().y(), within());
        }
    }

    private static org.assertj.core.data.Offset<Double> within() {
        return org.assertj.core.data.Offset.offset(1e-9);
    }

    @Test
    void sharedTasksAreComposedWithoutACollision() throws IOException {
        Path shared = Path.of("../shared/scans/dev");
        Assumptions.assumeTrue(Files.isDirectory(shared), "the shared sheets are not beside this project");
        try (Stream<Path> files = Files.walk(shared, 2)) {
            for (Path file : files.filter(path -> path.endsWith("task.yml")).sorted().toList()) {
                Picture picture = picture(Tasks.accepted(Files.readString(file)), DrawingOptions.FULL);
                assertThat(InkShapes.throughLetters(picture)).as(file.toString()).isEmpty();
                assertThat(crossingLeaders(picture)).as(file.toString()).isEmpty();
            }
        }
    }
}
