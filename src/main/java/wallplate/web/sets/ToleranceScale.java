package wallplate.web.sets;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import wallplate.marking.Verdict;
import wallplate.records.MarkEntry;
import wallplate.web.page.PlotAxis;

/**
 * The measured values of one criterion along a scale, with the tolerance drawn over them as a dimension.
 *
 * <p>Each value is a sign whose shape tells its verdict. All places are units of the drawing, {@link #WIDTH} wide; values
 * far off the tolerance stand at the scale's ends. Signs of one verdict are one path, because a class of two hundred has
 * thousands of them on one page.
 *
 * @param from the lower edge of what is accepted
 * @param to the upper edge
 * @param signs an SVG path for each verdict that occurs, by its word
 * @param steps how many values lie between the marks of the axis, for those who do not see the plot
 */
record ToleranceScale(
        double from,
        double to,
        double fromX,
        double toX,
        double height,
        Map<String, String> signs,
        List<PlotAxis.Tick> ticks,
        List<Step> steps) {

    static final double WIDTH = 640;
    static final double MARGIN = 34;
    private static final double TOP = 44;
    private static final double FOOT = 31;
    /** Signs become smaller where many values are alike, down to the last of these. */
    private static final double[] SPACINGS = {13, 10, 8, 6, 5, 4};

    private static final double HIGHEST_STACK = 150;
    private static final double SIGN = 0.42;
    private static final double MOST_TOLERANCES = 6;
    private static final int TICKS = 6;

    /**
     * The values from one to below another.
     *
     * @param from empty where there is no lower end
     * @param to empty where there is no upper end
     * @param missed how many of the values did not meet the criterion
     */
    record Step(Optional<Double> from, Optional<Double> to, int values, int missed) {}

    /** Empty where the criterion is no length or angle, or nobody's value was measured. */
    static Optional<ToleranceScale> of(List<MarkEntry> marks) {
        List<MarkEntry> measured = marks.stream()
                .filter(mark -> mark.reading().measured().isPresent()
                        && mark.reading().expected().isPresent()
                        && mark.tolerance().isPresent())
                .sorted(Comparator.comparingDouble(ToleranceScale::value).thenComparingLong(MarkEntry::sheetId))
                .toList();
        String unit = measured.isEmpty() ? "" : measured.get(0).reading().unit();
        return unit.equals("mm") || unit.equals("deg") ? Optional.of(draw(measured)) : Optional.empty();
    }

    private static double value(MarkEntry mark) {
        return mark.reading().measured().orElseThrow();
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
        double spacing = spacing(marks, axis);
        double height = TOP + Math.min(HIGHEST_STACK, stack(marks, axis, spacing) * spacing) + FOOT;
        return new ToleranceScale(
                from,
                to,
                axis.at(from),
                axis.at(to),
                height,
                signs(marks, axis, spacing, height - FOOT),
                axis.ticks(TICKS),
                steps(marks, axis));
    }

    private static double furthest(List<MarkEntry> marks, double from, double to) {
        return marks.stream()
                .mapToDouble(ToleranceScale::value)
                .flatMap(value -> DoubleStream.of(from - value, value - to))
                .max()
                .orElse(0);
    }

    private static double spacing(List<MarkEntry> marks, PlotAxis axis) {
        for (double spacing : SPACINGS) {
            if (stack(marks, axis, spacing) * spacing <= HIGHEST_STACK) {
                return spacing;
            }
        }
        return SPACINGS[SPACINGS.length - 1];
    }

    /** The most values that stand over one place. */
    private static int stack(List<MarkEntry> marks, PlotAxis axis, double spacing) {
        Map<Long, Integer> stacked = new HashMap<>();
        marks.forEach(mark -> stacked.merge(column(mark, axis, spacing), 1, Integer::sum));
        return stacked.values().stream().mapToInt(Integer::intValue).max().orElse(1);
    }

    private static long column(MarkEntry mark, PlotAxis axis, double spacing) {
        return Math.round(axis.at(value(mark)) / spacing);
    }

    private static Map<String, String> signs(List<MarkEntry> marks, PlotAxis axis, double spacing, double ground) {
        double rise = Math.min(spacing, HIGHEST_STACK / stack(marks, axis, spacing));
        Map<Long, Integer> stacked = new HashMap<>();
        Map<Verdict, String> shapes = new EnumMap<>(Verdict.class);
        for (Verdict verdict : Verdict.values()) {
            shapes.put(verdict, shape(verdict, tenth(spacing * SIGN)));
        }
        Map<Verdict, StringBuilder> paths = new EnumMap<>(Verdict.class);
        for (MarkEntry mark : marks) {
            long column = column(mark, axis, spacing);
            int above = stacked.merge(column, 1, Integer::sum) - 1;
            paths.computeIfAbsent(mark.verdict(), verdict -> new StringBuilder())
                    .append('M')
                    .append(column * spacing)
                    .append(' ')
                    .append(tenth(ground - above * rise))
                    .append(shapes.get(mark.verdict()));
        }
        Map<String, String> signs = new HashMap<>();
        paths.forEach((verdict, path) -> signs.put(verdict.word(), path.toString()));
        return signs;
    }

    /**
     * A disc met the criterion, a cross did not, a lozenge is consistent working, a square is for the teacher.
     *
     * @param half of its width
     */
    private static String shape(Verdict verdict, double half) {
        String shape =
                switch (verdict) {
                    case MET -> "m-%1$s 0a%1$s %1$s 0 1 0 %2$s 0a%1$s %1$s 0 1 0-%2$s 0z";
                    case NOT_MET -> "m-%1$s-%1$sl%2$s %2$sm0-%2$sl-%2$s %2$s";
                    case CARRIED -> "m-%1$s 0l%1$s-%1$sl%1$s %1$sl-%1$s %1$sz";
                    case UNDECIDED -> "m-%1$s-%1$sh%2$sv%2$sh-%2$sz";
                };
        return shape.formatted(half, tenth(2 * half));
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }

    private static List<Step> steps(List<MarkEntry> marks, PlotAxis axis) {
        List<Optional<Double>> edges = new ArrayList<>(List.of(Optional.empty()));
        axis.ticks(TICKS).forEach(tick -> edges.add(Optional.of(tick.value())));
        edges.add(Optional.empty());
        List<Step> steps = new ArrayList<>();
        for (int index = 0; index + 1 < edges.size(); index++) {
            Optional<Double> low = edges.get(index);
            Optional<Double> high = edges.get(index + 1);
            List<MarkEntry> inside = marks.stream()
                    .filter(mark -> low.filter(edge -> value(mark) < edge).isEmpty())
                    .filter(mark -> high.filter(edge -> value(mark) >= edge).isEmpty())
                    .toList();
            int missed = (int) inside.stream().filter(mark -> mark.verdict() == Verdict.NOT_MET).count();
            if (!inside.isEmpty()) {
                steps.add(new Step(low, high, inside.size(), missed));
            }
        }
        return steps;
    }
}
