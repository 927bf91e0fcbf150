package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/**
 * Finds where on the sheet a drawing goes.
 *
 * <p>Best in the middle of the free zone. Where that is too small, title block and bar leave corners that a drawing's
 * own empty corners may fill: the nearest place is taken at which least of it runs over them or out of the frame.
 */
final class PlacementSearch {

    /** Between the places along a line that are looked at. */
    private static final double STEP = 4;
    /** Between the places for the drawing that are tried. */
    private static final double COARSE = 6;

    private static final double FINE = 1;
    private static final double FARTHEST = 72;
    /** One place outside weighs more than any shift. */
    private static final double OUTSIDE = 1000;

    private final Box room;
    private final List<Box> taken;
    private final boolean mirrored;
    private final List<Point> places = new ArrayList<>();

    /**
     * @param room where the drawing may be
     * @param taken where it may not be
     * @param segments the drawing and its dimension lines in the detail's axes
     */
    PlacementSearch(Box room, List<Box> taken, boolean mirrored, List<Segment> segments) {
        this.room = room;
        this.taken = List.copyOf(taken);
        this.mirrored = mirrored;
        for (Segment segment : segments) {
            int steps = (int) Math.ceil(segment.length() / STEP) + 1;
            for (int step = 0; step <= steps; step++) {
                places.add(segment.at((double) step / steps));
            }
        }
    }

    Placement near(Point ideal) {
        Attempt wanted = new Attempt(ideal, cost(ideal, ideal, Double.POSITIVE_INFINITY));
        if (wanted.cost() == 0) {
            return new Placement(ideal, mirrored);
        }
        Attempt coarse = best(wanted, ideal, FARTHEST, COARSE);
        return new Placement(best(coarse, ideal, COARSE, FINE).heel(), mirrored);
    }

    private record Attempt(Point heel, double cost) {}

    /** The best place on a grid around the one known so far. */
    private Attempt best(Attempt known, Point ideal, double reach, double grid) {
        Attempt best = known;
        for (double up = -reach; up <= reach; up += grid) {
            for (double across = -reach; across <= reach; across += grid) {
                Point heel = new Point(known.heel().x() + across, known.heel().y() + up);
                double cost = cost(heel, ideal, best.cost());
                if (cost < best.cost()) {
                    best = new Attempt(heel, cost);
                }
            }
        }
        return best;
    }

    /** The shift, and a thousand for each place outside; counting stops at the limit. */
    private double cost(Point heel, Point ideal, double limit) {
        double sign = mirrored ? -1 : 1;
        double cost = heel.distanceTo(ideal);
        for (Point place : places) {
            double x = heel.x() + sign * place.x();
            double y = heel.y() + place.y();
            if (x < room.left() || x > room.right() || y < room.bottom() || y > room.top() || isTaken(x, y)) {
                cost += OUTSIDE;
            }
            if (cost >= limit) {
                return cost;
            }
        }
        return cost;
    }

    private boolean isTaken(double x, double y) {
        for (Box box : taken) {
            if (x > box.left() && x < box.right() && y > box.bottom() && y < box.top()) {
                return true;
            }
        }
        return false;
    }
}
