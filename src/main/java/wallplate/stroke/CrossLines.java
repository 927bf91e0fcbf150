package wallplate.stroke;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/**
 * Looks in a narrow band for the short lines that cross it: the sides of purlins and branders, the faces of a plate,
 * the top of a wall. They are too short to be found on the whole page, but inside the band they are the only columns
 * that are dark from one side to the other.
 */
public final class CrossLines {

    private static final double STEP_MM = 0.1;
    private static final double APART_MM = 0.45;
    /** Construction lines stay below this share of an outline's ink. */
    private static final double OUTLINE_PART = 0.5;

    private final InkImage ink;
    private final double outlineInk;

    public CrossLines(InkImage ink, double outlineInk) {
        this.ink = ink;
        this.outlineInk = outlineInk;
    }

    /**
     * A line that crosses the band.
     *
     * @param position along the band's base line, where the crossing line's own foot stands
     * @param ink mean ink from one side of the band to the other
     * @param coverage the share of the way on which there is ink of an outline
     */
    public record Crossing(double position, double ink, double coverage) {}

    /**
     * The lines that cross a band beside a base line, by position.
     *
     * @param base the band's base line
     * @param from where the band begins along it
     * @param to where it ends
     * @param across the direction of the lines looked for
     * @param low how far from the base line, in that direction, reading begins, as a function of the position
     * @param high how far it ends
     * @param leastCoverage the share of the way on which there must be ink of an outline
     */
    public List<Crossing> find(
            Line base,
            double from,
            double to,
            Vector across,
            DoubleUnaryOperator low,
            DoubleUnaryOperator high,
            double leastCoverage) {
        int steps = Math.max(0, (int) Math.round((to - from) / STEP_MM));
        double[] mean = new double[steps];
        double[] coverage = new double[steps];
        Vector direction = across.unit();
        for (int step = 0; step < steps; step++) {
            double position = from + (step + 0.5) * STEP_MM;
            Point foot = base.pointAt(position);
            read(foot, direction, low.applyAsDouble(position), high.applyAsDouble(position), step, mean, coverage);
        }
        return peaks(from, mean, coverage, leastCoverage);
    }

    private void read(
            Point foot, Vector direction, double low, double high, int step, double[] mean, double[] coverage) {
        Vector beside = direction.leftNormal();
        int samples = Math.max(3, (int) Math.round((high - low) / STEP_MM));
        double sum = 0;
        int inked = 0;
        for (int sample = 0; sample < samples; sample++) {
            double distance = low + (sample + 0.5) * (high - low) / samples;
            double x = foot.x() + direction.x() * distance;
            double y = foot.y() + direction.y() * distance;
            double here = ink.at(x, y);
            sum += here;
            double near = Math.max(
                    here,
                    Math.max(
                            ink.at(x + beside.x() * 0.1, y + beside.y() * 0.1),
                            ink.at(x - beside.x() * 0.1, y - beside.y() * 0.1)));
            if (near >= OUTLINE_PART * outlineInk) {
                inked++;
            }
        }
        mean[step] = sum / samples;
        coverage[step] = inked / (double) samples;
    }

    private List<Crossing> peaks(double from, double[] mean, double[] coverage, double leastCoverage) {
        List<Crossing> peaks = new ArrayList<>();
        for (int step = 1; step < mean.length - 1; step++) {
            double smooth = smooth(mean, step);
            if (coverage[step] < leastCoverage || smooth < smooth(mean, step - 1) || smooth <= smooth(mean, step + 1)) {
                continue;
            }
            double before = smooth(mean, step - 1);
            double after = smooth(mean, step + 1);
            double curvature = before - 2 * smooth + after;
            double shift = curvature == 0 ? 0 : 0.5 * (before - after) / curvature;
            peaks.add(new Crossing(from + (step + 0.5 + shift) * STEP_MM, smooth, coverage[step]));
        }
        peaks.sort(Comparator.comparingDouble((Crossing peak) -> peak.coverage() * peak.ink())
                .reversed()
                .thenComparingDouble(Crossing::position));
        List<Crossing> kept = new ArrayList<>();
        for (Crossing peak : peaks) {
            if (kept.stream().noneMatch(other -> Math.abs(other.position() - peak.position()) < APART_MM)) {
                kept.add(peak);
            }
        }
        kept.sort(Comparator.comparingDouble(Crossing::position));
        return kept;
    }

    private static double smooth(double[] values, int step) {
        double left = values[Math.max(0, step - 1)];
        double right = values[Math.min(values.length - 1, step + 1)];
        return (left + 2 * values[step] + right) / 4;
    }
}
