package wallplate.sheet.page;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.sheet.ScanPage.Picture;

/**
 * The edges of the paper in a picture, each from many profiles across it.
 *
 * @param sides bottom, right, top, left as the picture shows them, in pixels; empty where that edge is not in the picture
 */
public record PaperSides(List<Optional<Side>> sides) {

    private static final int FITS = 12;
    private static final int STATIONS = 160;
    /** An outline that spans less of the picture than this is no sheet's. */
    private static final double LEAST_SHARE_SEEN = 0.3;

    public PaperSides {
        sides = List.copyOf(sides);
    }

    /**
     * One edge.
     *
     * @param line directed so that the paper lies on its left in the picture's own axes seen with y up
     * @param points where profiles found it
     * @param contrast the paper's grey less the surround's
     */
    public record Side(Line line, List<Point> points, double contrast) {}

    /** Whether all four edges are in the picture. */
    public boolean complete() {
        return sides.stream().allMatch(Optional::isPresent);
    }

    /** How many edges are in the picture. */
    public long count() {
        return sides.stream().filter(Optional::isPresent).count();
    }

    /** The edges found near a rough outline of the paper. */
    public static PaperSides near(List<Point> outline, Picture picture) {
        if (outline.size() < 40) {
            return none();
        }
        List<Optional<Line>> rough = roughSides(outline, picture);
        List<Optional<Side>> sides = new ArrayList<>();
        double reach = 0.012 * Math.max(picture.widthPx(), picture.heightPx());
        for (int i = 0; i < 4; i++) {
            Optional<Line> before = rough.get((i + 3) % 4);
            Optional<Line> after = rough.get((i + 1) % 4);
            Optional<Line> side = rough.get(i);
            sides.add(side.flatMap(line -> new SideFit(picture, reach).fit(line, before, after)));
        }
        return new PaperSides(sides);
    }

    static PaperSides none() {
        return new PaperSides(Collections.nCopies(4, Optional.empty()));
    }

    /** Four lines that the outline follows: each point belongs to the nearest, and stray points count little. */
    private static List<Optional<Line>> roughSides(List<Point> outline, Picture picture) {
        double left = Double.MAX_VALUE, right = 0, top = Double.MAX_VALUE, bottom = 0;
        for (Point point : outline) {
            left = Math.min(left, point.x());
            right = Math.max(right, point.x());
            top = Math.min(top, point.y());
            bottom = Math.max(bottom, point.y());
        }
        if (right - left < LEAST_SHARE_SEEN * picture.widthPx()
                || bottom - top < LEAST_SHARE_SEEN * picture.heightPx()) {
            return Collections.nCopies(4, Optional.empty());
        }
        List<Line> lines = new ArrayList<>(List.of(
                Line.through(new Point(left, bottom), new Point(right, bottom)),
                Line.through(new Point(right, bottom), new Point(right, top)),
                Line.through(new Point(right, top), new Point(left, top)),
                Line.through(new Point(left, top), new Point(left, bottom))));
        double scale = 0.04 * Math.max(picture.widthPx(), picture.heightPx());
        int[] members = new int[4];
        for (int turn = 0; turn < FITS; turn++) {
            scale = Math.max(0.004 * Math.max(picture.widthPx(), picture.heightPx()), scale * 0.75);
            List<List<Point>> groups = grouped(outline, lines);
            for (int i = 0; i < 4; i++) {
                lines.set(i, robust(groups.get(i), lines.get(i), scale));
                members[i] = close(groups.get(i), lines.get(i), scale);
            }
        }
        int least = outline.size() / 40;
        List<Optional<Line>> sides = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            sides.add(members[i] < Math.max(12, least) ? Optional.empty() : Optional.of(lines.get(i)));
        }
        return sides;
    }

    private static List<List<Point>> grouped(List<Point> outline, List<Line> lines) {
        List<List<Point>> groups = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            groups.add(new ArrayList<>());
        }
        for (Point point : outline) {
            int nearest = 0;
            for (int i = 1; i < 4; i++) {
                if (Math.abs(lines.get(i).distanceTo(point)) < Math.abs(lines.get(nearest).distanceTo(point))) {
                    nearest = i;
                }
            }
            groups.get(nearest).add(point);
        }
        return groups;
    }

    private static int close(List<Point> points, Line line, double scale) {
        return (int) points.stream()
                .filter(point -> Math.abs(line.distanceTo(point)) < 2 * scale)
                .count();
    }

    /** The line through points by weighted orthogonal least squares, kept in the direction of the line before. */
    static Line robust(List<Point> points, Line start, double scale) {
        Line line = start;
        for (int turn = 0; turn < 3; turn++) {
            double w = 0, x = 0, y = 0;
            for (Point point : points) {
                double weight = weight(line.distanceTo(point) / scale);
                w += weight;
                x += weight * point.x();
                y += weight * point.y();
            }
            if (w < 1e-9) {
                return line;
            }
            Point mean = new Point(x / w, y / w);
            double xx = 0, xy = 0, yy = 0;
            for (Point point : points) {
                double weight = weight(line.distanceTo(point) / scale);
                Vector d = point.minus(mean);
                xx += weight * d.x() * d.x();
                xy += weight * d.x() * d.y();
                yy += weight * d.y() * d.y();
            }
            double angle = Math.toDegrees(0.5 * Math.atan2(2 * xy, xx - yy));
            Vector direction = Vector.atDegrees(angle);
            line = new Line(mean, direction.dot(line.direction()) < 0 ? direction.negated() : direction);
        }
        return line;
    }

    private static double weight(double off) {
        return 1 / ((1 + off * off) * (1 + off * off));
    }

    /** Finds the step in grey along one side. */
    private static final class SideFit {

        private static final double LEAST_CONTRAST = 2.5;
        private static final double LEAST_SHARE = 0.65;
        /** Shadows beside paper on a white lid differ by up to forty from it. */
        private static final double LEAST_CONTRAST_OF_INK = 40;

        private static final double STREAK_WITHIN_PX = 0.3;
        private static final double SAME_LEVEL = 0.04;
        private static final int ALONG = 6;
        private static final int FINE = 4;

        private final Picture picture;
        private final double reach;

        SideFit(Picture picture, double reach) {
            this.picture = picture;
            this.reach = reach;
        }

        Optional<Side> fit(Line line, Optional<Line> before, Optional<Line> after) {
            double[] extent = extent(line, before, after);
            if (extent[1] - extent[0] < 4 * reach) {
                return Optional.empty();
            }
            List<Step> steps = new ArrayList<>();
            for (int i = 0; i < STATIONS; i++) {
                double at = extent[0] + (i + 0.5) / STATIONS * (extent[1] - extent[0]);
                step(line, at).ifPresent(steps::add);
            }
            double brighter = steps.stream().filter(step -> step.contrast > 0).count();
            boolean paperIsBrighter = brighter * 2 >= steps.size();
            List<Step> same = steps.stream()
                    .filter(step -> step.contrast > 0 == paperIsBrighter)
                    .toList();
            return side(line, same);
        }

        private Optional<Side> side(Line line, List<Step> steps) {
            List<Point> points = steps.stream().map(Step::point).toList();
            if (points.size() < LEAST_SHARE * STATIONS) {
                return Optional.empty();
            }
            Line fitted = robust(points, line, reach / 6);
            Bow bow = Bow.of(points, fitted, reach / 8);
            List<Point> close = points.stream()
                    .filter(point -> Math.abs(bow.offset(point)) < reach / 20)
                    .toList();
            if (close.size() < LEAST_SHARE * STATIONS) {
                return Optional.empty();
            }
            double contrast =
                    steps.stream().mapToDouble(Step::contrast).average().orElse(0);
            Line best = robust(close, fitted, reach / 6);
            Vector shift = best.direction().leftNormal().times(steepest(close, best));
            List<Point> moved = close.stream().map(point -> point.plus(shift)).toList();
            if (isStroke(moved, best, Math.abs(contrast))) {
                return Optional.empty();
            }
            return Optional.of(new Side(new Line(best.origin().plus(shift), best.direction()), moved, contrast));
        }

        /**
         * Whether a line of ink was taken for an edge: the paper is the same close by on either side, dark as the line is, or
         * pale but along one row or column of pixels, as a feeder's streak is. A rafter may run across the whole sheet. The
         * rim of a shadow is the same on either side only further off.
         */
        private boolean isStroke(List<Point> points, Line line, double contrast) {
            Vector outwards = line.direction().leftNormal();
            return (contrast > LEAST_CONTRAST_OF_INK || isAlongPixels(points, line))
                    && Math.abs(level(points, outwards) - level(points, outwards.negated())) < SAME_LEVEL * contrast;
        }

        private static boolean isAlongPixels(List<Point> points, Line line) {
            double length = line.positionOf(points.get(points.size() - 1)) - line.positionOf(points.get(0));
            double lean = Math.min(Math.abs(line.direction().x()), Math.abs(line.direction().y()));
            return Math.abs(length) * lean < STREAK_WITHIN_PX;
        }

        /** The middle grey of all places just beyond a line of ink at the points. */
        private double level(List<Point> points, Vector towards) {
            return points.stream()
                    .flatMapToDouble(point -> DoubleStream.of(0.25, 0.3, 0.35, 0.4, 0.45)
                            .map(share -> grey(point.plus(towards.times(share * reach)))))
                    .sorted()
                    .skip(points.size() * 5L / 2)
                    .findFirst()
                    .orElseThrow();
        }

        /**
         * How far outwards from the points the grey first changes steeply, on the mean of all profiles: a soft shadow
         * beside the paper moves the middle of the step, and its outer end is steep too.
         */
        private double steepest(List<Point> points, Line line) {
            int half = (int) Math.round(reach / 4);
            Vector outwards = line.direction().leftNormal();
            double[] profile = new double[(2 * half + 1) * FINE];
            for (Point point : points) {
                for (int k = 0; k < profile.length; k++) {
                    double offset = (double) k / FINE - half;
                    profile[k] += grey(point.plus(outwards.times(offset)));
                }
            }
            int arm = 2 * FINE;
            double[] change = new double[profile.length];
            double most = 0;
            for (int k = arm; k + arm < profile.length; k++) {
                double near = 1 - 0.5 * Math.abs((double) k / FINE - half) / half;
                change[k] = Math.abs(profile[k + arm] - profile[k - arm]) * near;
                most = Math.max(most, change[k]);
            }
            int best = arm;
            while (best + arm < profile.length && (change[best] < 0.4 * most || change[best + 1] > change[best])) {
                best++;
            }
            return (double) best / FINE - half;
        }

        private double grey(Point at) {
            double x = Math.max(0.5, Math.min(picture.widthPx() - 1.5, at.x())) - 0.5;
            double y = Math.max(0.5, Math.min(picture.heightPx() - 1.5, at.y())) - 0.5;
            int left = (int) x;
            int top = (int) y;
            int index = top * picture.widthPx() + left;
            byte[] grey = picture.grey();
            double upper = (grey[index] & 0xff) * (1 - x + left) + (grey[index + 1] & 0xff) * (x - left);
            int below = index + picture.widthPx();
            double lower = (grey[below] & 0xff) * (1 - x + left) + (grey[below + 1] & 0xff) * (x - left);
            return upper + (lower - upper) * (y - top);
        }

        /** From corner to corner, short of them, and only as far as the picture goes. */
        private double[] extent(Line line, Optional<Line> before, Optional<Line> after) {
            double from = before.flatMap(other -> line.intersection(other, 0.3))
                    .map(line::positionOf)
                    .orElse(-1e6);
            double to = after.flatMap(other -> line.intersection(other, 0.3))
                    .map(line::positionOf)
                    .orElse(1e6);
            double first = Double.MAX_VALUE;
            double last = -Double.MAX_VALUE;
            double step = reach / 2;
            double longest = picture.widthPx() + picture.heightPx();
            for (double at = Math.max(from, -longest); at <= Math.min(to, longest); at += step) {
                Point point = line.pointAt(at);
                if (inside(point)) {
                    first = Math.min(first, at);
                    last = Math.max(last, at);
                }
            }
            return new double[] {first + reach / 2, last - reach / 2};
        }

        private boolean inside(Point point) {
            return point.x() > 2 && point.y() > 2 && point.x() < picture.widthPx() - 2 && point.y() < picture.heightPx() - 2;
        }

        private record Step(Point point, double contrast) {}

        /** The steepest change within reach, if what lies on either side differs by enough. */
        private Optional<Step> step(Line line, double at) {
            int half = (int) Math.round(reach);
            int arm = Math.max(4, half / 5);
            Vector outwards = line.direction().leftNormal();
            double[] sums = new double[2 * half + 2];
            for (int k = -half; k <= half; k++) {
                double grey = patch(line.pointAt(at).plus(outwards.times(k)), line.direction());
                sums[k + half + 1] = sums[k + half] + grey;
            }
            int best = -1;
            double most = 0;
            for (int k = arm; k + arm < sums.length; k++) {
                double difference = (sums[k] - sums[k - arm] - (sums[k + arm] - sums[k])) / arm;
                double preferred = Math.abs(difference) * (1 - 0.3 * Math.abs(k - half - 0.5) / half);
                if (preferred > most) {
                    most = preferred;
                    best = k;
                }
            }
            if (best < 0) {
                return Optional.empty();
            }
            double inner = (sums[best] - sums[best - arm]) / arm;
            double outer = (sums[best + arm] - sums[best]) / arm;
            if (Math.abs(inner - outer) < LEAST_CONTRAST) {
                return Optional.empty();
            }
            double offset = halfway(sums, best, arm) - half;
            return Optional.of(new Step(line.pointAt(at).plus(outwards.times(offset)), inner - outer));
        }

        /** Where the grey passes halfway between the levels away from the step, in samples from the first. */
        private static double halfway(double[] sums, int best, int arm) {
            int quarter = Math.max(1, arm / 2);
            double inner = (sums[best - quarter] - sums[best - arm]) / (arm - quarter);
            double outer = (sums[best + arm] - sums[best + quarter]) / (arm - quarter);
            // The area under the step between its levels says where it is, whatever its shape.
            double area = sums[best + arm] - sums[best - arm];
            double share = (area - 2.0 * arm * outer) / (inner - outer);
            return best - arm + share - 0.5;
        }

        private double patch(Point centre, Vector along) {
            double sum = 0;
            for (int k = -ALONG; k <= ALONG; k += 2) {
                int column = (int) Math.floor(centre.x() + along.x() * k);
                int row = (int) Math.floor(centre.y() + along.y() * k);
                column = Math.max(0, Math.min(picture.widthPx() - 1, column));
                row = Math.max(0, Math.min(picture.heightPx() - 1, row));
                sum += picture.grey()[row * picture.widthPx() + column] & 0xff;
            }
            return sum / (ALONG + 1);
        }
    }

    /** A shallow parabola over a line, which a bent lens makes of a straight edge. */
    private record Bow(Line line, double constant, double slope, double bend, double scale) {

        static Bow of(List<Point> points, Line line, double robustScale) {
            double scale = points.stream().mapToDouble(p -> Math.abs(line.positionOf(p))).max().orElse(1);
            Bow bow = new Bow(line, 0, 0, 0, scale);
            for (int turn = 0; turn < 6; turn++) {
                bow = bow.refitted(points, robustScale / (1 + turn));
            }
            return bow;
        }

        double offset(Point point) {
            double at = line.positionOf(point) / scale;
            return line.distanceTo(point) - constant - slope * at - bend * at * at;
        }

        private Bow refitted(List<Point> points, double robustScale) {
            double[][] normal = new double[3][4];
            for (Point point : points) {
                double at = line.positionOf(point) / scale;
                double[] basis = {1, at, at * at};
                double weight = weight(offset(point) / robustScale);
                for (int i = 0; i < 3; i++) {
                    for (int j = 0; j < 3; j++) {
                        normal[i][j] += weight * basis[i] * basis[j];
                    }
                    normal[i][3] += weight * basis[i] * line.distanceTo(point);
                }
            }
            double[] solved = LinearSystem.solve(normal);
            return new Bow(line, solved[0], solved[1], solved[2], scale);
        }
    }
}
