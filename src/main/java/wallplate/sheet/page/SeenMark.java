package wallplate.sheet.page;

import java.util.Comparator;
import java.util.List;
import wallplate.geometry.Point;

/**
 * A printed mark in a picture.
 *
 * @param number its number in the dictionary
 * @param corners its black square's corners in pixels: upper left, upper right, lower right, lower left of the upright mark
 */
public record SeenMark(int number, List<Point> corners) {

    /** By number, then by place, so that the order never depends on how they were found. */
    public static final Comparator<SeenMark> BY_NUMBER = Comparator.comparingInt(SeenMark::number)
            .thenComparingDouble(mark -> mark.corners.get(0).x())
            .thenComparingDouble(mark -> mark.corners.get(0).y());

    public SeenMark {
        corners = List.copyOf(corners);
    }
}
