package wallplate.drafting.layout;

import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;

/**
 * From the detail's own axes to the sheet: enlarged, moved, and mirrored where the eaves are on the right.
 *
 * @param heel where on the sheet the origin of the detail's axes comes to lie
 * @param enlargement 1 on a drawing sheet, where paper millimetres stay what they are
 */
record Placement(Point heel, boolean mirrored, double enlargement) implements PlaneMap {

    Placement(Point heel, boolean mirrored) {
        this(heel, mirrored, 1);
    }

    @Override
    public Point apply(Point point) {
        double across = mirrored ? -enlargement : enlargement;
        return new Point(heel.x() + across * point.x(), heel.y() + enlargement * point.y());
    }

    @Override
    public PlaneMap inverse() {
        Point origin = new Point((mirrored ? heel.x() : -heel.x()) / enlargement, -heel.y() / enlargement);
        return new Placement(origin, mirrored, 1 / enlargement);
    }
}
