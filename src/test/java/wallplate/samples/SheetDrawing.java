package wallplate.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;

/** Everything that is on one sheet of paper, in millimetres from its lower left corner with y up. */
final class SheetDrawing {

    /** The reference bar as drawn: its line between the centre lines of its ticks. */
    record Bar(double nominalMm, double trueMm, Segment line) {}

    /** A soft grey patch where a hand, a sleeve or an eraser went. */
    record Smudge(Point centre, double radiusX, double radiusY, double turnDegrees, double darkness, long seed) {}

    private final Paper paper;
    private final double tiltDegrees;
    private final List<PencilStroke> strokes = new ArrayList<>();
    private final Map<String, Segment> lines = new LinkedHashMap<>();
    private final List<Smudge> smudges = new ArrayList<>();
    private final List<Point> holes = new ArrayList<>();
    private final List<Segment> creases = new ArrayList<>();
    private Optional<Bar> bar = Optional.empty();

    SheetDrawing(Paper paper, double tiltDegrees) {
        this.paper = paper;
        this.tiltDegrees = tiltDegrees;
    }

    Paper paper() {
        return paper;
    }

    /** By how much the T-square, and with it the whole drawing, is turned against the paper, anticlockwise. */
    double tiltDegrees() {
        return tiltDegrees;
    }

    void stroke(PencilStroke stroke) {
        strokes.add(stroke);
    }

    void line(String name, Pencil.Drawn drawn) {
        strokes.addAll(drawn.strokes());
        if (!name.isEmpty()) {
            lines.put(name, drawn.bestFit());
        }
    }

    void smudge(Smudge smudge) {
        smudges.add(smudge);
    }

    void hole(Point centre) {
        holes.add(centre);
    }

    void crease(Segment fold) {
        creases.add(fold);
    }

    void bar(Bar drawn) {
        bar = Optional.of(drawn);
    }

    List<PencilStroke> strokes() {
        return List.copyOf(strokes);
    }

    /** Best-fit lines by part and edge, in the order in which they were drawn. */
    Map<String, Segment> lines() {
        return java.util.Collections.unmodifiableMap(lines);
    }

    List<Smudge> smudges() {
        return List.copyOf(smudges);
    }

    List<Point> holes() {
        return List.copyOf(holes);
    }

    List<Segment> creases() {
        return List.copyOf(creases);
    }

    Optional<Bar> bar() {
        return bar;
    }
}
