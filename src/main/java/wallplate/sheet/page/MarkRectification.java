package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.PlaneMap;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.PrintedMarks;
import wallplate.sheet.PrintedMarks.CornerMark;
import wallplate.sheet.page.PageMap.Lens;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;
import wallplate.task.SheetFormat;

/**
 * Makes a rough page of a picture from the printed corner marks in it; the rough page is then upright, whichever way the
 * sheet was laid.
 */
public final class MarkRectification {

    private static final int LEAST_MARKS = 3;
    /** How far a mark's corner may be from where the others say that it is. */
    private static final double LARGEST_MISFIT = 1.0;
    private static final double SQUARE_DEGREES = 0.4;

    private final SheetFormat format;
    private final PaperSides sides;
    private final Lens lens;

    /**
     * @param sides the paper's edges, where they are in the picture: they bound the paper
     * @param lens how the lens bends, as the paper's edges show it
     */
    public MarkRectification(SheetFormat format, PaperSides sides, Lens lens) {
        this.format = format;
        this.sides = sides;
        this.lens = lens;
    }

    /** The rough page; empty where fewer than three marks are there or they contradict each other. */
    public Optional<RoughPage> rectify(List<SeenMark> seen) {
        List<Point> from = new ArrayList<>();
        List<Point> to = new ArrayList<>();
        for (CornerMark mark : PrintedMarks.of(format).marks()) {
            List<SeenMark> same =
                    seen.stream().filter(each -> each.number() == mark.number()).toList();
            if (same.size() == 1) {
                from.addAll(mark.corners());
                same.get(0).corners().forEach(corner -> to.add(lens.ideal(corner)));
            }
        }
        if (from.size() < LEAST_MARKS * 4) {
            return Optional.empty();
        }
        PageMap map = new PageMap(projection(from, to), lens);
        return isConsistent(map, from, to) ? Optional.of(rough(map)) : Optional.empty();
    }

    /** The projective map that carries places to pixels with least squares. */
    private static double[] projection(List<Point> from, List<Point> to) {
        double[][] normal = new double[8][9];
        for (int i = 0; i < from.size(); i++) {
            double x = from.get(i).x() / 100;
            double y = from.get(i).y() / 100;
            double u = to.get(i).x() / 1000;
            double v = to.get(i).y() / 1000;
            add(normal, new double[] {x, y, 1, 0, 0, 0, -u * x, -u * y, u});
            add(normal, new double[] {0, 0, 0, x, y, 1, -v * x, -v * y, v});
        }
        double[] h = LinearSystem.solve(normal);
        return new double[] {
            h[0] * 10, h[1] * 10, h[2] * 1000, h[3] * 10, h[4] * 10, h[5] * 1000, h[6] / 100, h[7] / 100, 1
        };
    }

    private static void add(double[][] normal, double[] row) {
        for (int i = 0; i < 8; i++) {
            for (int j = 0; j < 9; j++) {
                normal[i][j] += row[i] * row[j];
            }
        }
    }

    private boolean isConsistent(PageMap map, List<Point> from, List<Point> to) {
        double pixelsPerMm = map.pixelsPerMmAt(new Point(format.widthMm() / 2, format.heightMm() / 2));
        for (int i = 0; i < from.size(); i++) {
            Point projected = PageMap.project(map.matrix(), from.get(i));
            if (!(projected.distanceTo(to.get(i)) < LARGEST_MISFIT * pixelsPerMm)) {
                return false;
            }
        }
        return true;
    }

    private RoughPage rough(PageMap map) {
        PlaneMap back = map.inverse();
        List<Line> paper = new ArrayList<>();
        Point middle = new Point(format.widthMm() / 2, format.heightMm() / 2);
        for (Optional<PaperSides.Side> side : sides.sides()) {
            side.map(found -> Line.through(
                            back.apply(found.line().origin()),
                            back.apply(found.line().pointAt(100))))
                    .map(line -> line.distanceTo(middle) > 0 ? line : new Line(line.origin(), line.direction().negated()))
                    .ifPresent(paper::add);
        }
        Kind kind = isSquare(map) ? Kind.SCAN : Kind.PHOTOGRAPH;
        return new RoughPage(map, format.widthMm(), format.heightMm(), paper, kind, Scale.MARKS);
    }

    private boolean isSquare(PageMap map) {
        double width = format.widthMm();
        double height = format.heightMm();
        Point[] corners = {
            map.apply(Point.ORIGIN),
            map.apply(new Point(width, 0)),
            map.apply(new Point(width, height)),
            map.apply(new Point(0, height))
        };
        for (int i = 0; i < 4; i++) {
            Vector side = corners[(i + 1) % 4].minus(corners[i]);
            Vector next = corners[(i + 2) % 4].minus(corners[(i + 1) % 4]);
            if (Math.abs(Angles.between(side.angleDegrees(), next.angleDegrees()) - 90) > SQUARE_DEGREES) {
                return false;
            }
        }
        return true;
    }
}
