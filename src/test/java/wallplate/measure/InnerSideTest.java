package wallplate.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/** Gutters with an inner side of their own, drawn over the fascia's face or hardly beside it. */
class InnerSideTest {

    private static final ExpectedDrawing TOLL_HOUSE = MeasureTasks.solved(MeasureTasks.TOLL_HOUSE);

    @ParameterizedTest
    @ValueSource(doubles = {-0.3, -0.2, -0.1, 0, 0.15, 0.3})
    void measuresBothTheGutterAndTheFascia(double besideMm) {
        Segment outer = segment("gutter", "outer");
        Segment bottom = segment("gutter", "bottom");
        double faceX = Math.max(bottom.start().x(), bottom.end().x());
        double bottomY = bottom.start().y();
        double rimY = Math.max(outer.start().y(), outer.end().y());
        List<DrawnLine> lines = new ArrayList<>(TOLL_HOUSE.lines());
        Point foot = new Point(faceX + besideMm, bottomY);
        lines.add(new DrawnLine(
                "gutter", 0, "inner", new Segment(foot, foot.plus(new Vector(0, rimY - bottomY))), LineRole.SEEN_OUTLINE));

        MeasuredSheet sheet = new Measurer().measure(ExactPage.of(TOLL_HOUSE, lines), TOLL_HOUSE);

        assertLength(sheet, "gutter.width", faceX + besideMm - outer.start().x());
        assertLength(sheet, "fascia.thickness", 30 / 20.0);
    }

    private static void assertLength(MeasuredSheet sheet, String key, double expectedMm) {
        Finding finding = sheet.measurement(key).orElseThrow().finding();
        assertThat(finding).as(key).isInstanceOf(Finding.Quantity.class);
        assertThat(((Finding.Quantity) finding).value()).as(key).isCloseTo(expectedMm, within(0.05));
    }

    private static Segment segment(String part, String edge) {
        return MeasureTasks.segment(TOLL_HOUSE, part, edge);
    }
}
