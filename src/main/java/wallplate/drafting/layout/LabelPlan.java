package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wallplate.geometry.Line;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;
import wallplate.solver.LineRole;

/**
 * What each part is called on the drawing, and the places in it that a leader may point to.
 *
 * <p>A leader ends in a dot inside a body and in an arrowhead on an outline (ISO 128-22, as commonly taught); a body
 * thinner than 2 mm has no room for a dot.
 */
final class LabelPlan {

    private static final double ROOM_FOR_DOT = 2.0;
    /** A dot keeps this far from lines of other parts, so that it is clear what it stands in; less in thin bodies. */
    private static final double CLEAR_OF_OTHERS = 1.6;

    private static final String[][] PAIRS = {{"bottom", "top"}, {"outer", "inner"}, {"low", "high"}};

    private static final double[] FRACTIONS = {0.5, 0.3, 0.7, 0.15, 0.85};

    private static final Placement IN_DETAIL_AXES = new Placement(Point.ORIGIN, false);

    private final DetailLines lines;
    private final PartNames names;

    LabelPlan(DetailLines lines, PartNames names) {
        this.lines = lines;
        this.names = names;
    }

    /**
     * One label.
     *
     * @param anchors where its leader may end, the better ones first; none where the part is hidden or too small to be
     *     pointed at
     */
    record Label(String part, String text, List<Anchor> anchors) {

        Label {
            anchors = List.copyOf(anchors);
        }
    }

    /** @param inside whether it lies in a body, not on an outline */
    record Anchor(Point place, boolean inside) {}

    List<Label> labels(Placement placement) {
        List<Body> bodies = bodies(IN_DETAIL_AXES);
        List<Label> labels = new ArrayList<>();
        for (String part : parts()) {
            List<Anchor> anchors = anchors(part, bodies).stream()
                    .map(anchor -> new Anchor(placement.apply(anchor.place()), anchor.inside()))
                    .toList();
            if (isNamed(part)) {
                labels.add(new Label(part, names.label(part), anchors));
            }
        }
        return labels;
    }

    /**
     * A body between two parallel edges.
     *
     * @param cut whether it is cut through, and so hides what lies beyond it
     */
    record Body(String part, boolean cut, Line edge, double thickness, double length) {

        boolean contains(double x, double y) {
            double alongX = edge.direction().x();
            double alongY = edge.direction().y();
            double fromX = x - edge.origin().x();
            double fromY = y - edge.origin().y();
            double position = alongX * fromX + alongY * fromY;
            double distance = (alongX * fromY - alongY * fromX) * Math.signum(thickness);
            return position >= 0 && position <= length && distance >= 0 && distance <= Math.abs(thickness);
        }
    }

    /** The bodies of the drawing, in the order of its parts. */
    List<Body> bodies(Placement placement) {
        List<Body> bodies = new ArrayList<>();
        for (String part : parts()) {
            for (int index : lines.outlines(part).keySet()) {
                for (String[] pair : PAIRS) {
                    Optional<Segment> first = lines.edge(part, index, pair[0]).map(placement::apply);
                    Optional<Segment> second = lines.edge(part, index, pair[1]).map(placement::apply);
                    if (first.isPresent() && second.isPresent()) {
                        Line edge = first.get().line();
                        double thickness = edge.distanceTo(second.get().midpoint());
                        bodies.add(new Body(part, isCut(part), edge, thickness, first.get().length()));
                    }
                }
            }
        }
        return bodies;
    }

    /** What has neither sizes nor a material of its own, such as the end of another part, needs no name. */
    private boolean isNamed(String part) {
        return names.hasSizes(part)
                || lines.all().stream().anyMatch(line -> line.part().equals(part) && line.role() == LineRole.HATCH);
    }

    private boolean isCut(String part) {
        return lines.all().stream()
                .anyMatch(line -> line.part().equals(part) && line.role() == LineRole.CUT_OUTLINE);
    }

    private Set<String> parts() {
        Set<String> parts = new LinkedHashSet<>();
        lines.all().stream()
                .filter(line -> line.role() != LineRole.BREAK)
                .forEach(line -> parts.add(line.part()));
        return parts;
    }

    /** Inside a body where it shows clearly, else on an outline. */
    private List<Anchor> anchors(String part, List<Body> bodies) {
        List<Anchor> inside = visible(insideAnchors(part), part, bodies);
        if (!inside.isEmpty()) {
            return inside;
        }
        List<Anchor> outline = lines.outlines(part).values().stream()
                .flatMap(edges -> onOutline(edges).stream())
                .toList();
        return visible(outline, part, bodies);
    }

    private static List<Anchor> visible(List<Anchor> anchors, String part, List<Body> bodies) {
        return anchors.stream()
                .filter(anchor -> bodies.stream().noneMatch(body -> hides(body, part, anchor.place())))
                .toList();
    }

    private List<Anchor> insideAnchors(String part) {
        List<Anchor> inside = new ArrayList<>();
        for (int index : lines.outlines(part).keySet()) {
            for (Middle middle : middles(part, index)) {
                double clear = Math.min(CLEAR_OF_OTHERS, middle.thickness() * 0.35);
                Segment line = middle.line();
                for (double fraction : line.length() < 6 ? new double[] {0.5} : FRACTIONS) {
                    Point place = line.at(fraction);
                    if (isClear(part, place, clear)) {
                        inside.add(new Anchor(place, true));
                    }
                }
            }
        }
        return inside;
    }

    private boolean isClear(String part, Point place, double clear) {
        return lines.all().stream()
                .filter(line -> !line.part().equals(part))
                .noneMatch(line -> line.segment().distanceTo(place) < clear);
    }

    /** The line midway between two edges. */
    private record Middle(Segment line, double thickness) {}

    /** The lines midway between the first pair of edges that are far enough apart for a dot. */
    private List<Middle> middles(String part, int index) {
        for (String[] pair : PAIRS) {
            Optional<Segment> first = lines.edge(part, index, pair[0]);
            Optional<Segment> second = lines.edge(part, index, pair[1]);
            if (first.isPresent() && second.isPresent()) {
                Optional<Middle> middle = middle(first.get(), second.get());
                if (middle.isPresent()) {
                    return List.of(middle.get());
                }
            }
        }
        return List.of();
    }

    private static Optional<Middle> middle(Segment first, Segment second) {
        if (first.length() < 0.1 || second.length() < 0.1) {
            return Optional.empty();
        }
        Line line = first.line();
        double apart = line.distanceTo(second.midpoint());
        double from = Math.max(0, Math.min(line.positionOf(second.start()), line.positionOf(second.end())));
        double to = Math.min(
                first.length(), Math.max(line.positionOf(second.start()), line.positionOf(second.end())));
        if (Math.abs(apart) < ROOM_FOR_DOT || to - from < 1) {
            return Optional.empty();
        }
        return Optional.of(new Middle(line.offset(apart / 2).between(from, to), Math.abs(apart)));
    }

    /** A leader to one part must not seem to end in another. */
    private static boolean hides(Body body, String part, Point place) {
        return body.cut() && !body.part().equals(part) && body.contains(place.x(), place.y());
    }

    private static List<Anchor> onOutline(List<DrawnLine> outline) {
        double longest = outline.stream()
                .mapToDouble(line -> line.segment().length())
                .max()
                .orElse(0);
        List<Anchor> anchors = new ArrayList<>();
        for (DrawnLine line : outline) {
            if (line.segment().length() >= 0.6 * longest && line.segment().length() > 0.5) {
                for (double fraction : FRACTIONS) {
                    anchors.add(new Anchor(line.segment().at(fraction), false));
                }
            }
        }
        return anchors;
    }
}
