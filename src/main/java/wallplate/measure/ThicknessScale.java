package wallplate.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;

/** The scale at which a drawing was made, told from its long lines before anything else is read. */
final class ThicknessScale {

    /** How far a thickness may lie from what a scale makes of it: a share of it, or this much where it is thin. */
    private static final double AGREEING_SHARE = 0.14;

    private static final double AGREEING_MM = 0.25;
    /** The logarithm of a factor that cannot come from careless drawing: 1.2. */
    private static final double CLEARLY_ANOTHER = 0.18;

    private final RoofLines roof;
    private final DrawingView view;
    private final Expectation expectation;

    /** @param expectation what the task asks for, at its own scale */
    ThicknessScale(RoofLines roof, DrawingView view, Expectation expectation) {
        this.roof = roof;
        this.view = view;
        this.expectation = expectation;
    }

    /**
     * By how much the whole drawing is larger than the task asks for: 1 where its thicknesses do not agree on another
     * scale.
     */
    double factor() {
        List<Ratio> ratios = slopeRatios();
        addRatio(ratios, "tie-beam.depth", roof.tieBeamBottom(), roof.tieBeamTop(), Level.RIGHT);
        addRatio(ratios, "ceiling.drop", roof.ceilingTop(), roof.tieBeamBottom(), Level.RIGHT);
        if (!expectation.asks("tie-beam.depth") && !expectation.asks("ceiling.drop")) {
            return ofSlopes();
        }
        return ratios.size() < 4 ? 1 : agreed(ratios, Math.max(4, ratios.size() - 1));
    }

    /** The same from the sloping lines alone, which must all agree. */
    double ofSlopes() {
        List<Ratio> ratios = slopeRatios();
        return ratios.size() < 3 ? 1 : agreed(ratios, ratios.size());
    }

    private List<Ratio> slopeRatios() {
        List<Ratio> ratios = new ArrayList<>();
        addRatio(ratios, "rafter.depth", roof.rafterBottom(), roof.rafterTop(), view.slope());
        addRatio(ratios, "covering.gap", roof.rafterTop(), roof.coveringBottom(), view.slope());
        addRatio(ratios, "covering.thickness", roof.coveringBottom(), roof.coveringTop(), view.slope());
        return ratios;
    }

    /** A thickness as drawn and as asked, in millimetres on paper. */
    private record Ratio(double drawnMm, double askedMm) {

        double log() {
            return Math.log(Math.max(drawnMm, 0.1) / askedMm);
        }

        boolean agreesWith(double factor) {
            double there = factor * askedMm;
            return Math.abs(drawnMm - there) <= Math.max(AGREEING_SHARE * there, AGREEING_MM);
        }
    }

    /** The median factor where it is clearly not 1 and enough of the thicknesses agree with it, else 1. */
    private static double agreed(List<Ratio> ratios, int enough) {
        double[] logs = ratios.stream().mapToDouble(Ratio::log).sorted().toArray();
        double median = logs[logs.length / 2];
        double factor = Math.exp(median);
        long agreeing = ratios.stream().filter(ratio -> ratio.agreesWith(factor)).count();
        return Math.abs(median) > CLEARLY_ANOTHER && agreeing >= enough ? factor : 1;
    }

    private void addRatio(List<Ratio> ratios, String key, Optional<Edge> low, Optional<Edge> high, Vector along) {
        if (low.isPresent() && high.isPresent() && expectation.asks(key)) {
            ratios.add(new Ratio(low.get().distanceTo(high.get(), along), expectation.exactOr(key, 1)));
        }
    }
}
