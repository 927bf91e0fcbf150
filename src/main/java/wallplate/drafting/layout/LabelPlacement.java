package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;
import wallplate.drafting.layout.LabelPlan.Anchor;
import wallplate.drafting.layout.LabelPlan.Body;
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
 *       whether it runs along a line, whether the text would stand in a body.
 *   <li>Labels are placed in turn, those with the fewest places first, and then each is placed again among the others
 *       until nothing improves or four rounds are over.
 * </ol>
 *
 * <p>A label that finds no place is left out: that happens where a sheet is too full for its labels.
 */
final class LabelPlacement {

    static final double TEXT_HEIGHT = 2.5;

    private static final double SHELF = 2.2;
    private static final double SHELF_GAP = 0.8;
    private static final double COLUMN = 7;
    private static final double LINE = 5;
    /** Clear paper around a text. */
    private static final double CLEAR = 1.2;
    /** Between the texts of two labels. */
    private static final double BETWEEN_TEXTS = 1.6;

    private static final double LONGEST_LEADER = 90;
    private static final double SHORTEST_LEADER = 5;
    /** A text that stands in a body seems to name it. */
    private static final double IN_A_BODY = 30;
    /** What a place in a column of labels is worth, in millimetres of leader. */
    private static final double IN_A_COLUMN = 8;

    private static final int PLACES_WEIGHED = 80;
    private static final int ROUNDS = 4;

    /** Cheapest first; ties by place, so that the same drawing is always labelled alike. */
    private static final Comparator<Placed> BY_COST = Comparator.comparingDouble(Placed::cost)
            .thenComparingDouble(placed -> placed.shelf().end().x())
            .thenComparingDouble(placed -> placed.shelf().end().y())
            .thenComparingDouble(placed -> placed.anchor().place().x())
            .thenComparingDouble(placed -> placed.anchor().place().y());

    private final Box zone;
    private final Clutter clutter;
    private final List<Body> bodies;
    private final List<Choice> choices = new ArrayList<>();

    LabelPlacement(Box zone, Clutter clutter, List<Body> bodies) {
        this.zone = zone;
        this.clutter = clutter;
        this.bodies = List.copyOf(bodies);
    }

    /**
     * Where a label goes.
     *
     * @param shelf the short level line between the leader and the text, from the leader to the text
     */
    record Placed(Label label, Anchor anchor, Segment shelf, Box text, double cost) {

        boolean isTextOnTheRight() {
            return shelf.end().x() > shelf.start().x();
        }

        Segment leader() {
            return new Segment(shelf.start(), anchor.place());
        }

        Placed costing(double other) {
            return new Placed(label, anchor, shelf, text, other);
        }
    }

    private static final class Choice {

        private final List<Placed> places;
        private Optional<Placed> chosen = Optional.empty();

        private Choice(List<Placed> places) {
            this.places = places;
        }
    }

    /** Adds a label to be placed; the width is that of its text. */
    void add(Label label, double widthMm) {
        PriorityQueue<Placed> nearest = new PriorityQueue<>(PLACES_WEIGHED + 1, BY_COST.reversed());
        for (double y = zone.bottom() + LINE / 2; y < zone.top(); y += LINE) {
            for (double x = zone.left(); x < zone.right(); x += COLUMN) {
                consider(label, x, y, x, x + widthMm, nearest);
                consider(label, x, y, x - widthMm, x, nearest);
            }
        }
        List<Placed> weighed = new ArrayList<>(PLACES_WEIGHED);
        for (Placed place : nearest) {
            Segment leader = place.leader();
            weighed.add(place.costing(place.cost()
                    + clutter.crossingCost(
                            leader.start().x(), leader.start().y(), leader.end().x(), leader.end().y())));
        }
        weighed.sort(BY_COST);
        choices.add(new Choice(weighed));
    }

    /** Weighs the text that begins or ends at x, if there is room for it. */
    private void consider(Label label, double x, double y, double left, double right, PriorityQueue<Placed> places) {
        if (left < zone.left() || right > zone.right() || y + TEXT_HEIGHT / 2 > zone.top()) {
            return;
        }
        double side = left < x ? 1 : -1;
        double foot = x + side * (SHELF + SHELF_GAP);
        double low = y - TEXT_HEIGHT / 2;
        double high = y + TEXT_HEIGHT / 2;
        double dearest = places.size() < PLACES_WEIGHED ? LONGEST_LEADER : places.element().cost();
        double least = dearest;
        Anchor nearest = null;
        for (Anchor anchor : label.anchors()) {
            double across = (anchor.place().x() - foot) * side;
            double upwards = Math.abs(anchor.place().y() - y);
            // The leader must leave the text, not run back under it.
            if (across < 0.5 || across > least || upwards > least) {
                continue;
            }
            double leader = leaderCost(across, upwards);
            if (leader < least) {
                least = leader;
                nearest = anchor;
            }
        }
        if (nearest == null) {
            return;
        }
        if (!clutter.isFree(
                Math.min(left, foot) - CLEAR, low - CLEAR, Math.max(right, foot) + CLEAR, high + CLEAR)) {
            return;
        }
        double cost = least + bodyCost(left, right, y);
        if (cost >= dearest) {
            return;
        }
        Segment shelf = Segment.between(foot, y, x + side * SHELF_GAP, y);
        places.add(new Placed(label, nearest, shelf, new Box(left, low, right, high), cost));
        if (places.size() > PLACES_WEIGHED) {
            places.remove();
        }
    }

    /** Length, and a surcharge for leaders so level or upright that they could be taken for a line of the drawing. */
    private static double leaderCost(double across, double upwards) {
        double length = Math.sqrt(across * across + upwards * upwards);
        double slant = Math.min(across, upwards) / length;
        double surcharge = slant < 0.34 ? (0.34 - slant) * 45 : 0;
        return length + surcharge + Math.max(0, SHORTEST_LEADER - length) * 4;
    }

    private double bodyCost(double left, double right, double y) {
        for (Body body : bodies) {
            if (body.contains(left, y) || body.contains(right, y) || body.contains((left + right) / 2, y)) {
                return IN_A_BODY;
            }
        }
        return 0;
    }

    List<Placed> place() {
        List<Choice> order = new ArrayList<>(choices);
        order.sort(Comparator.comparingInt(choice -> choice.places.size()));
        order.forEach(this::choose);
        for (int round = 0; round < ROUNDS; round++) {
            boolean changed = false;
            for (Choice choice : order) {
                changed |= choose(choice);
            }
            if (!changed) {
                break;
            }
        }
        return choices.stream().flatMap(choice -> choice.chosen.stream()).toList();
    }

    /** Takes the cheapest place among the other labels; answers whether that is another than before. */
    private boolean choose(Choice choice) {
        Optional<Placed> before = choice.chosen;
        choice.chosen = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (Placed place : choice.places) {
            if (place.cost() - IN_A_COLUMN >= least) {
                break;
            }
            double cost = place.cost() + costAmongOthers(place);
            if (cost < least) {
                least = cost;
                choice.chosen = Optional.of(place);
            }
        }
        return !choice.chosen.equals(before);
    }

    private double costAmongOthers(Placed place) {
        boolean aligned = false;
        for (Choice other : choices) {
            if (other.chosen.isEmpty()) {
                continue;
            }
            Placed there = other.chosen.get();
            if (inTheWay(place, there)) {
                return Double.POSITIVE_INFINITY;
            }
            aligned |= there.isTextOnTheRight() == place.isTextOnTheRight()
                    && there.shelf().end().x() == place.shelf().end().x();
        }
        return aligned ? -IN_A_COLUMN : 0;
    }

    private static boolean inTheWay(Placed place, Placed there) {
        return place.text().grown(BETWEEN_TEXTS).overlaps(there.text())
                || there.text().grown(CLEAR).meets(place.leader())
                || place.text().grown(CLEAR).meets(there.leader())
                || crosses(place.leader(), there.leader())
                || crosses(place.leader(), there.shelf())
                || crosses(place.shelf(), there.leader());
    }

    private static boolean crosses(Segment first, Segment second) {
        Vector along = first.vector();
        Vector other = second.vector();
        double sine = along.cross(other);
        if (sine == 0) {
            return false;
        }
        Point start = first.start();
        Vector between = second.start().minus(start);
        double onFirst = between.cross(other) / sine;
        double onSecond = between.cross(along) / sine;
        return onFirst > 0 && onFirst < 1 && onSecond > 0 && onSecond < 1;
    }
}
