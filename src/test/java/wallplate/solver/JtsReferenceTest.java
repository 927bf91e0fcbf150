package wallplate.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collection;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import wallplate.geometry.Segment;
import wallplate.task.DrawingTask;
import wallplate.task.RandomTasks;
import wallplate.task.Tasks;

/**
 * The eaves section built a second way, from rectangles turned and cut by the JTS Topology Suite, and compared with the
 * solver's lines.
 */
class JtsReferenceTest {

    private static final GeometryFactory JTS = new GeometryFactory();
    private static final double FAR = 5000;

    static Stream<DrawingTask> tasks() {
        return Stream.concat(
                Stream.of(Tasks.boathouse(), Tasks.boathouse("plate-flush: inner", "plate-flush: centre")),
                LongStream.range(1000, 1030).mapToObj(RandomTasks::eavesSection));
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void cutsTheRafterFromATurnedPlank(DrawingTask task) {
        Roof roof = new Roof(task);
        Geometry rafter =
                roof.slopingStrip(0, roof.mm("rafter.depth")).intersection(roof.between(roof.cutX(), roof.insideX()));
        assertThat(rafter.getNumPoints()).isEqualTo(5);
        onBoundary(rafter, roof.line("rafter", "bottom"), roof.line("rafter", "top"), roof.line("rafter", "cut"));
        double drawn = roof.line("rafter", "bottom").length()
                + roof.line("rafter", "top").length()
                + roof.line("rafter", "cut").length();
        double insideCut = roof.mm("rafter.depth") / Math.cos(roof.pitch());
        assertThat(drawn + insideCut).isCloseTo(rafter.getLength(), within(1e-6));
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void cutsTheTieBeamUnderTheRafter(DrawingTask task) {
        Roof roof = new Roof(task);
        if (!task.sizes().has("tie-beam")) {
            return;
        }
        Geometry beam = box(0, 0, roof.insideX(), roof.mm("tie-beam.depth")).intersection(roof.slopingStrip(-FAR, 0));
        onBoundary(beam, roof.line("tie-beam", "bottom"));
        roof.lines("tie-beam", "top").forEach(top -> {
            onBoundary(beam, top);
            assertThat(beam.getLength())
                    .isGreaterThan(roof.line("tie-beam", "bottom").length() + top.length());
        });
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void cutsTheWallUnderTheRafter(DrawingTask task) {
        Roof roof = new Roof(task);
        double bottom = roof.line("wall", "outer").start().y();
        double outer = roof.line("wall", "outer").start().x();
        double inner = roof.line("wall", "inner").start().x();
        Geometry wall =
                box(outer, bottom, inner, -roof.mm("wall-plate.depth")).intersection(roof.slopingStrip(-FAR, 0));
        onBoundary(wall, roof.line("wall", "outer"), roof.line("wall", "inner"), roof.line("wall", "top"));
        double outline = Stream.of("outer", "inner", "top", "splay")
                        .flatMap(edge -> roof.lines("wall", edge))
                        .mapToDouble(Segment::length)
                        .sum()
                + inner
                - outer;
        assertThat(outline).isCloseTo(wall.getLength(), within(1e-6));
        Geometry room = wall.buffer(1e-6);
        assertThat(roof.lines("wall", "hatch")).isNotEmpty().allMatch(stroke -> room.covers(string(stroke)));
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void standsTheSupportsBetweenRafterAndCovering(DrawingTask task) {
        Roof roof = new Roof(task);
        Geometry gap = roof.slopingStrip(roof.mm("rafter.depth"), roof.mm("rafter.depth") + roof.mm("support.depth"))
                .buffer(1e-6);
        double along = (roof.cutX() / Math.cos(roof.pitch())) + roof.mm("rafter.depth") * Math.tan(roof.pitch());
        List<Segment> lows = roof.lines("support", "low").toList();
        for (int i = 0; i < lows.size(); i++) {
            double from = along + i * roof.mm("support.spacing");
            Geometry box = roof.turned(box(
                    from,
                    roof.mm("rafter.depth"),
                    from + roof.mm("support.width"),
                    roof.mm("rafter.depth") + roof.mm("support.depth")));
            assertThat(gap.covers(box)).isTrue();
            onBoundary(box, lows.get(i));
            Segment diagonal = roof.lines("support", "cross1").toList().get(i);
            assertThat(diagonal.length())
                    .isCloseTo(Math.hypot(roof.mm("support.width"), roof.mm("support.depth")), within(1e-9));
            assertThat(box.buffer(1e-6).covers(string(diagonal))).isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void closesTheCoveringsOutlineAtTheBreakLine(DrawingTask task) {
        Roof roof = new Roof(task);
        Polygonizer polygonizer = new Polygonizer();
        Stream.of("bottom", "top", "end").forEach(edge -> polygonizer.add(string(roof.line("covering", edge))));
        Segment top = roof.line("covering", "top");
        Segment bottom = roof.line("covering", "bottom");
        polygonizer.add(string(new Segment(bottom.end(), top.end())));
        Collection<?> outlines = polygonizer.getPolygons();
        assertThat(outlines).hasSize(1);
        Polygon outline = (Polygon) outlines.iterator().next();
        double thickness = roof.mm("covering.thickness");
        assertThat(outline.getArea()).isCloseTo((top.length() + bottom.length()) / 2 * thickness, within(1e-6));
        assertThat(string(top).distance(string(bottom))).isCloseTo(thickness, within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void carriesThePostsUpToTheRafter(DrawingTask task) {
        Roof roof = new Roof(task);
        LineString underside = string(roof.line("rafter", "bottom"));
        double foot = task.sizes().has("tie-beam") ? roof.mm("tie-beam.depth") : 0;
        roof.lines("post", "outer").forEach(side -> {
            Geometry upright = JTS.createLineString(new Coordinate[] {
                new Coordinate(side.start().x(), foot),
                new Coordinate(side.start().x(), FAR)
            });
            Coordinate head = upright.intersection(underside).getCoordinate();
            assertThat(side.end().y()).isCloseTo(head.y, within(1e-6));
            assertThat(side.start().y()).isCloseTo(foot, within(1e-9));
        });
    }

    @ParameterizedTest
    @MethodSource("tasks")
    void hatchesTheBeamFillingOutsideTheSupports(DrawingTask task) {
        Roof roof = new Roof(task);
        if (roof.lines("beam-filling", "inner").findAny().isEmpty()) {
            return;
        }
        double outer = roof.line("wall", "outer").start().x();
        Geometry filling = roof.slopingStrip(
                        roof.mm("rafter.depth"), roof.mm("rafter.depth") + roof.mm("support.depth"))
                .intersection(roof.between(outer, 0));
        onBoundary(filling, roof.line("beam-filling", "inner"));
        Geometry room = filling.buffer(1e-6);
        List<Segment> lows = roof.lines("support", "low").toList();
        List<Segment> highs = roof.lines("support", "high").toList();
        roof.lines("beam-filling", "hatch").forEach(stroke -> {
            assertThat(room.covers(string(stroke))).isTrue();
            for (int i = 0; i < lows.size(); i++) {
                Geometry timber = JTS.createMultiPoint(new org.locationtech.jts.geom.Point[] {
                            point(lows.get(i).start()),
                            point(lows.get(i).end()),
                            point(highs.get(i).start()),
                            point(highs.get(i).end())
                        })
                        .convexHull()
                        .buffer(-1e-6);
                assertThat(timber.intersects(string(stroke))).isFalse();
            }
        });
    }

    private static void onBoundary(Geometry outline, Segment... lines) {
        Geometry boundary = outline.getBoundary().buffer(1e-6);
        assertThat(lines).allMatch(line -> boundary.covers(string(line)));
    }

    private static LineString string(Segment segment) {
        return JTS.createLineString(new Coordinate[] {
            new Coordinate(segment.start().x(), segment.start().y()),
            new Coordinate(segment.end().x(), segment.end().y())
        });
    }

    private static org.locationtech.jts.geom.Point point(wallplate.geometry.Point point) {
        return JTS.createPoint(new Coordinate(point.x(), point.y()));
    }

    private static Geometry box(double fromX, double fromY, double toX, double toY) {
        return JTS.toGeometry(new Envelope(fromX, toX, fromY, toY));
    }

    /** Straight from the task's sizes, with none of the solver's geometry. */
    private record Roof(DrawingTask task, ExpectedDrawing solved) {

        Roof(DrawingTask task) {
            this(task, Solver.solve(task));
        }

        double mm(String key) {
            return task.sizes().number(key) / task.scale().denominator();
        }

        double pitch() {
            return Math.toRadians(task.sizes().number("pitch"));
        }

        double setIn() {
            double spare = mm("wall.thickness") - mm("wall-plate.width");
            String flush = task.sizes().word("wall.plate-flush").orElseThrow();
            return flush.equals("outer") ? 0 : flush.equals("centre") ? spare / 2 : spare;
        }

        double cutX() {
            return -setIn() - mm("rafter.overhang");
        }

        double insideX() {
            return mm("break-line.inside") - setIn();
        }

        Geometry turned(Geometry geometry) {
            return AffineTransformation.rotationInstance(pitch()).transform(geometry);
        }

        Geometry slopingStrip(double from, double to) {
            return turned(box(-FAR, from, FAR, to));
        }

        Geometry between(double fromX, double toX) {
            return box(fromX, -FAR, toX, FAR);
        }

        Segment line(String part, String edge) {
            return lines(part, edge).findFirst().orElseThrow(() -> new AssertionError("no " + part + " " + edge));
        }

        Stream<Segment> lines(String part, String edge) {
            return solved.lines().stream()
                    .filter(line -> line.part().equals(part) && line.edge().equals(edge))
                    .map(DrawnLine::segment);
        }
    }
}
