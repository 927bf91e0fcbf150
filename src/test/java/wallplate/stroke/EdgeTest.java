package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;

/** Distances between drawn edges, worked by hand. */
class EdgeTest {

    private static final Vector RIGHT = new Vector(1, 0);
    private static final Vector UP = new Vector(0, 1);

    @Test
    void parallelEdgesLieTheirDistanceApart() {
        Edge lower = edge(new Point(0, 10), RIGHT, 0, 40);
        Edge upper = edge(new Point(5, 17.5), RIGHT, 0, 40);
        assertThat(lower.distanceTo(upper, RIGHT)).isCloseTo(7.5, within(1e-9));
        assertThat(upper.distanceTo(lower, RIGHT)).isCloseTo(-7.5, within(1e-9));
    }

    @Test
    void uprightToTheRightIsNegativeSeenUpwards() {
        Edge left = edge(new Point(10, 0), UP, 0, 30);
        Edge right = edge(new Point(21.5, 0), UP, 5, 25);
        assertThat(left.distanceTo(right, UP)).isCloseTo(-11.5, within(1e-9));
    }

    @Test
    void distanceIsTheMeanOverTheSharedExtent() {
        Edge level = edge(new Point(0, 0), RIGHT, 0, 40);
        // Rises 1 in 10 from y = 2 at x = 0; shared from x = 10 to x = 30, where it lies from 3 to 5 above.
        Line rising = new Line(new Point(0, 2), new Vector(10, 1));
        double perX = Math.sqrt(1.01);
        Edge part = new Edge(rising, 10 * perX, 30 * perX, 0.01, 0, 100, 1);
        assertThat(level.distanceTo(part, RIGHT)).isCloseTo(4, within(1e-9));
    }

    @Test
    void distanceWithoutSharedExtentIsTakenBetween() {
        Edge level = edge(new Point(0, 0), RIGHT, 0, 10);
        Line rising = new Line(new Point(0, 0), new Vector(10, 1));
        double perX = Math.sqrt(1.01);
        Edge beyond = new Edge(rising, 30 * perX, 40 * perX, 0.01, 0, 100, 1);
        assertThat(level.distanceTo(beyond, RIGHT)).isCloseTo(2, within(1e-9));
    }

    @Test
    void directionOfTheEdgeItselfDoesNotMatter() {
        Edge lower = edge(new Point(0, 10), RIGHT, 0, 40);
        Edge backwards = edge(new Point(40, 13), RIGHT.negated(), 0, 40);
        assertThat(lower.distanceTo(backwards, RIGHT)).isCloseTo(3, within(1e-9));
    }

    @Test
    void answersWhereItIsAtAHeight() {
        Edge slope = edge(new Point(10, 5), new Vector(2, 1), 0, 20);
        assertThat(slope.yAt(20)).isCloseTo(10, within(1e-9));
        assertThat(slope.xAt(10)).isCloseTo(20, within(1e-9));
    }

    @Test
    void keepsItsMeasureWhenExtended() {
        Edge edge = edge(new Point(0, 10), RIGHT, 5, 15);
        Edge other = edge(new Point(0, 12), RIGHT, 0, 40);
        Edge longer = edge.extendedTo(2, 30, other.line());
        assertThat(longer.from()).isCloseTo(2, within(1e-9));
        assertThat(longer.to()).isCloseTo(30, within(1e-9));
        assertThat(longer.offsetSigmaMm()).isEqualTo(edge.offsetSigmaMm());
        assertThat(edge.offsetBy(3).middle().y()).isCloseTo(13, within(1e-9));
    }

    private static Edge edge(Point origin, Vector direction, double from, double to) {
        return new Edge(new Line(origin, direction), from, to, 0.01, 0, 100, 1);
    }
}
