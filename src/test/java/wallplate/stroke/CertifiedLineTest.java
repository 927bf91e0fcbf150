package wallplate.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.sheet.InkImage;

/**
 * The line fit against certified values: NIST Statistical Reference Datasets, linear regression, data set Norris.
 *
 * <p>The fit reads ink, not numbers. So the outside library is first held to the certified values, then ink is put where
 * the data set's points lie beside the certified line, and the fit must give what the library gives for those points.
 */
class CertifiedLineTest {

    private static final double CERTIFIED_INTERCEPT = -0.262323073774029;
    private static final double CERTIFIED_SLOPE = 1.00211681802045;
    private static final double CERTIFIED_RESIDUAL_DEVIATION = 0.884796396144373;

    /** The data set's pairs, y and then x. */
    private static final double[][] NORRIS = {
        {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
        {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
        {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
        {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
        {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9},
        {0.2, 0.5},
    };

    private static final double SPACING_MM = 1.5;
    /** Small enough for no point to count as an outlier. */
    private static final double MM_PER_RESIDUAL = 0.03;

    @Test
    void theOutsideLibraryGivesTheCertifiedValues() {
        SimpleRegression regression = norris();
        assertThat(regression.getIntercept()).isCloseTo(CERTIFIED_INTERCEPT, within(1e-10));
        assertThat(regression.getSlope()).isCloseTo(CERTIFIED_SLOPE, within(1e-12));
        assertThat(Math.sqrt(regression.getMeanSquareError())).isCloseTo(CERTIFIED_RESIDUAL_DEVIATION, within(1e-10));
    }

    @Test
    void inkAtTheCertifiedResidualsGivesTheLibrarysLine() {
        Line certified = Line.at(new Point(40, 40), Math.toDegrees(Math.atan(CERTIFIED_SLOPE)));
        InkCanvas canvas = new InkCanvas(80, 80, 12, 1);
        SimpleRegression regression = new SimpleRegression();
        for (int index = 0; index < NORRIS.length; index++) {
            double residual = NORRIS[index][0] - CERTIFIED_INTERCEPT - CERTIFIED_SLOPE * NORRIS[index][1];
            double along = (index - (NORRIS.length - 1) / 2.0) * SPACING_MM;
            double across = MM_PER_RESIDUAL * residual;
            canvas.dot(certified.offset(across).pointAt(along), 0.15, 200);
            regression.addData(along, across);
        }
        InkImage ink = canvas.clean();
        double half = NORRIS.length * SPACING_MM / 2;
        Edge edge = new EdgeFit(ink, 200).fit(certified, -half, half, 3);

        double offset = certified.distanceTo(edge.middle());
        double turned = Angles.inclination(edge.line().inclinationDegrees() - certified.inclinationDegrees());
        assertThat(offset).isCloseTo(regression.getIntercept(), within(0.002));
        assertThat(turned).isCloseTo(Math.toDegrees(Math.atan(regression.getSlope())), within(0.005));
        assertThat(Math.abs(Math.toDegrees(regression.getSlope()))).as("there is something to find").isGreaterThan(0.005);
    }

    private static SimpleRegression norris() {
        SimpleRegression regression = new SimpleRegression();
        for (double[] pair : NORRIS) {
            regression.addData(pair[1], pair[0]);
        }
        return regression;
    }
}
