package wallplate.drafting.layout;

import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;

/**
 * From the detail's own axes to the sheet: moved, and mirrored where the eaves are on the right.
 *
 * @param heel where on the sheet the origin of the detail's axes comes to lie
 */
record Placement(Point heel, boolean mirrored) implements PlaneMap {

    @Override
    public Point apply(Point point) {
        return new Point(heel.x() + (mirrored ? -point.x() : point.x()), heel.y() + point.y());
    }

    @Override
    public PlaneMap inverse() {
        Point origin = new Point(mirrored ? heel.x() : -heel.x(), -heel.y());
        return new Placement(origin, mirrored);
    }
}
