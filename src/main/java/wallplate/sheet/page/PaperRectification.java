package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import wallplate.geometry.Angles;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;
import wallplate.sheet.page.PageMap.Lens;
import wallplate.sheet.page.PaperSides.Side;
import wallplate.sheet.page.RoughPage.Kind;
import wallplate.sheet.page.RoughPage.Scale;

/**
 * Makes a rough page of a picture from the paper's edges in it, the stated resolution and the sheet's size.
 *
 * <p>Edges that are square to one another are a scan's; otherwise a camera looked at the sheet from aside, and the edges
 * give the perspective and how the lens bends.
 */
public final class PaperRectification {

    /** A scan's corners are as square as the paper was cut and lay; a camera is hardly ever held so well. */
    private static final double SQUARE_DEGREES = 0.6;
    private static final double EQUAL_SIDES = 0.008;
    /** A stated resolution by that of a sheet that fills the picture: some programs state one that nobody scanned with. */
    private static final double LEAST_OF_FILLED = 0.7;
    private static final double MOST_ABOVE_FILLED = 1.3;
    /** Of a sheet that is cut off, the picture shows less than half at worst. */
    private static final double MOST_ABOVE_CUT_OFF = 2.5;
    private static final double SAME_PROPORTIONS = 0.08;
    private static final double LARGEST_BEND = 0.04;
    /** The focal length of a telephone's main camera, as a share of the picture's diagonal: 26 mm to 43.3 mm of film. */
    private static final double FOCAL_SHARE = 0.6;

    /** A camera held more slanting than this makes corners that are hardly corners. */
    private static final double MOST_SLANT = 35;

    private static final List<Optional<Line>> NO_EDGES =
            List.of(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    private static final double MM_PER_INCH = 25.4;

    private final Picture picture;
    private final double longer;
    private final double shorter;

    /**
     * @param longer the sheet's longer side in millimetres
     * @param shorter its shorter side
     */
    public PaperRectification(Picture picture, double longer, double shorter) {
        this.picture = picture;
        this.longer = longer;
        this.shorter = shorter;
    }

    /** The rough page; empty where it is a photograph of which too few edges are in the picture. */
    public Optional<RoughPage> rectify(PaperSides sides) {
        List<Optional<Line>> seen = lines(sides);
        if (!isQuadrilateral(seen)) {
            return Optional.of(scan(NO_EDGES));
        }
        if (sides.complete()) {
            return Optional.of(isSquare(seen) ? square(seen) : askew(sides));
        }
        if (isScan(seen)) {
            return Optional.of(scan(seen));
        }
        return isStatedResolutionPlausible() ? Optional.of(scan(agreeing(sides))) : partlySeen(sides);
    }

    /**
     * A sheet whose edges are not square: a camera's, but where only one of them is askew in a file that states with what
     * resolution it was scanned. A camera held aslant turns more than one, the rim of a lid's shadow only its own.
     */
    private RoughPage askew(PaperSides sides) {
        List<Optional<Line>> agreeing = agreeing(sides);
        boolean allButOne = agreeing.stream().filter(Optional::isPresent).count() == 3;
        return allButOne && isStatedResolutionPlausible() ? scan(agreeing) : photograph(sides);
    }

    /**
     * The edges that are square or parallel to the clearest one. A file that states with what resolution a sheet of this
     * size was scanned is a scan, so that an edge askew is none: the rim of a lid's shadow, for one.
     */
    private static List<Optional<Line>> agreeing(PaperSides sides) {
        Side clearest = sides.sides().stream()
                .flatMap(Optional::stream)
                .max(Comparator.comparingDouble(
                        side -> Math.abs(side.contrast()) * side.points().size()))
                .orElseThrow();
        return sides.sides().stream()
                .map(side -> side.map(Side::line).filter(line -> isSquareOrParallel(line, clearest.line())))
                .toList();
    }

    private static boolean isSquareOrParallel(Line line, Line other) {
        double angle = Angles.between(line.inclinationDegrees(), other.inclinationDegrees());
        return Math.min(angle, Math.abs(angle - 90)) < SQUARE_DEGREES;
    }

    /**
     * Whether all four edges are there and may be the sheet's: square ones, which are a scan's, only where they are as far
     * apart as the sheet's sides, one pair by the other. The rim of the shadow that paper throws on a lid is not.
     */
    public boolean mayBeSheet(PaperSides sides) {
        List<Optional<Line>> seen = lines(sides);
        return sides.complete() && isQuadrilateral(seen) && (!isSquare(seen) || isInProportion(corners(seen)));
    }

    /**
     * Whether a scan's edges may be the outer rim of the shadow that the paper throws on a lid: there it grows brighter
     * outwards, and darker where the paper itself ends.
     */
    public boolean mayBeShadow(PaperSides sides) {
        return isSquare(lines(sides))
                && sides.sides().stream().flatMap(Optional::stream).anyMatch(side -> side.contrast() < 0);
    }

    private static List<Optional<Line>> lines(PaperSides sides) {
        return sides.sides().stream().map(side -> side.map(Side::line)).toList();
    }

    /** Edges that are in no proportion of the sheet's give no scale: not all of them are its own. */
    private RoughPage square(List<Optional<Line>> seen) {
        List<Point> corners = corners(seen);
        return isInProportion(corners) ? scanOfWholeSheet(corners) : scan(seen);
    }

    /**
     * The page by the resolution that the file states, where its edges give another size: the paper may be of another
     * format. It says nothing without a bar that agrees, for a program that fits a page to paper states a resolution with
     * which nobody scanned.
     */
    public Optional<RoughPage> insteadOf(RoughPage byEdges, PaperSides sides) {
        if (!byEdges.isContradicted()) {
            return Optional.empty();
        }
        RoughPage page =
                scan(lines(sides), picture.dpiX() / MM_PER_INCH, picture.dpiY() / MM_PER_INCH, Scale.STATED_RESOLUTION);
        return Optional.of(new RoughPage(
                page.map(), page.widthMm(), page.heightMm(), page.paper(), page.kind(), page.scale(), 1 / byEdges.otherMm()));
    }

    /**
     * Pixels may be as oblong as the file states, or square in spite of that: a program that fits a page to paper stretches
     * only what it states.
     */
    private boolean isInProportion(List<Point> corners) {
        double across = across(corners);
        double up = up(corners);
        double oblong = across > up ? across / up * shorter / longer : across / up * longer / shorter;
        double stated = picture.dpiX() / picture.dpiY();
        return Math.abs(oblong - 1) < Stretch.LARGEST || Math.abs(oblong / stated - 1) < Stretch.LARGEST;
    }

    private static double across(List<Point> corners) {
        return (length(corners, 0) + length(corners, 2)) / 2;
    }

    private static double up(List<Point> corners) {
        return (length(corners, 1) + length(corners, 3)) / 2;
    }

    /** Whether neighbouring edges meet at something like a corner and opposite ones run alike. */
    private static boolean isQuadrilateral(List<Optional<Line>> lines) {
        for (int i = 0; i < 4; i++) {
            Optional<Line> side = lines.get(i);
            if (angle(side, lines.get((i + 1) % 4), 90) < 90 - MOST_SLANT
                    || angle(side, lines.get((i + 2) % 4), 0) > MOST_SLANT) {
                return false;
            }
        }
        return true;
    }

    private static double angle(Optional<Line> first, Optional<Line> second, double unknown) {
        if (first.isEmpty() || second.isEmpty()) {
            return unknown;
        }
        return Angles.between(first.get().inclinationDegrees(), second.get().inclinationDegrees());
    }

    /** Lower left, lower right, upper right, upper left as the picture shows them. */
    private static List<Point> corners(List<Optional<Line>> lines) {
        List<Point> corners = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Line side = lines.get(i).orElseThrow();
            Line before = lines.get((i + 3) % 4).orElseThrow();
            corners.add(side.intersection(before, 0.1).orElseThrow());
        }
        return corners;
    }

    private static boolean isSquare(List<Optional<Line>> lines) {
        for (int i = 0; i < 4; i++) {
            if (!isSquare(lines.get(i).orElseThrow(), lines.get((i + 1) % 4).orElseThrow())) {
                return false;
            }
        }
        List<Point> corners = corners(lines);
        return isEqual(length(corners, 0), length(corners, 2)) && isEqual(length(corners, 1), length(corners, 3));
    }

    private static double length(List<Point> corners, int side) {
        return corners.get(side).distanceTo(corners.get((side + 1) % 4));
    }

    private static boolean isEqual(double first, double second) {
        return Math.abs(first - second) < EQUAL_SIDES * Math.max(first, second);
    }

    private static boolean isSquare(Line side, Line next) {
        double corner = Angles.between(side.inclinationDegrees(), next.inclinationDegrees());
        return Math.abs(corner - 90) < SQUARE_DEGREES;
    }

    private boolean isScan(List<Optional<Line>> lines) {
        for (int i = 0; i < 4; i++) {
            Optional<Line> side = lines.get(i);
            Optional<Line> next = lines.get((i + 1) % 4);
            Optional<Line> opposite = lines.get((i + 2) % 4);
            if (side.isPresent() && next.isPresent() && !isSquare(side.get(), next.get())) {
                return false;
            }
            if (side.isPresent()
                    && opposite.isPresent()
                    && Angles.between(
                                    side.get().inclinationDegrees(),
                                    opposite.get().inclinationDegrees())
                            > SQUARE_DEGREES) {
                return false;
            }
        }
        return true;
    }

    private RoughPage scanOfWholeSheet(List<Point> corners) {
        double across = across(corners);
        double up = up(corners);
        double width = across > up ? longer : shorter;
        double height = across > up ? shorter : longer;
        Vector right = corners.get(1)
                .minus(corners.get(0))
                .plus(corners.get(2).minus(corners.get(3)))
                .times(0.5 / width);
        Vector upwards = corners.get(3)
                .minus(corners.get(0))
                .plus(corners.get(2).minus(corners.get(1)))
                .times(0.5 / height);
        Point middle = corners.get(0)
                .midpointTo(corners.get(2))
                .midpointTo(corners.get(1).midpointTo(corners.get(3)));
        Point origin = middle.plus(right.times(-width / 2)).plus(upwards.times(-height / 2));
        PageMap map = PageMap.affine(right.x(), upwards.x(), origin.x(), right.y(), upwards.y(), origin.y());
        double pixelsPerMm = Math.sqrt(across / width * up / height);
        return new RoughPage(
                map, width, height, rectangle(width, height), Kind.SCAN, Scale.EDGES, millimetresByResolution(pixelsPerMm));
    }

    /** Millimetres by the stated resolution to one by the edges; 1 where none is stated that a scanner could have had. */
    private double millimetresByResolution(double pixelsPerMm) {
        return isStatedResolutionPlausible()
                ? pixelsPerMm * MM_PER_INCH / Math.sqrt(picture.dpiX() * picture.dpiY())
                : 1;
    }

    private static List<Line> rectangle(double width, double height) {
        Point origin = Point.ORIGIN;
        Point right = new Point(width, 0);
        Point far = new Point(width, height);
        Point up = new Point(0, height);
        return List.of(
                Line.through(origin, right), Line.through(right, far), Line.through(far, up), Line.through(up, origin));
    }

    /** A scan that shows the whole picture as page, because the edges are not all in it. */
    private RoughPage scan(List<Optional<Line>> lines) {
        double statedX = picture.dpiX() / MM_PER_INCH;
        double statedY = picture.dpiY() / MM_PER_INCH;
        Optional<Double> opposite = betweenOppositeEdges(lines, Math.sqrt(statedX * statedY));
        if (opposite.isPresent()) {
            return scan(lines, opposite.get(), opposite.get(), Scale.OPPOSITE_EDGES);
        }
        double filled = filledPixelsPerMm();
        return isStatedResolutionPlausible()
                ? scan(lines, statedX, statedY, Scale.STATED_RESOLUTION)
                : scan(lines, filled, filled, Scale.FILLED_PICTURE);
    }

    /** Pixels to the millimetre if the sheet fills the picture. */
    private double filledPixelsPerMm() {
        return Math.max(picture.widthPx(), picture.heightPx()) / longer;
    }

    private boolean isStatedResolutionPlausible() {
        double filled = filledPixelsPerMm();
        double most = hasProportions() ? MOST_ABOVE_FILLED : MOST_ABOVE_CUT_OFF;
        return isPlausible(picture.dpiX() / MM_PER_INCH, filled, most)
                && isPlausible(picture.dpiY() / MM_PER_INCH, filled, most);
    }

    /**
     * Pixels to the millimetre where two opposite edges are in the picture and the resolution that the file states tells
     * whether the sheet's longer or shorter side lies between them; of two pairs by the one that fits better.
     */
    private Optional<Double> betweenOppositeEdges(List<Optional<Line>> lines, double stated) {
        List<Double> found = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            Optional<Line> first = lines.get(i);
            Optional<Line> second = lines.get(i + 2);
            if (first.isPresent() && second.isPresent()) {
                double apart = Math.abs(first.get().distanceTo(nearestTo(middle(), second.get())));
                found.add(apart / longer);
                found.add(apart / shorter);
            }
        }
        return found.stream()
                .filter(pixelsPerMm -> Math.abs(pixelsPerMm / stated - 1) < RoughPage.STATED_WRONG)
                .min(Comparator.comparingDouble(pixelsPerMm -> Math.abs(pixelsPerMm / stated - 1)));
    }

    private Point middle() {
        return new Point(picture.widthPx() / 2.0, picture.heightPx() / 2.0);
    }

    private static Point nearestTo(Point point, Line line) {
        return line.pointAt(line.positionOf(point));
    }

    private RoughPage scan(List<Optional<Line>> lines, double x, double y, Scale scale) {
        PageMap map = PageMap.affine(x, 0, 0, 0, -y, picture.heightPx());
        List<Line> paper = new ArrayList<>();
        for (Optional<Line> line : lines) {
            line.ifPresent(side -> paper.add(Line.through(
                    map.inverse().apply(side.origin()), map.inverse().apply(side.pointAt(100)))));
        }
        return new RoughPage(map, picture.widthPx() / x, picture.heightPx() / y, paper, Kind.SCAN, scale);
    }

    /** Whether the picture is about as long and as broad as the sheet; one that is cut off is not. */
    private boolean hasProportions() {
        double length = Math.max(picture.widthPx(), picture.heightPx());
        double breadth = Math.min(picture.widthPx(), picture.heightPx());
        return Math.abs(breadth / length * longer / shorter - 1) < SAME_PROPORTIONS;
    }

    private static boolean isPlausible(double stated, double filled, double most) {
        return stated > LEAST_OF_FILLED * filled && stated < most * filled;
    }

    private RoughPage photograph(PaperSides sides) {
        Lens lens = lens(sides);
        List<Point> corners = corners(straightened(sides, lens));
        boolean landscape = length(corners, 0) + length(corners, 2) > length(corners, 1) + length(corners, 3);
        double width = landscape ? longer : shorter;
        double height = landscape ? shorter : longer;
        double[] matrix = projection(
                List.of(Point.ORIGIN, new Point(width, 0), new Point(width, height), new Point(0, height)), corners);
        PageMap map = new PageMap(matrix, lens);
        return new RoughPage(map, width, height, rectangle(width, height), Kind.PHOTOGRAPH, Scale.EDGES);
    }

    private static List<Optional<Line>> straightened(PaperSides sides, Lens lens) {
        return sides.sides().stream()
                .map(side -> side.map(edge -> straight(edge, lens)))
                .toList();
    }

    private static Line straight(Side side, Lens lens) {
        return PaperSides.robust(side.points().stream().map(lens::ideal).toList(), side.line(), 3);
    }

    /** The lens that makes the paper's edges straightest; a straight one where no edge is in the picture. */
    public Lens lens(PaperSides sides) {
        if (sides.count() < 2) {
            return Lens.STRAIGHT;
        }
        DoubleUnaryOperator crookedness = bend -> {
            Lens lens = lens(bend);
            double sum = 0;
            for (Optional<Side> side : sides.sides()) {
                if (side.isPresent()) {
                    sum += crookedness(side.get(), lens);
                }
            }
            return sum;
        };
        return lens(lowest(crookedness, -LARGEST_BEND, LARGEST_BEND));
    }

    private Lens lens(double bend) {
        return new Lens(
                bend,
                picture.widthPx() / 2.0,
                picture.heightPx() / 2.0,
                Math.hypot(picture.widthPx(), picture.heightPx()) / 2);
    }

    private static double crookedness(Side side, Lens lens) {
        List<Point> points = side.points().stream().map(lens::ideal).toList();
        Line line = PaperSides.robust(points, side.line(), 3);
        double sum = 0;
        for (Point point : points) {
            double off = line.distanceTo(point);
            sum += off * off / (1 + off * off / 25);
        }
        return sum;
    }

    /** Where a function with one valley is lowest, by golden sections. */
    private static double lowest(DoubleUnaryOperator function, double from, double to) {
        double golden = (Math.sqrt(5) - 1) / 2;
        double low = from;
        double high = to;
        double first = high - golden * (high - low);
        double second = low + golden * (high - low);
        double atFirst = function.applyAsDouble(first);
        double atSecond = function.applyAsDouble(second);
        while (high - low > 1e-5) {
            if (atFirst < atSecond) {
                high = second;
                second = first;
                atSecond = atFirst;
                first = high - golden * (high - low);
                atFirst = function.applyAsDouble(first);
            } else {
                low = first;
                first = second;
                atFirst = atSecond;
                second = low + golden * (high - low);
                atSecond = function.applyAsDouble(second);
            }
        }
        return (low + high) / 2;
    }

    /** The projective map that carries four places to four pixels. */
    public static double[] projection(List<Point> from, List<Point> to) {
        double[][] rows = new double[8][9];
        for (int i = 0; i < 4; i++) {
            double x = from.get(i).x() / 100;
            double y = from.get(i).y() / 100;
            double u = to.get(i).x() / 1000;
            double v = to.get(i).y() / 1000;
            rows[2 * i] = new double[] {x, y, 1, 0, 0, 0, -u * x, -u * y, u};
            rows[2 * i + 1] = new double[] {0, 0, 0, x, y, 1, -v * x, -v * y, v};
        }
        double[] h = LinearSystem.solve(rows);
        return new double[] {
            h[0] * 10, h[1] * 10, h[2] * 1000, h[3] * 10, h[4] * 10, h[5] * 1000, h[6] / 100, h[7] / 100, 1
        };
    }

    /**
     * A photograph with one edge out of the picture: its two parallel edges meet at a vanishing point, and with a usual
     * focal length the third edge says how the sheet lay.
     */
    private Optional<RoughPage> partlySeen(PaperSides sides) {
        Lens lens = lens(sides);
        List<Optional<Line>> lines = straightened(sides, lens);
        List<Integer> missing = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            if (lines.get(i).isEmpty()) {
                missing.add(i);
            }
        }
        if (missing.size() != 1) {
            return Optional.empty();
        }
        int base = (missing.get(0) + 2) % 4;
        Line side = lines.get(base).orElseThrow();
        Line next = lines.get((base + 1) % 4).orElseThrow();
        Line before = lines.get((base + 3) % 4).orElseThrow();
        return Optional.of(new Lying(side, before, next, base, lens).page());
    }

    /** A sheet of which one edge and the two beside it are seen; the axes turn with that edge. */
    private final class Lying {

        private final Line side;
        private final Line before;
        private final Line next;
        private final int base;
        private final Lens lens;
        private final Point centre;
        private final double focal;

        Lying(Line side, Line before, Line next, int base, Lens lens) {
            this.side = side;
            this.before = before;
            this.next = next;
            this.base = base;
            this.lens = lens;
            this.centre = new Point(picture.widthPx() / 2.0, picture.heightPx() / 2.0);
            this.focal = FOCAL_SHARE * Math.hypot(picture.widthPx(), picture.heightPx());
        }

        /** Standing on its longer edge, unless the edge that is missing would then be in the picture. */
        RoughPage page() {
            RoughPage onLonger = page(longer);
            return showsMissing(onLonger) ? page(shorter) : onLonger;
        }

        private RoughPage page(double edge) {
            Point left = side.intersection(before, 0.1).orElseThrow();
            Point right = side.intersection(next, 0.1).orElseThrow();
            double[] away = direction(before, next);
            double[] along = squareTo(away, left, right);
            double[] corner = ray(left);
            double unit = alongTo(corner, along, ray(right)) / edge;
            double[] matrix = new double[9];
            for (int row = 0; row < 3; row++) {
                matrix[row * 3] = along[row] * unit;
                matrix[row * 3 + 1] = away[row] * unit;
                matrix[row * 3 + 2] = corner[row];
            }
            return rough(intrinsic(matrix), edge);
        }

        private boolean showsMissing(RoughPage page) {
            Line missing = page.paper().get((base + 2) % 4);
            double length = base % 2 == 0 ? page.widthMm() : page.heightMm();
            int shown = 0;
            for (double share = 0.05; share < 1; share += 0.1) {
                Point pixel = page.map().apply(missing.pointAt(share * length));
                if (pixel.x() > 0 && pixel.y() > 0 && pixel.x() < picture.widthPx() && pixel.y() < picture.heightPx()) {
                    shown++;
                }
            }
            return shown > 5;
        }

        private double[] ray(Point pixel) {
            return new double[] {(pixel.x() - centre.x()) / focal, (pixel.y() - centre.y()) / focal, 1};
        }

        /** The direction in space of two edges that are parallel on paper. */
        private double[] direction(Line first, Line second) {
            double[] meeting = cross(plane(first), plane(second));
            double length = Math.sqrt(dot(meeting, meeting));
            // The edges run away from the seen edge, which the directed line of the second one tells.
            double[] at = ray(second.origin());
            double[] on = {at[0] + meeting[0] / length * 1e-3, at[1] + meeting[1] / length * 1e-3, 1 + meeting[2] / length * 1e-3};
            Point moved = new Point(on[0] / on[2] * focal + centre.x(), on[1] / on[2] * focal + centre.y());
            double sign = second.direction().dot(moved.minus(second.origin())) >= 0 ? 1 : -1;
            return new double[] {sign * meeting[0] / length, sign * meeting[1] / length, sign * meeting[2] / length};
        }

        private double[] plane(Line line) {
            return cross(ray(line.origin()), ray(line.pointAt(1000)));
        }

        /** The direction in space of the seen edge: in its plane and square to the edges beside it. */
        private double[] squareTo(double[] away, Point left, Point right) {
            double[] along = cross(cross(ray(left), ray(right)), away);
            double length = Math.sqrt(dot(along, along));
            double sign = dot(along, new double[] {right.x() - left.x(), right.y() - left.y(), 0}) >= 0 ? 1 : -1;
            return new double[] {sign * along[0] / length, sign * along[1] / length, sign * along[2] / length};
        }

        /** How far along the seen edge, from its left corner, the ray of the right corner meets it. */
        private static double alongTo(double[] corner, double[] along, double[] far) {
            double[] normal = cross(far, cross(corner, along));
            return -dot(corner, normal) / dot(along, normal);
        }

        private double[] intrinsic(double[] spatial) {
            double[] camera = {focal, 0, centre.x(), 0, focal, centre.y(), 0, 0, 1};
            return PageMap.product(camera, spatial);
        }

        /** Turns the axes back from the seen edge to the picture's lower left corner. */
        private RoughPage rough(double[] matrix, double edge) {
            double depth = edge == longer ? shorter : longer;
            PageMap turned =
                    switch (base) {
                        case 0 -> PageMap.affine(1, 0, 0, 0, 1, 0);
                        case 1 -> PageMap.affine(0, 1, 0, -1, 0, depth);
                        case 2 -> PageMap.affine(-1, 0, edge, 0, -1, depth);
                        default -> PageMap.affine(0, -1, edge, 1, 0, 0);
                    };
            double width = base % 2 == 0 ? edge : depth;
            double height = base % 2 == 0 ? depth : edge;
            PageMap map = new PageMap(matrix, lens).after(turned);
            return new RoughPage(map, width, height, rectangle(width, height), Kind.PHOTOGRAPH, Scale.EDGES);
        }

        private static double[] cross(double[] a, double[] b) {
            return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
        }

        private static double dot(double[] a, double[] b) {
            return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        }
    }
}
