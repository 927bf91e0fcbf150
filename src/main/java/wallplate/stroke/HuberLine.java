package wallplate.stroke;

/**
 * A straight line through points, made robust after Huber (P. J. Huber, "Robust estimation of a location parameter", 1964):
 * a point further off than a limit counts less the further off it is.
 *
 * @param offset the line's value at 0
 * @param residual root mean square distance of the points, as far as they count, in the last round
 * @param weight how much the points count together in the last round
 */
public record HuberLine(double offset, double slope, double residual, double weight) {

    private static final int ROUNDS = 4;

    /**
     * Fits the line; there must be two different places with weight.
     *
     * @param x the points' places along the line
     * @param y their values, as many
     * @param weights how much each counts, as many; none where 0
     * @param limit the distance up to which a point counts in full, in the unit of the values
     * @param pull a resistance to any slope, as a sum of squared places that lie on a level line; 0 for none
     */
    public static HuberLine through(double[] x, double[] y, double[] weights, double limit, double pull) {
        double offset = 0;
        double slope = 0;
        double residual = 0;
        double counted = 0;
        for (int round = 0; round < ROUNDS; round++) {
            double w = 0;
            double wx = 0;
            double wy = 0;
            double wxx = 0;
            double wxy = 0;
            double squares = 0;
            for (int i = 0; i < x.length; i++) {
                if (weights[i] == 0) {
                    continue;
                }
                double off = Math.abs(y[i] - offset - slope * x[i]);
                double weight = round == 0 || off <= limit ? 1 : limit / off;
                weight *= weights[i];
                w += weight;
                wx += weight * x[i];
                wy += weight * y[i];
                wxx += weight * x[i] * x[i];
                wxy += weight * x[i] * y[i];
                squares += weight * off * off;
            }
            residual = Math.sqrt(squares / w);
            double spread = wxx - wx * wx / w;
            slope = (wxy - wx * wy / w) / (spread + pull);
            offset = (wy - slope * wx) / w;
            counted = w;
        }
        return new HuberLine(offset, slope, residual, counted);
    }
}
