package wallplate.web.page;

import java.util.ArrayList;
import java.util.List;

/**
 * One axis of a plot: values from one to another on a line of the drawing.
 *
 * @param lowest the value at {@code from}
 * @param highest the value at {@code to}, above the lowest
 * @param from a place in the drawing's units; above {@code to} where values grow upwards
 */
public record PlotAxis(double lowest, double highest, double from, double to) {

    /** A mark on the axis with its value. */
    public record Tick(double at, double value) {}

    /** The place of a value to a tenth of a unit; values beyond the axis stand at its end. */
    public double at(double value) {
        double clamped = Math.max(lowest, Math.min(highest, value));
        return Math.round(10 * (from + (to - from) * (clamped - lowest) / (highest - lowest))) / 10.0;
    }

    public boolean isBeyond(double value) {
        return value < lowest || value > highest;
    }

    /** Round values, about so many of them. */
    public List<Tick> ticks(int wanted) {
        double step = roundStep((highest - lowest) / wanted);
        List<Tick> ticks = new ArrayList<>();
        for (double number = Math.ceil(lowest / step - 1e-9); number * step <= highest + 1e-9 * step; number++) {
            ticks.add(new Tick(at(number * step), number * step));
        }
        return List.copyOf(ticks);
    }

    private static double roundStep(double wanted) {
        double power = Math.pow(10, Math.floor(Math.log10(wanted)));
        double lead = wanted / power;
        return power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10);
    }
}
