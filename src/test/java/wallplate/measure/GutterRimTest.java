package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Gutters whose free upper end other lines cross, meet or come near. */
class GutterRimTest {

    private static final ExpectedDrawing TOLL_HOUSE = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);

    /** The covering's upper line is drawn on over the gutter, and the rim ends somewhere in its ink. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.3, -0.15, 0, 0.15})
    void saysHowLittleIsKnownOfARimInAnotherLinesInk(double aboveMm) {
        Segment covering = segment("covering", "top");
        double x = segment("gutter", "outer").start().x();
        double lineY = covering.start().y() + (x - covering.start().x()) * covering.vector().y() / covering.vector().x();
        double bottomY = segment("gutter", "bottom").start().y();
        List<DrawnLine> lines = withRimAt(new Point(x, lineY + aboveMm));
        lines.add(new DrawnLine(
                "construction", 0, "line", new Segment(covering.start(), covering.start().plus(direction(covering).times(-25))),
                LineRole.SEEN_OUTLINE));

        Finding depth = depth(lines);

        if (depth instanceof Finding.Quantity quantity) {
            assertThat(Math.abs(quantity.value() - (lineY + aboveMm - bottomY)))
                    .as("error of %s", quantity)
                    .isLessThan(2 * quantity.uncertainty());
        } else {
            assertThat(((Finding.Uncertain) depth).readings()).hasSize(2);
        }
    }

    /** However much of the end another line covers, what stands out above that line shows where the end is. */
    @ParameterizedTest
    @ValueSource(doubles = {0.35, 0.45, 0.55})
    void seesARimThatStandsOutAboveALineThatPassesOverIt(double aboveMm) {
        double x = segment("gutter", "outer").start().x();
        Point crossing = new Point(x, top(segment("gutter", "outer")).y());
        Point rim = crossing.plus(new Vector(0, aboveMm));
        List<DrawnLine> lines = withRimAt(rim);
        lines.add(passing(crossing, direction(segment("covering", "top"))));

        assertDepth(lines, rim.y() - segment("gutter", "bottom").start().y());
    }

    /** The covering's end goes on from the upright, where the covering's underside comes to it, and might be its upper part. */
    @ParameterizedTest
    @ValueSource(doubles = {75, 85, 100, 110})
    void statesNoRimInAnotherLinesCorner(double degrees) {
        Point rim = top(segment("gutter", "outer"));
        Point corner = rim.plus(new Vector(0, 0.2));
        List<DrawnLine> lines = withRimAt(rim);
        Segment end = new Segment(corner, corner.plus(Vector.atDegrees(degrees).times(1.2)));
        Segment underside = new Segment(corner, corner.plus(Vector.atDegrees(20).times(6)));
        lines.add(new DrawnLine("covering", 9, "end", end, LineRole.CUT_OUTLINE));
        lines.add(new DrawnLine("covering", 9, "bottom", underside, LineRole.CUT_OUTLINE));

        assertNotWrong(lines, rim.y() - segment("gutter", "bottom").start().y());
    }

    /** The gutter is as wide as the covering projects, so that its outer line ends somewhere in the covering's end. */
    @ParameterizedTest
    @CsvSource({"0.3, -0.4", "0.3, 0", "0.6, -0.8", "0.6, 0", "0.9, -0.6", "0.9, -0.15"})
    void statesNoRimInTheCoveringsEnd(double partOfEnd, double aboveMm) {
        Segment end = segment("covering", "end");
        Point low = end.start().y() < end.end().y() ? end.start() : end.end();
        Point on = low.plus(top(end).minus(low).times(partOfEnd));
        Segment bottom = segment("gutter", "bottom");
        Point foot = new Point(on.x(), bottom.start().y());
        Point face = new Point(Math.max(bottom.start().x(), bottom.end().x()), foot.y());
        Point rim = on.plus(new Vector(0, aboveMm));
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("gutter") || line.part().equals("barge-board"));
        lines.add(new DrawnLine("gutter", 0, "bottom", new Segment(foot, face), LineRole.SEEN_OUTLINE));
        lines.add(new DrawnLine("gutter", 0, "outer", new Segment(foot, rim), LineRole.SEEN_OUTLINE));

        assertNotWrong(lines, rim.y() - foot.y());
    }

    private static void assertNotWrong(List<DrawnLine> lines, double trueDepthMm) {
        if (depth(lines) instanceof Finding.Quantity quantity) {
            assertThat(Math.abs(quantity.value() - trueDepthMm)).as("error of %s", quantity).isLessThan(0.3);
        } else {
            assertThat(((Finding.Uncertain) depth(lines)).readings()).hasSize(2);
        }
    }

    /** A line hides no more of an upright than its own breadth, whatever direction it runs in. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 20, 40, 50, -30})
    void statesARimThatEndsInALineToThatLinesBreadth(double degrees) {
        Point rim = top(segment("gutter", "outer"));
        List<DrawnLine> lines = withRimAt(rim);
        lines.add(passing(rim, Vector.atDegrees(degrees)));

        Finding depth = depth(lines);

        assertThat(depth).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) depth).value())
                .isCloseTo(rim.y() - segment("gutter", "bottom").start().y(), within(0.25));
        assertThat(((Finding.Quantity) depth).uncertainty()).isLessThan(0.3);
    }

    /** A construction line of which a scan in black and white left only dots. */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.6})
    void takesNoDottedLineThatPassesAboveTheRimForItsEnd(double aboveMm) {
        Point rim = top(segment("gutter", "outer"));
        Vector along = direction(segment("covering", "top"));
        Point above = rim.plus(new Vector(0, aboveMm));
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        for (int dot = -5; dot <= 5; dot++) {
            Point middle = above.plus(along.times(1.1 * dot));
            lines.add(new DrawnLine(
                    "construction", dot + 5, "line", new Segment(middle.plus(along.times(-0.2)), middle.plus(along.times(0.2))),
                    LineRole.HATCH));
        }

        assertDepth(lines, rim.y() - segment("gutter", "bottom").start().y());
    }

    @Test
    void followsAnOuterLineThatLeans() {
        Point rim = top(segment("gutter", "outer")).plus(new Vector(-0.4, 0));

        assertDepth(withRimAt(rim), rim.y() - segment("gutter", "bottom").start().y());
    }

    private static void assertDepth(List<DrawnLine> lines, double depthMm) {
        Finding depth = depth(lines);

        assertThat(depth).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) depth).value()).isCloseTo(depthMm, within(0.1));
    }

    private static Finding depth(List<DrawnLine> lines) {
        MeasuredSheet sheet = new Measurer().measure(ExactPage.of(TOLL_HOUSE, lines), TOLL_HOUSE);
        return sheet.measurement("gutter.depth").orElseThrow().finding();
    }

    private static DrawnLine passing(Point crossing, Vector along) {
        return new DrawnLine(
                "construction", 0, "line", new Segment(crossing.plus(along.times(-2.5)), crossing.plus(along.times(2.5))),
                LineRole.SEEN_OUTLINE);
    }

    private static List<DrawnLine> withRimAt(Point rim) {
        Segment outer = segment("gutter", "outer");
        Point foot = outer.start().y() < outer.end().y() ? outer.start() : outer.end();
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        lines.removeIf(line -> line.part().equals("gutter") && line.edge().equals("outer"));
        lines.add(new DrawnLine("gutter", 0, "outer", new Segment(foot, rim), LineRole.SEEN_OUTLINE));
        return lines;
    }

    private static Point top(Segment upright) {
        return upright.start().y() > upright.end().y() ? upright.start() : upright.end();
    }

    private static Vector direction(Segment segment) {
        Vector vector = segment.vector();
        return (vector.x() < 0 ? vector.times(-1) : vector).unit();
    }

    private static Segment segment(String part, String edge) {
        return MeasureTasks.segment(TOLL_HOUSE, part, edge);
    }
}
