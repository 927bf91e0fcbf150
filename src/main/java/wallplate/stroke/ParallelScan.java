package wallplate.stroke;

import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.InkImage;

/**
 * A page read in one direction: cells {@link #STEP_MM} long in that direction and {@link #ROW_MM} across it, each with
 * its mean ink. Lines in that direction become rows of high cells, and everything else is averaged away.
 */
final class ParallelScan {

    static final double STEP_MM = Stroke.STEP_MM;
    static final double ROW_MM = 0.1;
    private static final int SAMPLES_PER_STEP = 5;

    private final Vector along;
    private final Vector across;
    private final double alongStart;
    private final double acrossStart;
    private final int columns;
    private final int rows;
    /** Column by column, so that one profile across the direction lies together. */
    private final float[] cells;

    private ParallelScan(
            Vector along, double alongStart, double acrossStart, int columns, int rows, float[] cells) {
        this.along = along;
        this.across = along.leftNormal();
        this.alongStart = alongStart;
        this.acrossStart = acrossStart;
        this.columns = columns;
        this.rows = rows;
        this.cells = cells;
    }

    static ParallelScan of(InkImage ink, double directionDegrees) {
        Vector along = Vector.atDegrees(directionDegrees);
        Vector across = along.leftNormal();
        double[] alongRange = range(ink, along);
        double[] acrossRange = range(ink, across);
        int columns = (int) Math.ceil((alongRange[1] - alongRange[0]) / STEP_MM);
        int rows = (int) Math.ceil((acrossRange[1] - acrossRange[0]) / ROW_MM);
        float[] cells = new float[columns * rows];
        ParallelScan scan = new ParallelScan(along, alongRange[0], acrossRange[0], columns, rows, cells);
        scan.fill(ink);
        return scan;
    }

    private static double[] range(InkImage ink, Vector direction) {
        double width = direction.x() * ink.widthMm();
        double height = direction.y() * ink.heightMm();
        return new double[] {Math.min(0, width) + Math.min(0, height), Math.max(0, width) + Math.max(0, height)};
    }

    private void fill(InkImage ink) {
        double scale = ink.pixelsPerMm();
        int widthPx = ink.widthPx();
        int heightPx = ink.heightPx();
        byte[] bytes = ink.bytes();
        double columnStepPx = across.x() * ROW_MM * scale;
        double rowStepPx = -across.y() * ROW_MM * scale;
        for (int column = 0; column < columns; column++) {
            for (int sample = 0; sample < SAMPLES_PER_STEP; sample++) {
                double position = alongStart + (column + (sample + 0.5) / SAMPLES_PER_STEP) * STEP_MM;
                double x = along.x() * position + across.x() * (acrossStart + ROW_MM / 2);
                double y = along.y() * position + across.y() * (acrossStart + ROW_MM / 2);
                double columnPx = x * scale - 0.5;
                double rowPx = heightPx - y * scale - 0.5;
                int base = column * rows;
                for (int row = 0; row < rows; row++, columnPx += columnStepPx, rowPx += rowStepPx) {
                    if (columnPx < 0 || rowPx < 0 || columnPx >= widthPx - 1 || rowPx >= heightPx - 1) {
                        continue;
                    }
                    int left = (int) columnPx;
                    int top = (int) rowPx;
                    float right = (float) (columnPx - left);
                    float down = (float) (rowPx - top);
                    int index = top * widthPx + left;
                    int upperLeft = bytes[index] & 0xff;
                    int upperRight = bytes[index + 1] & 0xff;
                    int lowerLeft = bytes[index + widthPx] & 0xff;
                    int lowerRight = bytes[index + widthPx + 1] & 0xff;
                    if ((upperLeft | upperRight | lowerLeft | lowerRight) == 0) {
                        continue;
                    }
                    float upper = upperLeft + (upperRight - upperLeft) * right;
                    float lower = lowerLeft + (lowerRight - lowerLeft) * right;
                    cells[base + row] += upper + (lower - upper) * down;
                }
            }
        }
        for (int cell = 0; cell < cells.length; cell++) {
            cells[cell] /= SAMPLES_PER_STEP;
        }
    }

    int columns() {
        return columns;
    }

    int rows() {
        return rows;
    }

    /** The profile across the direction at one column, smoothed over about a quarter of a millimetre, into {@code profile}. */
    void profile(int column, float[] profile) {
        int base = column * rows;
        for (int row = 2; row < rows - 2; row++) {
            int cell = base + row;
            profile[row] = (cells[cell - 2] + cells[cell + 2] + 2 * (cells[cell - 1] + cells[cell + 1]) + 3 * cells[cell]) / 9;
        }
        profile[0] = profile[1] = profile[rows - 2] = profile[rows - 1] = 0;
    }

    /** The highest cell of a column within two rows of a place across, both counted in cells. */
    float highest(int column, double row) {
        int middle = (int) Math.round(row);
        float highest = 0;
        for (int near = Math.max(0, middle - 2); near <= Math.min(rows - 1, middle + 2); near++) {
            highest = Math.max(highest, cells[column * rows + near]);
        }
        return highest;
    }

    Point point(double column, double row) {
        double position = alongStart + (column + 0.5) * STEP_MM;
        double offset = acrossStart + (row + 0.5) * ROW_MM;
        return Point.ORIGIN.plus(along.times(position)).plus(across.times(offset));
    }
}
