package wallplate.web.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import wallplate.analysis.Growth;
import wallplate.web.page.PlotAxis;

/**
 * A learner's part of the marks from task to task beside the median of the class. Places are units of the drawing.
 *
 * @param learner filled dots with a full line
 * @param median open squares with a dashed line
 */
record GrowthPlot(PlotAxis tasks, PlotAxis parts, List<Dot> learner, List<Dot> median) {

    static final double WIDTH = 460;
    static final double HEIGHT = 260;
    private static final double LEFT = 48;
    private static final double RIGHT = 24;
    private static final double TOP = 16;
    private static final double BOTTOM = 36;

    /** @param task the number of the task, from 1 */
    record Dot(int task, double x, double y, double part) {}

    /** Where the learner's figure stands: on the side of the dot that the median's line does not cross. */
    public double figureY(Dot dot) {
        boolean below = median.stream().anyMatch(other -> other.task() == dot.task() && other.y() < dot.y() - 1);
        return below ? dot.y() + 19 : dot.y() - 9;
    }

    /** Empty where fewer than two tasks have a known part. */
    static Optional<GrowthPlot> of(Growth growth) {
        PlotAxis tasks = new PlotAxis(0.5, growth.steps().size() + 0.5, LEFT, WIDTH - RIGHT);
        PlotAxis parts = new PlotAxis(0, 1, HEIGHT - BOTTOM, TOP);
        List<Dot> learner = dots(growth, Growth.Step::part, tasks, parts);
        return learner.size() < 2
                ? Optional.empty()
                : Optional.of(new GrowthPlot(
                        tasks, parts, learner, dots(growth, Growth.Step::classMedian, tasks, parts)));
    }

    private static List<Dot> dots(
            Growth growth, Function<Growth.Step, OptionalDouble> value, PlotAxis tasks, PlotAxis parts) {
        List<Dot> dots = new ArrayList<>();
        for (int task = 1; task <= growth.steps().size(); task++) {
            OptionalDouble part = value.apply(growth.steps().get(task - 1));
            if (part.isPresent()) {
                dots.add(new Dot(task, tasks.at(task), parts.at(part.getAsDouble()), part.getAsDouble()));
            }
        }
        return dots;
    }

    public double right() {
        return tasks.to();
    }

    public double bottom() {
        return parts.from();
    }

    /** The points of a line through dots, as SVG has them. */
    private static String line(List<Dot> dots) {
        return String.join(" ", dots.stream().map(dot -> dot.x() + "," + dot.y()).toList());
    }

    public String learnerLine() {
        return line(learner);
    }

    public String medianLine() {
        return line(median);
    }
}
