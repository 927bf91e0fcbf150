package wallplate.drafting.layout;

import java.util.Arrays;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * What is already on the sheet, for finding room among it.
 *
 * <p>A grid of millimetres answers whether a box is free; the lines themselves answer what a leader would cross. Each
 * line weighs what crossing it costs.
 */
final class Clutter {

    /** An outline that a leader has to cross to reach a body. */
    static final double OUTLINE = 7;
    /** A dimension or extension line. */
    static final double DIMENSION = 8;
    /** One of many thin lines. */
    static final double HATCH = 0.4;
    /** Text is not crossed unless there is no other way. */
    static final double TEXT = 80;

    private static final double CLEAR_OF_TEXT = 0.25;

    /** Two lines that cross at less than this are hard to tell apart. */
    private static final double SHARP_SINE = Math.sin(Math.toRadians(14));

    private static final double SHARP_CROSSING = 30;

    private final int columns;
    private final int rows;
    private final boolean[] taken;
    private int[] sums = {};
    /** Of each line: start x, start y, end x, end y, cost of crossing it. */
    private double[] lines = new double[5 * 256];

    private int lineCount;

    Clutter(Box sheet) {
        this.columns = (int) Math.ceil(sheet.right());
        this.rows = (int) Math.ceil(sheet.top());
        this.taken = new boolean[columns * rows];
    }

    void add(Segment line, double crossingCost) {
        if (lines.length < 5 * (lineCount + 1)) {
            lines = Arrays.copyOf(lines, lines.length * 2);
        }
        int at = 5 * lineCount++;
        lines[at] = line.start().x();
        lines[at + 1] = line.start().y();
        lines[at + 2] = line.end().x();
        lines[at + 3] = line.end().y();
        lines[at + 4] = crossingCost;
        takeAlong(lines[at], lines[at + 1], lines[at + 2], lines[at + 3]);
    }

    private void takeAlong(double startX, double startY, double endX, double endY) {
        int steps = (int) (Math.hypot(endX - startX, endY - startY) * 2) + 1;
        for (int step = 0; step <= steps; step++) {
            double fraction = (double) step / steps;
            double x = startX + (endX - startX) * fraction;
            double y = startY + (endY - startY) * fraction;
            take((int) Math.floor(x), (int) Math.floor(y));
        }
    }

    /** A text along a line: the line through its middle, and how far the letters reach to both sides. */
    void addText(Segment middle, double halfHeight) {
        Vector along = middle.vector().unit();
        Vector side = along.leftNormal();
        Point start = middle.start().plus(along.times(-0.8));
        Point end = middle.end().plus(along.times(0.8));
        for (double offset : new double[] {-halfHeight - 0.5, 0, halfHeight + 0.5}) {
            add(new Segment(start.plus(side.times(offset)), end.plus(side.times(offset))), TEXT);
        }
    }

    void add(Box box) {
        for (int row = (int) Math.floor(box.bottom()); row <= (int) Math.floor(box.top()); row++) {
            for (int column = (int) Math.floor(box.left()); column <= (int) Math.floor(box.right()); column++) {
                take(column, row);
            }
        }
        double middle = (box.bottom() + box.top()) / 2;
        addText(Segment.between(box.left(), middle, box.right(), middle), box.height() / 2);
    }

    private void take(int column, int row) {
        if (column >= 0 && column < columns && row >= 0 && row < rows) {
            taken[row * columns + column] = true;
            sums = new int[] {};
        }
    }

    /** Whether nothing lies in the box. */
    boolean isFree(double fromX, double fromY, double toX, double toY) {
        if (sums.length == 0) {
            sums = sums();
        }
        int left = clamp((int) Math.floor(fromX), columns);
        int right = clamp((int) Math.floor(toX) + 1, columns);
        int bottom = clamp((int) Math.floor(fromY), rows);
        int top = clamp((int) Math.floor(toY) + 1, rows);
        int stride = columns + 1;
        return sums[top * stride + right] - sums[bottom * stride + right] - sums[top * stride + left]
                        + sums[bottom * stride + left]
                == 0;
    }

    private int[] sums() {
        int[] counted = new int[(columns + 1) * (rows + 1)];
        for (int row = 0; row < rows; row++) {
            int inRow = 0;
            for (int column = 0; column < columns; column++) {
                inRow += taken[row * columns + column] ? 1 : 0;
                counted[(row + 1) * (columns + 1) + column + 1] = counted[row * (columns + 1) + column + 1] + inRow;
            }
        }
        return counted;
    }

    private static int clamp(int cell, int count) {
        return Math.max(0, Math.min(count, cell));
    }

    /** Whether no line runs through a text along the line given. */
    boolean isClear(Segment middle, double halfHeight) {
        double length = middle.length();
        double alongX = (middle.end().x() - middle.start().x()) / length;
        double alongY = (middle.end().y() - middle.start().y()) / length;
        Box letters = new Box(0, -halfHeight, length, halfHeight).grown(CLEAR_OF_TEXT);
        for (int at = 0; at < 5 * lineCount; at += 5) {
            double startX = lines[at] - middle.start().x();
            double startY = lines[at + 1] - middle.start().y();
            double endX = lines[at + 2] - middle.start().x();
            double endY = lines[at + 3] - middle.start().y();
            Segment inTextAxes = Segment.between(
                    startX * alongX + startY * alongY,
                    startY * alongX - startX * alongY,
                    endX * alongX + endY * alongY,
                    endY * alongX - endX * alongY);
            if (letters.meets(inTextAxes)) {
                return false;
            }
        }
        return true;
    }

    boolean crossesText(Segment line) {
        return crossingCost(line.start().x(), line.start().y(), line.end().x(), line.end().y()) >= TEXT;
    }

    /** What it costs to draw a leader there. */
    double crossingCost(double startX, double startY, double endX, double endY) {
        double cost = 0;
        double alongX = endX - startX;
        double alongY = endY - startY;
        double length = Math.hypot(alongX, alongY);
        double left = Math.min(startX, endX);
        double right = Math.max(startX, endX);
        double bottom = Math.min(startY, endY);
        double top = Math.max(startY, endY);
        for (int at = 0; at < 5 * lineCount; at += 5) {
            if (Math.max(lines[at], lines[at + 2]) < left
                    || Math.min(lines[at], lines[at + 2]) > right
                    || Math.max(lines[at + 1], lines[at + 3]) < bottom
                    || Math.min(lines[at + 1], lines[at + 3]) > top) {
                continue;
            }
            double otherX = lines[at + 2] - lines[at];
            double otherY = lines[at + 3] - lines[at + 1];
            double sine = alongX * otherY - alongY * otherX;
            if (sine == 0) {
                continue;
            }
            double betweenX = lines[at] - startX;
            double betweenY = lines[at + 1] - startY;
            double here = (betweenX * otherY - betweenY * otherX) / sine;
            double there = (betweenX * alongY - betweenY * alongX) / sine;
            if (here > 0 && here < 1 && there > 0 && there < 1) {
                boolean sharp = Math.abs(sine) < SHARP_SINE * length * Math.hypot(otherX, otherY);
                cost += lines[at + 4] + (sharp && lines[at + 4] > HATCH ? SHARP_CROSSING : 0);
            }
        }
        return cost;
    }
}
