package wallplate.web.moderation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import wallplate.moderation.AgreementReport;
import wallplate.moderation.PairedTotal;
import wallplate.statistics.PairedDifference;
import wallplate.web.page.PlotAxis;

/**
 * The difference of two totals against their mean, with the mean difference and the limits of agreement: the plot of
 * Bland and Altman (1986). Places are units of the drawing.
 *
 * @param spots one for each pair of totals; sheets with the same two totals share one
 */
record DifferencePlot(
        PlotAxis marks,
        PlotAxis difference,
        double zeroY,
        double meanY,
        double lowerY,
        double upperY,
        PairedDifference found,
        List<Spot> spots) {

    static final double WIDTH = 460;
    static final double HEIGHT = 300;
    private static final double LEFT = 44;
    private static final double RIGHT = 96;
    private static final double TOP = 14;
    private static final double BOTTOM = 40;

    /**
     * A pair of totals.
     *
     * @param label the places in the sample of the sheets that stand here
     */
    record Spot(double x, double y, Label label) {}

    /** Empty where there are too few sheets for limits. */
    static Optional<DifferencePlot> of(AgreementReport report) {
        return report.total().difference().told().map(found -> draw(found, report.totals()));
    }

    private static DifferencePlot draw(PairedDifference found, List<PairedTotal> totals) {
        double lowest = totals.stream().mapToDouble(PairedTotal::mean).min().orElse(0);
        double highest = totals.stream().mapToDouble(PairedTotal::mean).max().orElse(1);
        double furthest = totals.stream().mapToDouble(total -> Math.abs(total.difference())).max().orElse(0);
        double reach = 1.15 * Math.max(0.5, Math.max(furthest,
                Math.max(Math.abs(found.limits().lower()), Math.abs(found.limits().upper()))));
        PlotAxis marks = new PlotAxis(Math.floor(lowest) - 0.5, Math.ceil(highest) + 0.5, LEFT, WIDTH - RIGHT);
        PlotAxis difference = new PlotAxis(-reach, reach, HEIGHT - BOTTOM, TOP);
        return new DifferencePlot(
                marks,
                difference,
                difference.at(0),
                difference.at(found.mean()),
                difference.at(found.limits().lower()),
                difference.at(found.limits().upper()),
                found,
                spots(totals, marks, difference));
    }

    private static List<Spot> spots(List<PairedTotal> totals, PlotAxis marks, PlotAxis difference) {
        Map<String, List<PairedTotal>> together = new TreeMap<>();
        totals.forEach(total -> together
                .computeIfAbsent(total.first() + " " + total.second(), pair -> new ArrayList<>())
                .add(total));
        LabelPlaces labels = new LabelPlaces();
        together.values().forEach(same -> labels.keepFree(x(same, marks), y(same, difference)));
        return together.values().stream()
                .map(same -> new Spot(
                        x(same, marks),
                        y(same, difference),
                        labels.place(x(same, marks), y(same, difference), places(same))))
                .toList();
    }

    private static double x(List<PairedTotal> same, PlotAxis marks) {
        return marks.at(same.get(0).mean());
    }

    private static double y(List<PairedTotal> same, PlotAxis difference) {
        return difference.at(same.get(0).difference());
    }

    private static String places(List<PairedTotal> same) {
        return String.join(
                ", ", same.stream().map(total -> Integer.toString(total.place())).toList());
    }

    public double right() {
        return marks.to();
    }

    public double bottom() {
        return difference.from();
    }
}
