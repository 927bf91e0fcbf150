package wallplate.sheet.page;

import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;

/** A round place on a page that holds no pencil: a punched hole, a printed mark or a code. */
public record Disc(Point centre, double radius) {

    /** The disc on another page of nearly the same scale. */
    public Disc on(PlaneMap map) {
        return new Disc(map.apply(centre), radius);
    }
}
