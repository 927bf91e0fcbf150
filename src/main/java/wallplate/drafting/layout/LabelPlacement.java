package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import wallplate.drafting.layout.LabelPlan.Anchor;
import wallplate.drafting.layout.LabelPlan.Label;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Finds a place for every label so that no text lies on a line or on another text and no two leaders cross.
 *
 * <ol>
 *   <li>Places are the points of a coarse grid, so that labels fall into columns and lines of themselves.
 *   <li>For each label the free places nearest to its part are weighed: length of the leader, lines that it would cross,
 *       whether it runs along a line.
 *   <li>Labels are placed in turn, those with the fewest places first, and then each is placed again among the others
 *       until nothing improves or four rounds are over.
 * </ol>
 *
 * <p>A label that finds no place is left out; it fails where a sheet is too full for its labels.
 */
final class LabelPlacement {

    static final double TEXT_HEIGHT = 2.5;
    static final double SHELF = 2.2;

    private static final double COLUMN = 7;
    private static final double LINE = 5;
    /** Clear paper around a text. */
    private static final double CLEAR = 1.3;

    private static final double LONGEST_LEADER = 90;
    private static final int PLACES_WEIGHED = 70;
    private static final int ROUNDS = 4;

    private final Box zone;
    private final Clutter clutter;
    private final int[] sums;
    private final List<Weighed> labels = new ArrayList<>();

    LabelPlacement(Box zone, Clutter clutter) {
        this.zone = zone;
        this.clutter = clutter;
        this.sums = clutter.sums();
    }

    /**
     * Where a label goes.
     *
     * @param shelf the short level line between the leader and the text, from the leader to the text
     */
    record Placed(Label label, Anchor anchor, Segment shelf, Box text, double cost) {

        boolean textOnTheRight() {
            return shelf.end().x() > shelf.start().x();
        }

        Segment leader() {
            return new Segment(shelf.start(), anchor.place());
        }
    }

    private static final class Weighed {

        private final List<Placed> places;
        private Optional<Placed> chosen = Optional.empty();

        private Weighed(List<Placed> places) {
            this.places = places;
        }
    }

    /** Adds a label to be placed; the width is that of its text. */
    void add(Label label, double widthMm) {
        List<Placed> places = new ArrayList<>();
        for (double y = zone.bottom() + LINE / 2; y < zone.top(); y += LINE) {
            for (double x = zone.left(); x < zone.right(); x += COLUMN) {
                consider(label, widthMm, new Point(x, y), true, places);
                consider(label, widthMm, new Point(x, y), false, places);
            }
        }
        places.sort(BY_COST);
        List<Placed> weighed = new ArrayList<>();
        for (Placed place : places.subList(0, Math.min(PLACES_WEIGHED, places.size()))) {
            weighed.add(new Placed(
                    place.label(), place.anchor(), place.shelf(), place.text(), place.cost() + crossingCost(place)));
        }
        weighed.sort(BY_COST);
        labels.add(new Weighed(weighed));
    }

    /** Cheapest first; ties by place, so that the same drawing is always labelled alike. */
    private static final Comparator<Placed> BY_COST = Comparator.comparingDouble(Placed::cost)
            .thenComparingDouble(placed -> placed.shelf().end().x())
            .thenComparingDouble(placed -> placed.shelf().end().y())
            .thenComparingDouble(placed -> placed.anchor().place().x())
            .thenComparingDouble(placed -> placed.anchor().place().y());

    private void consider(Label label, double width, Point at, boolean textOnTheRight, List<Placed> places) {
        double left = textOnTheRight ? at.x() : at.x() - width;
        Box text = new Box(left, at.y() - TEXT_HEIGHT / 2, left + width, at.y() + TEXT_HEIGHT / 2);
        if (!zone.contains(text)) {
            return;
        }
        double side = textOnTheRight ? -1 : 1;
        Point foot = new Point(at.x() + side * (SHELF + 0.8), at.y());
        Point end = new Point(at.x() + side * 0.8, at.y());
        Anchor best = null;
        double cost = LONGEST_LEADER;
        for (int rank = 0; rank < label.anchors().size(); rank++) {
            Anchor anchor = label.anchors().get(rank);
            Vector leader = anchor.place().minus(foot);
            // The leader must leave the text, not run back under it.
            if (leader.x() * side < 0.5) {
                continue;
            }
            double anchorCost = leader.length() + slantCost(leader);
            if (anchorCost < cost) {
                cost = anchorCost;
                best = anchor;
            }
        }
        if (best == null) {
            return;
        }
        Box needed = new Box(
                Math.min(text.left(), foot.x()) - CLEAR,
                text.bottom() - CLEAR,
                Math.max(text.right(), foot.x()) + CLEAR,
                text.top() + CLEAR);
        if (clutter.isFree(needed, sums)) {
            places.add(new Placed(label, best, new Segment(foot, end), text, cost));
        }
    }

    /** A leader near level or near upright is taken for a line of the drawing. */
    private static double slantCost(Vector leader) {
        double steep = Math.abs(new Vector(Math.abs(leader.x()), leader.y()).angleDegrees());
        double off = Math.min(steep, 90 - steep);
        return off >= 20 ? 0 : (20 - off) * 0.8;
    }

    private double crossingCost(Placed place) {
        Segment leader = place.leader();
        double cost = 0;
        for (Segment line : clutter.lines()) {
            if (crosses(leader, line)) {
                double angle = wallplate.geometry.Angles.between(
                        leader.inclinationDegrees(), line.inclinationDegrees());
                cost += angle < 15 ? 40 : 5;
            }
        }
        for (Box box : clutter.boxes()) {
            if (box.meets(leader)) {
                cost += 200;
            }
        }
        return cost;
    }

    private static boolean crosses(Segment first, Segment second) {
        Vector along = first.vector();
        Vector other = second.vector();
        double sine = along.cross(other);
        if (sine == 0) {
            return false;
        }
        Vector between = second.start().minus(first.start());
        double onFirst = between.cross(other) / sine;
        double onSecond = between.cross(along) / sine;
        return onFirst > 0 && onFirst < 1 && onSecond > 0 && onSecond < 1;
    }

    List<Placed> place() {
        List<Weighed> order = new ArrayList<>(labels);
        order.sort(Comparator.comparingInt(weighed -> weighed.places.size()));
        for (Weighed weighed : order) {
            choose(weighed);
        }
        for (int round = 0; round < ROUNDS; round++) {
            boolean changed = false;
            for (Weighed weighed : order) {
                changed |= choose(weighed);
            }
            if (!changed) {
                break;
            }
        }
        return labels.stream().flatMap(weighed -> weighed.chosen.stream()).toList();
    }

    private boolean choose(Weighed weighed) {
        Optional<Placed> before = weighed.chosen;
        weighed.chosen = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        Optional<Placed> best = Optional.empty();
        for (Placed place : weighed.places) {
            if (place.cost() - ALIGNED * 2 >= least) {
                break;
            }
            double cost = place.cost() + costAmongOthers(place);
            if (cost < least) {
                least = cost;
                best = Optional.of(place);
            }
        }
        weighed.chosen = best;
        return !best.equals(before);
    }

    private static final double ALIGNED = 8;

    private double costAmongOthers(Placed place) {
        double cost = 0;
        boolean aligned = false;
        Box room = place.text().grown(1.6);
        for (Weighed other : labels) {
            if (other.chosen.isEmpty()) {
                continue;
            }
            Placed there = other.chosen.get();
            if (room.overlaps(there.text())
                    || there.text().grown(1.2).meets(place.leader())
                    || place.text().grown(1.2).meets(there.leader())
                    || crosses(place.leader(), there.leader())) {
                return Double.POSITIVE_INFINITY;
            }
            aligned |= there.textOnTheRight() == place.textOnTheRight()
                    && there.shelf().end().x() == place.shelf().end().x();
        }
        return aligned ? cost - ALIGNED : cost;
    }
}
