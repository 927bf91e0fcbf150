package wallplate.sheet.page;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * How a sheet was laid: the drawing's x axis points along the rough page's x axis after this many quarter turns
 * anticlockwise.
 */
public enum Turn {
    UPRIGHT,
    QUARTER_LEFT,
    UPSIDE_DOWN,
    QUARTER_RIGHT;

    /** Degrees from the rough x axis to the drawing's. */
    public double degrees() {
        return 90 * ordinal();
    }

    /** Whether the drawing's level lines run along the rough page's x axis. */
    public boolean isLevelAlongX() {
        return ordinal() % 2 == 0;
    }

    /** The other turn with the same level direction. */
    public Turn opposite() {
        return values()[(ordinal() + 2) % 4];
    }

    /** The drawing's upward direction on the rough page. */
    public Vector up() {
        Vector right = Vector.atDegrees(degrees());
        return right.leftNormal();
    }

    /** How high a point lies above the sheet's lower edge, for a rough page of the given size. */
    public double heightOf(Point point, double width, double height) {
        return switch (this) {
            case UPRIGHT -> point.y();
            case QUARTER_LEFT -> width - point.x();
            case UPSIDE_DOWN -> height - point.y();
            case QUARTER_RIGHT -> point.x();
        };
    }

    /** The mean height of lines in the drawing's upward direction, each weighing by its length. */
    public double meanHeight(List<Segment> lines) {
        double sum = 0;
        double length = 0;
        for (Segment line : lines) {
            sum += line.length() * line.midpoint().minus(Point.ORIGIN).dot(up());
            length += line.length();
        }
        return length == 0 ? 0 : sum / length;
    }
}
