package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/**
 * What is already on the sheet, for finding room among it.
 *
 * <p>A grid of half millimetres answers whether a box is free; the lines themselves answer what a leader would cross.
 */
final class Clutter {

    private static final double CELL = 0.5;

    private final int columns;
    private final int rows;
    private final boolean[] taken;
    private final List<Segment> lines = new ArrayList<>();
    private final List<Box> boxes = new ArrayList<>();

    Clutter(Box sheet) {
        this.columns = (int) Math.ceil(sheet.right() / CELL);
        this.rows = (int) Math.ceil(sheet.top() / CELL);
        this.taken = new boolean[columns * rows];
    }

    void add(Segment line) {
        lines.add(line);
        int steps = (int) Math.ceil(line.length() / CELL) + 1;
        for (int step = 0; step <= steps; step++) {
            Point point = line.at((double) step / steps);
            take((int) Math.floor(point.x() / CELL), (int) Math.floor(point.y() / CELL));
        }
    }

    void add(Box box) {
        boxes.add(box);
        int left = (int) Math.floor(box.left() / CELL);
        int right = (int) Math.floor(box.right() / CELL);
        for (int row = (int) Math.floor(box.bottom() / CELL); row <= (int) Math.floor(box.top() / CELL); row++) {
            for (int column = left; column <= right; column++) {
                take(column, row);
            }
        }
    }

    private void take(int column, int row) {
        if (column >= 0 && column < columns && row >= 0 && row < rows) {
            taken[row * columns + column] = true;
        }
    }

    /** How much is taken, so that many boxes can be asked about quickly. */
    int[] sums() {
        int[] sums = new int[(columns + 1) * (rows + 1)];
        for (int row = 0; row < rows; row++) {
            int line = 0;
            for (int column = 0; column < columns; column++) {
                line += taken[row * columns + column] ? 1 : 0;
                sums[(row + 1) * (columns + 1) + column + 1] = sums[row * (columns + 1) + column + 1] + line;
            }
        }
        return sums;
    }

    /** Whether nothing lies in the box; the sums must be of this moment. */
    boolean isFree(Box box, int[] sums) {
        int left = clamp((int) Math.floor(box.left() / CELL), columns);
        int right = clamp((int) Math.floor(box.right() / CELL) + 1, columns);
        int bottom = clamp((int) Math.floor(box.bottom() / CELL), rows);
        int top = clamp((int) Math.floor(box.top() / CELL) + 1, rows);
        int stride = columns + 1;
        return sums[top * stride + right] - sums[bottom * stride + right] - sums[top * stride + left]
                        + sums[bottom * stride + left]
                == 0;
    }

    private static int clamp(int cell, int count) {
        return Math.max(0, Math.min(count, cell));
    }

    List<Segment> lines() {
        return lines;
    }

    List<Box> boxes() {
        return boxes;
    }
}
