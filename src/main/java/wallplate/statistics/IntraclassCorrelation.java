package wallplate.statistics;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * ICC(2,1): how far the marks of one marker, taken from all who might mark, tell sheets apart as any other would.
 *
 * <p>Two-way random effects, absolute agreement, a single marker: a marker who is generous to every sheet lowers it.
 * Shrout and Fleiss (1979), "Intraclass correlations: uses in assessing rater reliability", Psychological Bulletin 86,
 * 420-428; the interval as case 2, ICC(A,1), of McGraw and Wong (1996), "Forming inferences about some intraclass
 * correlation coefficients", Psychological Methods 1, 30-46.
 *
 * @param estimate the correlation and its interval
 * @param betweenSheets mean square between sheets
 * @param betweenMarkers mean square between markers
 * @param residual mean square of what is left
 */
public record IntraclassCorrelation(Estimate estimate, double betweenSheets, double betweenMarkers, double residual) {

    /** Sums of squares below this part of the marks' own squares are rounding, not variation. */
    private static final double ROUNDING = 1e-12;

    /** The correlation of two markers' marks for the same sheets in the same order. */
    public static Statistic<IntraclassCorrelation> of(List<Double> first, List<Double> second) {
        Pairs.requireSameSize(first, second);
        double[][] marks = new double[first.size()][];
        for (int sheet = 0; sheet < marks.length; sheet++) {
            marks[sheet] = new double[] {first.get(sheet), second.get(sheet)};
        }
        return of(marks);
    }

    /**
     * The correlation of any number of markers' marks.
     *
     * @param marks by sheet, then by marker; every sheet marked by every marker
     */
    public static Statistic<IntraclassCorrelation> of(double[][] marks) {
        if (marks.length < 2) {
            return Statistic.unknown("it takes at least two sheets");
        }
        int markers = marks[0].length;
        for (double[] sheet : marks) {
            if (sheet.length != markers) {
                throw new IllegalArgumentException("a sheet with %d marks beside one with %d; right would be a mark of every marker"
                        .formatted(sheet.length, markers));
            }
        }
        if (markers < 2) {
            return Statistic.unknown("it takes at least two markers");
        }
        return MeanSquares.of(marks).correlation();
    }

    /** The two-way analysis of variance. */
    private record MeanSquares(int sheets, int markers, double between, double ofMarkers, double residual) {

        static MeanSquares of(double[][] marks) {
            int sheets = marks.length;
            int markers = marks[0].length;
            double[] markerMeans = new double[markers];
            double[] sheetMeans = new double[sheets];
            double mean = 0;
            for (int sheet = 0; sheet < sheets; sheet++) {
                for (int marker = 0; marker < markers; marker++) {
                    markerMeans[marker] += marks[sheet][marker] / sheets;
                    sheetMeans[sheet] += marks[sheet][marker] / markers;
                    mean += marks[sheet][marker] / (sheets * markers);
                }
            }
            double between = 0;
            double ofMarkers = 0;
            double residual = 0;
            double ofMarks = 0;
            for (int sheet = 0; sheet < sheets; sheet++) {
                for (int marker = 0; marker < markers; marker++) {
                    between += square(sheetMeans[sheet] - mean);
                    ofMarkers += square(markerMeans[marker] - mean);
                    ofMarks += square(marks[sheet][marker]);
                    residual += square(marks[sheet][marker] - sheetMeans[sheet] - markerMeans[marker] + mean);
                }
            }
            double nothing = ROUNDING * ofMarks;
            return new MeanSquares(
                    sheets,
                    markers,
                    cleared(between, nothing) / (sheets - 1),
                    cleared(ofMarkers, nothing) / (markers - 1),
                    cleared(residual, nothing) / ((sheets - 1) * (markers - 1)));
        }

        private static double square(double value) {
            return value * value;
        }

        private static double cleared(double squares, double nothing) {
            return squares <= nothing ? 0 : squares;
        }

        Statistic<IntraclassCorrelation> correlation() {
            double whole = between
                    + (markers - 1) * residual
                    + markers * (ofMarkers - residual) / sheets;
            if (between == 0 && residual == 0) {
                return Statistic.unknown("no marker told one sheet from another: the marks of each do not vary");
            }
            if (whole <= 0) {
                return Statistic.unknown("the marks vary less between sheets than within them, to where the correlation has no meaning");
            }
            double value = (between - residual) / whole;
            return Statistic.known(
                    new IntraclassCorrelation(new Estimate(value, interval(value)), between, ofMarkers, residual));
        }

        /** Written without dividing by the residual, so that markers who differ by a constant have an interval too. */
        private Statistic<Interval> interval(double value) {
            double markersPart = markers * value * ofMarkers;
            double residualPart = (sheets * (1 + (markers - 1) * value) - markers * value) * residual;
            double divisor = (sheets - 1) * square(markersPart) + square(residualPart);
            if (divisor == 0) {
                return Statistic.unknown("the markers agree on every sheet, so that nothing shows how far it may vary");
            }
            double freedom = (markers - 1) * (sheets - 1) * square(markersPart + residualPart) / divisor;
            double below = quantile(sheets - 1, freedom);
            double above = quantile(freedom, sheets - 1);
            double others = markers * ofMarkers + (markers * sheets - markers - sheets) * residual;
            double lower = sheets * (between - below * residual) / (below * others + sheets * between);
            double upper = sheets * (above * between - residual) / (others + sheets * above * between);
            if (!Double.isFinite(lower) || !Double.isFinite(upper) || lower > upper) {
                return Statistic.unknown("too few sheets stand behind it");
            }
            return Statistic.known(new Interval(Math.max(-1, lower), Math.min(1, upper)));
        }

        private static double quantile(double numeratorFreedom, double denominatorFreedom) {
            return new FDistribution(numeratorFreedom, denominatorFreedom).inverseCumulativeProbability(Interval.UPPER_TAIL);
        }
    }
}
