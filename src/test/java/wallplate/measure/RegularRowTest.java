package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import wallplate.stroke.CrossLines.Crossing;

/** Purlins found among the lines that cross the band between rafter and covering: 3 mm wide, 43 mm apart. */
class RegularRowTest {

    private static final double OUTLINE_INK = 150;

    private final Expectation expectation = new Expectation(MeasureTasks.solved(MeasureTasks.NET_LOFT));

    @Test
    void findsEveryBox() {
        assertThat(positions(box(10), box(53), box(96))).containsExactly(10, 53, 96);
    }

    @Test
    void diagonalsInsideABoxAreNotItsSides() {
        assertThat(positions(box(10), box(53), List.of(weak(11.4), weak(54.4)))).containsExactly(10, 53);
    }

    @Test
    void letteringAcrossTheBandIsNoBox() {
        List<Crossing> lettering =
                List.of(letter(24), letter(25.3), letter(27.1), letter(28.2), letter(30.4), letter(31.9), letter(34));
        assertThat(positions(box(10), box(53), box(96), lettering)).containsExactly(10, 53, 96);
    }

    @Test
    void aMissingBoxLeavesTheOthersInTheRow() {
        assertThat(positions(box(10), box(96))).containsExactly(10, 96);
    }

    @Test
    void findsASpacingThatNobodyForesaw() {
        assertThat(positions(box(10), box(47.5), box(85))).containsExactly(10, 47.5, 85);
    }

    @Test
    void findsBoxesOfTheWrongWidth() {
        List<Crossing> columns = sorted(
                List.of(strong(10), strong(14.2), strong(53), strong(57.2), strong(96), strong(100.2)));
        assertThat(row(columns)).hasSize(3).allSatisfy(sides ->
                assertThat(columns.get(sides[1]).position() - columns.get(sides[0]).position()).isBetween(4.1, 4.3));
    }

    @Test
    void bearsWithABoxSetOutALittleWrong() {
        assertThat(positions(box(10), box(53.5), box(96))).containsExactly(10, 53.5, 96);
    }

    @Test
    void findsASingleBox() {
        assertThat(positions(box(10))).containsExactly(10);
    }

    @Test
    void findsNoBoxAmongNoLines() {
        assertThat(row(List.of())).isEmpty();
    }

    @Test
    void findsNoBoxInALoneLine() {
        assertThat(row(List.of(strong(40)))).isEmpty();
    }

    /** A leader stands beside it, and might be its other side. */
    @Test
    void knowsHowManyBoxesThereAreWhereItDoesNotKnowHowWideTheyAre() {
        List<Crossing> columns = List.of(strong(10), strong(13), strong(14.1));

        RegularRow.Odds odds = new RegularRow(columns, OUTLINE_INK, expectation, "support", ChoiceLog.NONE).choose().odds();

        assertThat(odds.count()).isGreaterThan(Choice.SURE);
        assertThat(odds.spacing()).isGreaterThan(Choice.SURE);
        assertThat(odds.width()).isLessThan(Choice.SURE);
    }

    /** At a tenth of the scale a box's place and the next lie closer together than a box may stand from its place. */
    @Test
    void endsWhereBoxesWouldStandCloserThanTheyMayStray() {
        List<Crossing> columns = sorted(List.of(strong(10), strong(10.3), strong(11), strong(11.3), strong(12), strong(12.3)));

        List<int[]> boxes = new RegularRow(columns, OUTLINE_INK, expectation.atScale(0.1), "support", ChoiceLog.NONE)
                .choose()
                .boxes();

        assertThat(boxes).isNotEmpty().hasSizeLessThan(columns.size());
    }

    @SafeVarargs
    private double[] positions(List<Crossing>... columns) {
        List<Crossing> all = new ArrayList<>();
        for (List<Crossing> some : columns) {
            all.addAll(some);
        }
        List<Crossing> sorted = sorted(all);
        return row(sorted).stream().mapToDouble(sides -> sorted.get(sides[0]).position()).toArray();
    }

    private List<int[]> row(List<Crossing> columns) {
        return new RegularRow(columns, OUTLINE_INK, expectation, "support", ChoiceLog.NONE).choose().boxes();
    }

    private static List<Crossing> sorted(List<Crossing> columns) {
        return columns.stream().sorted(Comparator.comparingDouble(Crossing::position)).toList();
    }

    private static List<Crossing> box(double low) {
        return List.of(strong(low), strong(low + 3));
    }

    private static Crossing strong(double position) {
        return new Crossing(position, OUTLINE_INK, 1);
    }

    private static Crossing weak(double position) {
        return new Crossing(position, 0.4 * OUTLINE_INK, 0.55);
    }

    private static Crossing letter(double position) {
        return new Crossing(position, 0.5 * OUTLINE_INK, 0.6);
    }
}
