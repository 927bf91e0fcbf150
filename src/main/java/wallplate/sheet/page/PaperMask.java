package wallplate.sheet.page;

import java.util.Arrays;
import java.util.List;
import wallplate.geometry.Line;
import wallplate.geometry.Point;

/**
 * Which pixels of a page are paper to draw on: those on the left of each of its edges, a little inside them, and not in
 * a hole, a printed mark or a code.
 *
 * @param edges in the page's millimetres, with the paper on their left
 * @param inset how far inside the edges the paper begins to count; an edge's own shadow lies there
 * @param discs places that are no paper to draw on
 * @param darkSurround whether darkness that reaches in from the page's border is no paper either: a copier's or a
 *     feeder's black border, or a place outside the picture
 */
public record PaperMask(List<Line> edges, double inset, List<Disc> discs, boolean darkSurround) {

    public PaperMask {
        edges = List.copyOf(edges);
        discs = List.copyOf(discs);
    }

    /**
     * The first and the end column of paper in a row of a page, the end not included; equal where the row has none.
     */
    public int[] columns(int row, int widthPx, int heightPx, double pixelsPerMm) {
        double y = (heightPx - row - 0.5) / pixelsPerMm;
        double from = 0;
        double to = widthPx / pixelsPerMm;
        for (Line edge : edges) {
            // Left of the edge: a + b x >= inset, with the distance linear in x.
            double a = edge.distanceTo(new Point(0, y)) - inset;
            double b = -edge.direction().y();
            if (Math.abs(b) < 1e-9) {
                if (a < 0) {
                    return new int[] {0, 0};
                }
            } else if (b > 0) {
                from = Math.max(from, -a / b);
            } else {
                to = Math.min(to, -a / b);
            }
        }
        int first = (int) Math.max(0, Math.ceil(from * pixelsPerMm - 0.5));
        int end = (int) Math.min(widthPx, Math.floor(to * pixelsPerMm + 0.5));
        return end <= first ? new int[] {0, 0} : new int[] {first, end};
    }

    /** The bytes of a page, 255 on paper and 0 elsewhere. */
    public byte[] bytes(int widthPx, int heightPx, double pixelsPerMm) {
        byte[] mask = new byte[widthPx * heightPx];
        for (int row = 0; row < heightPx; row++) {
            int[] columns = columns(row, widthPx, heightPx, pixelsPerMm);
            Arrays.fill(mask, row * widthPx + columns[0], row * widthPx + columns[1], (byte) 255);
        }
        clearDiscs(mask, widthPx, heightPx, pixelsPerMm);
        return mask;
    }

    /** Makes everything outside the paper 0. */
    public void clear(byte[] page, int widthPx, int heightPx, double pixelsPerMm) {
        for (int row = 0; row < heightPx; row++) {
            int[] columns = columns(row, widthPx, heightPx, pixelsPerMm);
            Arrays.fill(page, row * widthPx, row * widthPx + columns[0], (byte) 0);
            Arrays.fill(page, row * widthPx + columns[1], (row + 1) * widthPx, (byte) 0);
        }
        clearDiscs(page, widthPx, heightPx, pixelsPerMm);
    }

    private void clearDiscs(byte[] page, int widthPx, int heightPx, double pixelsPerMm) {
        for (Disc disc : discs) {
            double centreColumn = disc.centre().x() * pixelsPerMm - 0.5;
            double centreRow = heightPx - disc.centre().y() * pixelsPerMm - 0.5;
            double radius = disc.radius() * pixelsPerMm;
            int last = (int) Math.min(heightPx - 1.0, centreRow + radius);
            for (int row = (int) Math.max(0, Math.ceil(centreRow - radius)); row <= last; row++) {
                double half = Math.sqrt(Math.max(0, radius * radius - (row - centreRow) * (row - centreRow)));
                int from = (int) Math.max(0, Math.ceil(centreColumn - half));
                int to = (int) Math.min(widthPx, Math.floor(centreColumn + half) + 1);
                if (to > from) {
                    Arrays.fill(page, row * widthPx + from, row * widthPx + to, (byte) 0);
                }
            }
        }
    }
}
