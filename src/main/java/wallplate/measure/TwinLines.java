package wallplate.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.stroke.Edge;
import wallplate.stroke.HuberLine;

/**
 * Two long lines that lie so close together that their ink runs into one, as those of a thin covering do. Each is told from
 * the outer flank of the ink: it lies half a stroke's breadth within that.
 */
final class TwinLines {

    private static final double STATION_MM = 0.5;
    private static final double STEP_MM = 0.05;
    /** How far beside the line that was found the flanks are looked for. */
    private static final double REACH_MM = 1.9;
    /** The paper that may show between the two. */
    private static final double MOST_BETWEEN_MM = 0.45;
    /** Lines retraced lie nearer together than this, and lines further apart are found one by one. */
    private static final double LEAST_APART_MM = 0.45;

    private static final double MOST_APART_MM = 1.25;
    /** The share of the stations at which there must be two. */
    private static final double MOSTLY = 0.6;
    /** A flank further off than this belongs to something that touches the line there. */
    private static final double OFF_MM = 0.15;

    /** How well the breadth of a single stroke is known, one standard deviation. */
    private static final double BREADTH_SIGMA_MM = 0.03;

    private final DrawingView view;
    private final double breadthMm;

    /** @param breadthMm the usual breadth of a stroke */
    TwinLines(DrawingView view, double breadthMm) {
        this.view = view;
        this.breadthMm = breadthMm;
    }

    /** How far from the line at a station the ink ends to its left and right, looking along it. */
    private record Flanks(double position, double right, double left) {}

    /** The two lines of which one was found, or something between them; empty where there is but one. */
    Optional<List<Edge>> parted(Edge found) {
        List<Flanks> flanks = new ArrayList<>();
        int stations = 0;
        for (double position = found.from() + 1; position < found.to() - 1; position += STATION_MM) {
            stations++;
            flanksAt(found.line(), position).filter(this::areOfTwo).ifPresent(flanks::add);
        }
        if (flanks.size() < MOSTLY * stations || flanks.size() < 2) {
            return Optional.empty();
        }
        double[] positions = flanks.stream().mapToDouble(Flanks::position).toArray();
        Edge lower = within(found, positions, flanks.stream().mapToDouble(Flanks::right).toArray(), breadthMm / 2);
        Edge upper = within(found, positions, flanks.stream().mapToDouble(Flanks::left).toArray(), -breadthMm / 2);
        return Optional.of(List.of(lower, upper));
    }

    private boolean areOfTwo(Flanks flanks) {
        double apart = flanks.left - flanks.right - breadthMm;
        return apart > LEAST_APART_MM && apart < MOST_APART_MM;
    }

    private Optional<Flanks> flanksAt(Line line, double position) {
        Point foot = line.pointAt(position);
        Vector across = line.direction().leftNormal();
        double right = flank(foot, across.times(-1));
        double left = flank(foot, across);
        return Double.isNaN(right + left) ? Optional.empty() : Optional.of(new Flanks(position, -right, left));
    }

    /** How far in a direction the ink goes on, but for a narrow strip of paper; not a number where it goes on too far. */
    private double flank(Point foot, Vector direction) {
        double level = DrawingView.OUTLINE_PART * view.outlineInk();
        double end = 0;
        double before = ink(foot, direction, 0);
        for (double off = STEP_MM; off - end < MOST_BETWEEN_MM; off += STEP_MM) {
            if (off > REACH_MM) {
                return Double.NaN;
            }
            double here = ink(foot, direction, off);
            if (here >= level) {
                end = off;
            } else if (before >= level) {
                end = off - STEP_MM + STEP_MM * (before - level) / (before - here);
            }
            before = here;
        }
        return end;
    }

    private double ink(Point foot, Vector direction, double off) {
        Point place = foot.plus(direction.times(off));
        return view.ink().at(place.x(), place.y());
    }

    /** The line that lies so far to the left of a flank. */
    private static Edge within(Edge found, double[] positions, double[] flank, double offset) {
        double middle = (found.from() + found.to()) / 2;
        double[] along = Arrays.stream(positions).map(position -> position - middle).toArray();
        double[] alike = new double[flank.length];
        Arrays.fill(alike, 1);
        HuberLine fitted = HuberLine.through(along, flank, alike, OFF_MM, 0);
        Vector across = found.line().direction().leftNormal();
        Line line = new Line(
                found.line().pointAt(middle).plus(across.times(fitted.offset() + offset)),
                found.line().direction().plus(across.times(fitted.slope())));
        double half = (found.to() - found.from()) / 2;
        double sigma = Math.hypot(fitted.residual() / Math.sqrt(Math.max(1, fitted.weight() * STATION_MM)), BREADTH_SIGMA_MM);
        return new Edge(line, -half, half, sigma, fitted.residual(), found.ink(), found.coverage());
    }
}
