package wallplate.drafting.codes;

import java.util.ArrayList;
import java.util.List;
import wallplate.drafting.paper.Ink;
import wallplate.drafting.paper.Owner;

/**
 * Square black cells on white, row by row from the top.
 *
 * <p>Black cells beside each other become one area, and each area reaches a hair into the row below: else a viewer shows
 * white seams.
 */
final class Cells {

    private static final double OVERLAP = 0.02;

    private final double left;
    private final double bottom;
    private final double size;
    private final Owner owner;

    Cells(double left, double bottom, double size, Owner owner) {
        this.left = left;
        this.bottom = bottom;
        this.size = size;
        this.owner = owner;
    }

    /** Tells which cells are black, rows counted from the top and columns from the left. */
    interface Pattern {
        boolean isBlack(int row, int column);
    }

    List<Ink> inked(int rows, int columns, Pattern pattern) {
        List<Ink> areas = new ArrayList<>();
        for (int row = 0; row < rows; row++) {
            int column = 0;
            while (column < columns) {
                int end = column;
                while (end < columns && pattern.isBlack(row, end)) {
                    end++;
                }
                if (end > column) {
                    double low = bottom + (rows - 1 - row) * size;
                    double overlap = row + 1 < rows ? OVERLAP : 0;
                    areas.add(Ink.Area.rectangle(
                            left + column * size, low - overlap, (end - column) * size, size + overlap, owner));
                }
                column = end + 1;
            }
        }
        return areas;
    }
}
