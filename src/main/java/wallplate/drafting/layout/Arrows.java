package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Shade;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;

/** Ends of dimension lines and leaders. */
final class Arrows {

    private static final int DOT_CORNERS = 12;

    private Arrows() {}

    /** A filled arrowhead whose tip points in the direction given. */
    static Ink.Area head(Point tip, Vector direction, double length, double width, Owner owner) {
        Vector back = direction.unit().times(-length);
        Vector side = direction.unit().leftNormal().times(width / 2);
        return new Ink.Area(
                List.of(tip, tip.plus(back).plus(side), tip.plus(back).plus(side.negated())), Shade.FULL, owner);
    }

    static Ink.Area dot(Point centre, double diameter, Owner owner) {
        List<Point> corners = new ArrayList<>(DOT_CORNERS);
        for (int corner = 0; corner < DOT_CORNERS; corner++) {
            corners.add(centre.plus(Vector.atDegrees(360.0 * corner / DOT_CORNERS).times(diameter / 2)));
        }
        return new Ink.Area(corners, Shade.FULL, owner);
    }
}
