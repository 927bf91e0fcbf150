package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import wallplate.drafting.layout.Dimension.Angular;
import wallplate.drafting.layout.Dimension.Extension;
import wallplate.drafting.layout.Dimension.Linear;
import wallplate.drafting.paper.Layer;
import wallplate.drafting.paper.Owner;
import wallplate.drafting.paper.Pen;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.LineRole;

/**
 * The dimensions that a drawing can have and the lines that they stand on, in the detail's own axes.
 *
 * <p>Each rule looks for the edges that it needs and gives nothing where they are missing. Dimension lines lie outside
 * the drawing wherever they can, the shorter ones nearer to it.
 */
final class DimensionRules {

    /** From the drawing to the nearest dimension line, on the sheet. */
    private static final double FIRST = 7;
    /** Between dimension lines one outside the other, on the sheet. */
    private static final double NEXT = 7.5;
    /** A chain with narrower gaps than this could not be read. */
    private static final double NARROWEST_GAP = 6;

    /** How far an angle's own leg runs on past its arc, on the sheet. */
    private static final double LEG = 4;

    private static final double PARALLEL_SINE = 1e-6;

    private final ExpectedDrawing drawing;
    private final DetailLines lines;
    private final SizeFigures figures;
    private final double first;
    private final double next;

    /** @param enlargement how much larger than on paper the drawing will be shown */
    DimensionRules(ExpectedDrawing drawing, DetailLines lines, SizeFigures figures, double enlargement) {
        this.drawing = drawing;
        this.lines = lines;
        this.figures = figures;
        this.first = FIRST / enlargement;
        this.next = NEXT / enlargement;
    }

    private static Owner owner(String part) {
        return Owner.of(Layer.DIMENSION, part);
    }

    private static Linear linear(
            String key, Segment line, Extension from, Extension to, String figure, Owner owner) {
        return new Linear(key, line, from, to, figure, owner);
    }

    /** In the angle between the tie beam's top and the rafter's underside, short of the first post. */
    Optional<Dimension> pitch() {
        Optional<Segment> beam = lines.edge("tie-beam", 0, "top").or(() -> lines.edge("tie-beam", 0, "bottom"));
        return beam.isPresent() ? pitchOver(beam.get().line(), 0) : pitchAtHeel();
    }

    /** At the heel point, over a level leg of its own. */
    Optional<Dimension> pitchAtHeel() {
        return pitchOver(new Line(Point.ORIGIN, new Vector(1, 0)), LEG / FIRST * first);
    }

    private Optional<Dimension> pitchOver(Line level, double leg) {
        Optional<String> figure = figures.ofKey("roof.pitch");
        Optional<Segment> rafter = lines.edge("rafter", 0, "bottom");
        if (figure.isEmpty() || rafter.isEmpty()) {
            return Optional.empty();
        }
        Optional<Point> apex = level.intersection(rafter.get().line(), PARALLEL_SINE);
        if (apex.isEmpty()) {
            return Optional.empty();
        }
        double room = firstUprightBeyond(apex.get().x()) - apex.get().x();
        double radius = Math.max(12, Math.min(32, 0.5 * room));
        double slope = rafter.get().inclinationDegrees();
        return Optional.of(
                new Angular("roof.pitch", apex.get(), radius, 0, slope, leg, figure.get(), owner("rafter")));
    }

    private double firstUprightBeyond(double x) {
        return lines.all().stream()
                .filter(line -> line.role() == LineRole.BREAK || line.part().equals("post"))
                .mapToDouble(line -> line.segment().midpoint().x())
                .filter(upright -> upright > x + 5)
                .min()
                .orElse(x + 60);
    }

    /** Level, under the eaves, from the plumb cut to the outer wall face. */
    Optional<Dimension> overhang() {
        Optional<String> figure = figures.ofKey("rafter.overhang");
        Optional<Segment> cut = lines.edge("rafter", 0, "cut");
        Optional<Segment> wall = lines.edge("wall", 0, "outer");
        if (figure.isEmpty() || cut.isEmpty() || wall.isEmpty()) {
            return Optional.empty();
        }
        double cutX = cut.get().midpoint().x();
        double wallX = wall.get().midpoint().x();
        double y = lowestOutside(wallX - 0.2) - first;
        return Optional.of(linear(
                "rafter.overhang",
                Segment.between(cutX, y, wallX, y),
                Extension.thin(new Point(cutX, lines.lowestAt(cutX).orElse(y))),
                Extension.thin(new Point(wallX, y)),
                figure.get(),
                owner("rafter")));
    }

    private static double top(Segment upright) {
        return Math.max(upright.start().y(), upright.end().y());
    }

    private double lowestOutside(double x) {
        double lowest = Double.POSITIVE_INFINITY;
        for (DrawnLine line : lines.all()) {
            for (Point end : List.of(line.segment().start(), line.segment().end())) {
                if (end.x() < x) {
                    lowest = Math.min(lowest, end.y());
                }
            }
        }
        return lowest;
    }

    /** Plumb, outside the part's outer end. */
    Optional<Dimension> endDepth(String part) {
        Optional<String> figure = figures.ofKey(part + ".depth");
        Optional<Segment> end = lines.edge(part, 0, "end");
        if (figure.isEmpty() || end.isEmpty()) {
            return Optional.empty();
        }
        double x = end.get().midpoint().x() - first;
        double low = Math.min(end.get().start().y(), end.get().end().y());
        double high = top(end.get());
        return Optional.of(linear(
                part + ".depth",
                Segment.between(x, low, x, high),
                Extension.thin(new Point(end.get().midpoint().x(), low)),
                Extension.thin(new Point(end.get().midpoint().x(), high)),
                figure.get(),
                owner(part)));
    }

    /** Level, under the foot of a wall. */
    Optional<Dimension> wallThickness(String wall) {
        Optional<Segment> outer = lines.edge(wall, 0, "outer");
        Optional<Segment> inner = lines.edge(wall, 0, "inner");
        if (outer.isEmpty() || inner.isEmpty()) {
            return Optional.empty();
        }
        return underWalls(wall, wall + ".thickness", outer.get(), inner.get());
    }

    /** Level, between the inner faces of two walls, in line with their thicknesses. */
    Optional<Dimension> clearSpan(String farWall) {
        Optional<Segment> near = lines.edge("wall", 0, "inner");
        Optional<Segment> far = lines.edge(farWall, 0, "inner");
        return near.isPresent() && far.isPresent()
                ? underWalls(farWall, farWall + ".clear-span", near.get(), far.get())
                : Optional.empty();
    }

    private Optional<Dimension> underWalls(String part, String key, Segment from, Segment to) {
        double fromX = from.midpoint().x();
        double toX = to.midpoint().x();
        double y = wallFoot() - first;
        return figures.ofKey(key)
                .map(figure -> linear(
                        key,
                        Segment.between(fromX, y, toX, y),
                        Extension.thin(new Point(fromX, wallFoot())),
                        Extension.thin(new Point(toX, wallFoot())),
                        figure,
                        owner(part)));
    }

    private boolean isSetOutFromCentre() {
        return !drawing.task().sizes().word("posts.set-out-from").orElse("").equals("outer-face");
    }

    private double wallFoot() {
        return lines.outlines("wall").getOrDefault(0, List.of()).stream()
                .flatMap(line -> Stream.of(line.segment().start(), line.segment().end()))
                .mapToDouble(Point::y)
                .min()
                .orElse(0);
    }

    /** From the wall's centre line, or its outer face, to the first post's. */
    Optional<Dimension> postPosition() {
        Optional<String> figure = figures.ofKey("post.position");
        Optional<Segment> outer = lines.edge("wall", 0, "outer");
        Optional<Segment> inner = lines.edge("wall", 0, "inner");
        List<Point> posts = lines.centres("post");
        if (figure.isEmpty() || outer.isEmpty() || inner.isEmpty() || posts.isEmpty()) {
            return Optional.empty();
        }
        boolean fromFace = !isSetOutFromCentre();
        double face = outer.get().midpoint().x();
        double from = fromFace ? face : (face + inner.get().midpoint().x()) / 2;
        double to = posts.get(0).x();
        double y = wallFoot() - first - next;
        Point foot = new Point(from, wallFoot());
        Point post = new Point(to, lines.lowestAt(to).orElse(posts.get(0).y()));
        return Optional.of(linear(
                "post.position",
                Segment.between(from, y, to, y),
                fromFace ? Extension.thin(foot) : Extension.centreLine(foot),
                new Extension(post, 1, Pen.CHAIN),
                figure.get(),
                owner("post")));
    }

    /** Along the line of like parts, on the upper side of the drawing. */
    List<Dimension> spacingAbove(String part) {
        List<Point> centres = lines.centres(part);
        Optional<String> figure = figures.ofKey(part + ".spacing");
        if (figure.isEmpty() || centres.size() < 2) {
            return List.of();
        }
        Line along = Line.through(centres.get(0), centres.get(centres.size() - 1));
        double surface = lines.all().stream()
                .filter(line -> line.role() != LineRole.BREAK)
                .flatMap(line -> Stream.of(line.segment().start(), line.segment().end()))
                .mapToDouble(along::distanceTo)
                .max()
                .orElse(0);
        Vector up = along.direction().leftNormal();
        return chain(part, centres, figure.get(), up.times(surface + first), up.times(surface));
    }

    /** Along a row of like parts, on the lower side of the drawing. */
    List<Dimension> spacingBelow(String part) {
        List<Point> centres = lines.centres(part);
        Optional<String> figure = figures.ofKey(part + ".spacing");
        if (figure.isEmpty() || centres.size() < 2) {
            return List.of();
        }
        double y = centres.get(0).y();
        OptionalDouble low = lines.lowestAt(centres.get(0).x());
        Vector down = new Vector(0, low.orElse(y) - y);
        return chain(part, centres, figure.get(), down.plus(new Vector(0, -first)), down);
    }

    private List<Dimension> chain(String part, List<Point> centres, String figure, Vector toLine, Vector toSurface) {
        List<Dimension> chain = new ArrayList<>();
        for (int index = 1; index < centres.size(); index++) {
            Point before = centres.get(index - 1);
            Point after = centres.get(index);
            if (before.distanceTo(after) < NARROWEST_GAP && index > 1) {
                break;
            }
            chain.add(linear(
                    part + ".spacing",
                    new Segment(before.plus(toLine), after.plus(toLine)),
                    Extension.thin(before.plus(toSurface)),
                    Extension.thin(after.plus(toSurface)),
                    figure,
                    owner(part)));
        }
        return chain;
    }

    /** Square to the part's edges, beyond the break line. */
    Optional<Dimension> innerDepth(String part) {
        Optional<String> figure = figures.ofKey(part + ".depth");
        Optional<Segment> bottom = lines.edge(part, 0, "bottom");
        Optional<Segment> top = lines.edge(part, 0, "top");
        if (figure.isEmpty() || bottom.isEmpty() || top.isEmpty()) {
            return Optional.empty();
        }
        Point low = innerEnd(bottom.get());
        Point high = innerEnd(top.get());
        Line lowEdge = new Line(low, inward(bottom.get()));
        double position = Math.max(0, lowEdge.positionOf(high)) + first;
        Point start = lowEdge.pointAt(position);
        Point end = lowEdge.offset(lowEdge.distanceTo(high)).pointAt(position);
        return Optional.of(linear(
                part + ".depth",
                new Segment(start, end),
                Extension.thin(low),
                Extension.thin(high),
                figure.get(),
                owner(part)));
    }

    private static Point innerEnd(Segment edge) {
        return edge.start().x() > edge.end().x() ? edge.start() : edge.end();
    }

    private static Vector inward(Segment edge) {
        return edge.start().x() > edge.end().x() ? edge.vector().negated() : edge.vector();
    }

    /** The length of an edge, beside it on the side that the vector points to. */
    Optional<Dimension> lengthOf(String key, String part, String edge, Vector side) {
        Optional<String> figure = figures.ofKey(key);
        Optional<Segment> line = lines.edge(part, 0, edge);
        if (figure.isEmpty() || line.isEmpty() || line.get().length() == 0) {
            return Optional.empty();
        }
        return Optional.of(beside(key, part, line.get().start(), line.get().end(), side, figure.get()));
    }

    /** From one parallel edge to the other, beside their ends on the side that the vector points to. */
    Optional<Dimension> between(String key, String part, Segment from, Segment to, Vector side) {
        Optional<String> figure = figures.ofKey(key);
        if (figure.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(beside(key, part, endTowards(from, side), endTowards(to, side), side, figure.get()));
    }

    /** Between the ends of two parallel edges, beyond the break line. */
    Optional<Dimension> beyondBreak(String key, String part, Segment low, Segment high) {
        Optional<String> figure = figures.ofKey(key);
        if (figure.isEmpty()) {
            return Optional.empty();
        }
        Vector along = inward(low).unit();
        return Optional.of(beside(key, part, innerEnd(low), innerEnd(high), along, figure.get()));
    }

    /** Between two places that no key names; the line lies on the side that the vector points to. */
    Dimension unnamed(String part, Point from, Point to, Vector side) {
        double length = Math.abs(side.unit().leftNormal().dot(to.minus(from)));
        return beside(part, part, from, to, side, figures.ofPaper(length));
    }

    /** Between two places, for a key; the line lies on the side that the vector points to. */
    Optional<Dimension> places(String key, String part, Point from, Point to, Vector side) {
        return figures.ofKey(key).map(figure -> beside(key, part, from, to, side, figure));
    }

    private static Point endTowards(Segment edge, Vector side) {
        boolean end = edge.vector().dot(side) > 0;
        return end ? edge.end() : edge.start();
    }

    /** The dimension line lies square to the side, far enough out for both measured places. */
    private Linear beside(String key, String part, Point from, Point to, Vector side, String figure) {
        Vector out = side.unit();
        double reach = Math.max(out.dot(from.minus(Point.ORIGIN)), out.dot(to.minus(Point.ORIGIN))) + first;
        Point start = from.plus(out.times(reach - out.dot(from.minus(Point.ORIGIN))));
        Point end = to.plus(out.times(reach - out.dot(to.minus(Point.ORIGIN))));
        return linear(key, new Segment(start, end), Extension.thin(from), Extension.thin(to), figure, owner(part));
    }
}
