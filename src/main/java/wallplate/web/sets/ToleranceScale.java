package wallplate.web.sets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.web.page.PlotAxis;

/**
 * The measured values of one criterion along a scale, with the tolerance drawn over them as a dimension.
 *
 * <p>All places are units of the drawing, {@link #WIDTH} wide; values far off the tolerance stand at the scale's ends.
 *
 * @param from the lower edge of what is accepted
 * @param to the upper edge
 */
record ToleranceScale(
        double from, double to, double fromX, double toX, double height, List<Dot> dots, List<PlotAxis.Tick> ticks) {

    static final double WIDTH = 640;
    static final double MARGIN = 34;
    static final double TOP = 44;
    private static final double DOT = 13;
    private static final double MOST_TOLERANCES = 6;
    private static final int TICKS = 6;

    /** A sheet's value. */
    record Dot(double x, double y, boolean accepted, long sheetId, double value, boolean beyond) {}

    /** Empty where the criterion is no length or angle, or nobody's value was measured. */
    static Optional<ToleranceScale> of(List<MarkEntry> marks) {
        List<MarkEntry> measured = marks.stream()
                .filter(mark -> mark.reading().measured().isPresent()
                        && mark.reading().expected().isPresent()
                        && mark.tolerance().isPresent())
                .toList();
        if (measured.isEmpty() || !measured.get(0).reading().unit().matches("mm|deg")) {
            return Optional.empty();
        }
        return Optional.of(draw(measured));
    }

    /** From the smallest to the largest. */
    public List<Double> values() {
        return dots.stream().map(Dot::value).toList();
    }

    private static ToleranceScale draw(List<MarkEntry> marks) {
        MarkEntry.Reading asked = marks.get(0).reading();
        double tolerance = marks.get(0).tolerance().orElseThrow();
        double exact = asked.expected().orElseThrow();
        double rounded = asked.expectedRounded().orElse(exact);
        double from = Math.min(exact, rounded) - tolerance;
        double to = Math.max(exact, rounded) + tolerance;
        double reach = Math.min(MOST_TOLERANCES * tolerance, furthest(marks, from, to));
        PlotAxis axis = new PlotAxis(
                from - Math.max(reach, tolerance), to + Math.max(reach, tolerance), MARGIN, WIDTH - MARGIN);
        List<Dot> dots = dots(marks, axis);
        double height = TOP + dots.stream().mapToDouble(Dot::y).max().orElse(0) + DOT + 30;
        return new ToleranceScale(from, to, axis.at(from), axis.at(to), height, dots, axis.ticks(TICKS));
    }

    private static double furthest(List<MarkEntry> marks, double from, double to) {
        return marks.stream()
                .mapToDouble(mark -> mark.reading().measured().orElseThrow())
                .flatMap(value -> DoubleStream.of(from - value, value - to))
                .max()
                .orElse(0);
    }

    private static List<Dot> dots(List<MarkEntry> marks, PlotAxis axis) {
        Map<Long, Integer> stacked = new TreeMap<>();
        List<Dot> dots = new ArrayList<>();
        for (MarkEntry mark : marks.stream().sorted(byValue()).toList()) {
            double value = mark.reading().measured().orElseThrow();
            long column = Math.round(axis.at(value) / DOT);
            int above = stacked.merge(column, 1, Integer::sum) - 1;
            boolean accepted = mark.verdict() == Verdict.MET || mark.verdict() == Verdict.CARRIED;
            dots.add(new Dot(column * DOT, above * DOT, accepted, mark.sheetId(), value, axis.isBeyond(value)));
        }
        return dots;
    }

    private static Comparator<MarkEntry> byValue() {
        return Comparator.comparingDouble((MarkEntry mark) -> mark.reading().measured().orElseThrow())
                .thenComparingLong(MarkEntry::sheetId);
    }
}
