package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.task.Details;
import wallplate.task.DrawingTask;
import wallplate.task.EavesSide;
import wallplate.task.RandomTasks;
import wallplate.task.Scale;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** What holds for every task, tried on random ones; the seed stands in the test's name. */
class SolverPropertiesTest {

    private static final double TOUCH = 1e-9;

    static Stream<Arguments> randomTasks() {
        return LongStream.range(0, 50)
                .boxed()
                .flatMap(seed -> Stream.of(
                        Arguments.of("eaves, seed " + seed, RandomTasks.eavesSection(seed)),
                        Arguments.of("lean-to, seed " + seed, RandomTasks.leanTo(seed))));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void partsThatMustTouchTouch(String seed, DrawingTask task) {
        Drawing drawing = new Drawing(Solver.solve(task));
        Segment underside = drawing.line("rafter", "bottom");
        Segment rafterTop = drawing.line("rafter", "top");
        Segment coveringUnderside = drawing.line("covering", "bottom");
        assertThat(underside.line().distanceTo(Point.ORIGIN)).isCloseTo(0, within(TOUCH));
        assertThat(drawing.line("wall-plate", "outer").end()).isEqualTo(Point.ORIGIN);
        assertThat(drawing.line("wall-plate", "inner").start().y())
                .isCloseTo(drawing.line("wall", "inner").end().y(), within(TOUCH));
        assertThat(drawing.line("rafter", "cut").end()).isEqualTo(rafterTop.start());
        drawing.all("support", "low").forEach(low -> {
            assertThat(rafterTop.distanceTo(low.start())).isCloseTo(0, within(TOUCH));
            assertThat(coveringUnderside.line().distanceTo(low.end())).isCloseTo(0, within(TOUCH));
        });
        drawing.find("support", "low").ifPresent(toe -> near(toe.start(), rafterTop.start()));
        near(drawing.line("covering", "end").start(), coveringUnderside.start());
        near(
                drawing.line("covering", "end").end(),
                drawing.line("covering", "top").start());
        drawing.find("fascia", "top").ifPresent(top -> {
            assertThat(coveringUnderside.line().distanceTo(top.start())).isCloseTo(0, within(TOUCH));
            assertThat(drawing.line("fascia", "inner").start().x())
                    .isCloseTo(rafterTop.start().x(), within(TOUCH));
        });
        drawing.find("gutter", "inner")
                .ifPresent(inner -> assertThat(inner.start().x())
                        .isCloseTo(
                                drawing.find("fascia", "outer")
                                        .orElse(drawing.line("rafter", "cut"))
                                        .start()
                                        .x(),
                                within(TOUCH)));
        drawing.find("barge-board", "top").ifPresent(top -> assertThat(
                        drawing.line("covering", "top").line().distanceTo(top.start()))
                .isCloseTo(0, within(TOUCH)));
        drawing.find("tie-beam", "top")
                .ifPresent(top ->
                        assertThat(underside.line().distanceTo(top.start())).isCloseTo(0, within(TOUCH)));
        drawing.all("post", "outer").forEach(side -> {
            assertThat(underside.line().distanceTo(side.end())).isCloseTo(0, within(TOUCH));
            drawing.find("tie-beam", "top")
                    .ifPresent(top -> assertThat(top.distanceTo(side.start())).isCloseTo(0, within(TOUCH)));
        });
        drawing.all("brander", "low").forEach(side -> {
            assertThat(side.end().y()).isZero();
            assertThat(drawing.line("ceiling", "top").distanceTo(side.start())).isCloseTo(0, within(TOUCH));
        });
        drawing.find("beam-filling", "outer").ifPresent(outer -> {
            near(outer.start(), drawing.line("wall", "outer").end());
            assertThat(coveringUnderside.line().distanceTo(outer.end())).isCloseTo(0, within(TOUCH));
        });
        drawing.find("high-plate", "inner").ifPresent(inner -> {
            assertThat(underside.line().distanceTo(inner.end())).isCloseTo(0, within(TOUCH));
            near(inner.start(), drawing.line("high-wall", "inner").end());
        });
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void theOtherHandIsTheSameDrawingMirrored(String seed, DrawingTask task) {
        EavesSide other = task.eaves() == EavesSide.LEFT ? EavesSide.RIGHT : EavesSide.LEFT;
        ExpectedDrawing asked = Solver.solve(task);
        ExpectedDrawing mirrored = Solver.solve(copy(task, task.scale(), other));
        assertThat(mirrored.lines()).isEqualTo(asked.lines());
        assertThat(withoutHand(mirrored)).isEqualTo(withoutHand(asked));
        assertThat(mirrored.value("drawing.eaves")).contains(new Expected.Word("drawing.eaves", other.word()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void doublingTheScaleDoublesThePaper(String seed, DrawingTask task) {
        ExpectedDrawing single = Solver.solve(task);
        ExpectedDrawing twice = Solver.solve(copy(task, new Scale(task.scale().denominator() / 2), task.eaves()));
        int compared = 0;
        for (Expected value : single.values()) {
            if (value instanceof Expected.Length length) {
                Expected.Length other =
                        (Expected.Length) twice.value(length.key()).orElseThrow();
                assertThat(other.exactMm()).as(length.key()).isCloseTo(2 * length.exactMm(), within(TOUCH));
                compared++;
            } else if (value instanceof Expected.Count) {
                assertThat(twice.value(value.key()).map(count -> ((Expected.Count) count).number()))
                        .contains(((Expected.Count) value).number());
            }
        }
        assertThat(compared).isGreaterThan(8);
        Drawing larger = new Drawing(twice);
        for (DrawnLine line : single.lines()) {
            boolean shownAsRoomAllows =
                    line.part().contains("wall") && !line.part().equals("wall-plate")
                            || line.role() == LineRole.HATCH
                            || line.role() == LineRole.BREAK
                            || line.edge().equals("top") && line.part().equals("barge-board");
            if (!shownAsRoomAllows) {
                Segment doubled = larger.line(line.part(), line.index(), line.edge());
                near(
                        doubled.start(),
                        new Point(
                                2 * line.segment().start().x(),
                                2 * line.segment().start().y()));
                near(
                        doubled.end(),
                        new Point(
                                2 * line.segment().end().x(),
                                2 * line.segment().end().y()));
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void writesAndReadsWithoutLoss(String seed, DrawingTask task) {
        assertThat(TaskFile.read(TaskFile.write(task))).isEqualTo(new TaskReading.Accepted(task));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void solvesTheSameAsDrawnWhereAllIsDrawnRight(String seed, DrawingTask task) {
        ExpectedDrawing asked = Solver.solve(task);
        Map<String, Double> drawn = new HashMap<>();
        asked.values().forEach(value -> {
            if (value instanceof Expected.Length length) {
                drawn.put(length.key(), length.exactMm());
            }
        });
        ExpectedDrawing again = Solver.solveAsDrawn(task, drawn);
        for (Expected value : asked.values()) {
            if (value instanceof Expected.Length length) {
                assertThat(((Expected.Length) again.value(length.key()).orElseThrow()).exactMm())
                        .isCloseTo(length.exactMm(), within(TOUCH));
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("randomTasks")
    void givesOnlyFiniteLinesAndValues(String seed, DrawingTask task) {
        ExpectedDrawing drawing = Solver.solve(task);
        assertThat(drawing.lines()).allSatisfy(line -> {
            assertThat(line.segment().length()).isPositive().isFinite();
            assertThat(line.segment().midpoint().x() + line.segment().midpoint().y())
                    .isFinite();
        });
        assertThat(drawing.slips()).allSatisfy(slip -> assertThat(slip.value()).isFinite());
        assertThat(drawing.values()).allSatisfy(value -> {
            if (value instanceof Expected.Length length) {
                assertThat(Math.abs(length.drawnMm() - length.exactMm())).isLessThanOrEqualTo(0.5 + TOUCH);
                assertThat(length.deviation(length.exactMm())).isZero();
                assertThat(Slips.of(drawing).fitting(length.key(), length.exactMm(), 0.05, 0.5))
                        .isEmpty();
            }
        });
        assertThat(Solver.construction(task).stream().flatMap(step -> step.linedIn().stream()))
                .containsExactlyInAnyOrderElementsOf(drawing.lines());
        assertThat(Solver.derived(task))
                .allSatisfy(value -> assertThat(value.value()).isFinite());
    }

    @ParameterizedTest(name = "{0}, seed {1}")
    @MethodSource("tasksAtTheEndsOfTheirRanges")
    void solvesTheOddestTasksThatAreAcceptedWithoutFloodingThePaper(String detail, long seed, DrawingTask task) {
        ExpectedDrawing drawing = Solver.solve(task);
        assertThat(drawing.lines().size()).isBetween(10, 5_000);
        assertThat(drawing.lines().stream().mapToDouble(line -> line.segment().length()))
                .allMatch(length -> length > 0 && Double.isFinite(length));
        assertThat(Solver.construction(task)).isNotEmpty();
        assertThat(Solver.derived(task))
                .allSatisfy(value -> assertThat(value.value()).isFinite());
        assertThat(BriefCheck.check(task))
                .allSatisfy(advice -> assertThat(advice.source()).isNotBlank());
    }

    static Stream<Arguments> tasksAtTheEndsOfTheirRanges() {
        return Details.all().stream().flatMap(detail -> LongStream.range(0, 40)
                .mapToObj(seed -> Arguments.of(detail.id(), seed, RandomTasks.atTheEndsOfItsRanges(detail, seed))));
    }

    private static List<Expected> withoutHand(ExpectedDrawing drawing) {
        return drawing.values().stream()
                .filter(value -> !(value instanceof Expected.Word))
                .toList();
    }

    private static DrawingTask copy(DrawingTask task, Scale scale, EavesSide eaves) {
        return new DrawingTask(
                task.id(), task.title(), task.detail(), scale, eaves, task.sizes(), task.sheet(), task.marking());
    }

    private static void near(Point one, Point other) {
        assertThat(one.distanceTo(other)).isCloseTo(0, within(1e-8));
    }

    private record Drawing(ExpectedDrawing solved) {

        Segment line(String part, String edge) {
            return line(part, 0, edge);
        }

        Segment line(String part, int index, String edge) {
            return find(part, index, edge)
                    .orElseThrow(() -> new AssertionError("there is no " + part + " " + index + " " + edge));
        }

        Optional<Segment> find(String part, String edge) {
            return find(part, 0, edge);
        }

        private Optional<Segment> find(String part, int index, String edge) {
            return solved.lines().stream()
                    .filter(line -> line.part().equals(part)
                            && line.index() == index
                            && line.edge().equals(edge))
                    .map(DrawnLine::segment)
                    .findFirst();
        }

        Stream<Segment> all(String part, String edge) {
            return solved.lines().stream()
                    .filter(line -> line.part().equals(part) && line.edge().equals(edge))
                    .map(DrawnLine::segment);
        }
    }
}
