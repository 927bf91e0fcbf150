package wallplate.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;

/**
 * Every key's true value from the best-fit lines of a drawing, as the detail's table of measured keys says: lengths
 * between centre lines as the mean over the extent that both lines share, square to the slope, level or plumb in the
 * drawing's own axes.
 */
final class TruthMeasures {

    /** A key's true state: its value, or that the part is not drawn. */
    record Truth(Optional<Object> value) {

        static Truth of(Object value) {
            return new Truth(Optional.of(value));
        }

        static final Truth ABSENT = new Truth(Optional.empty());
    }

    private final SampleTask task;
    private final Map<String, Segment> lines;
    private final boolean eavesRight;
    private final Map<String, Truth> truth = new LinkedHashMap<>();
    private final double levelDegrees;

    /**
     * Lines in millimetres on the sheet by part and edge.
     *
     * @param eavesRight the hand as drawn
     */
    TruthMeasures(SampleTask task, Map<String, Segment> sheetLines, boolean eavesRight, double levelDegrees) {
        this.task = task;
        this.eavesRight = eavesRight;
        this.levelDegrees = levelDegrees;
        this.lines = new LinkedHashMap<>();
        sheetLines.forEach((name, line) -> lines.put(name, local(line)));
    }

    /**
     * The direction of the drawing's long level lines, in degrees: the mean weighted with their lengths; empty where none is
     * drawn, for short ones say less about it than how the drawing was laid on the sheet.
     */
    static OptionalDouble levelDegrees(Map<String, Segment> sheetLines) {
        double sum = 0;
        double weight = 0;
        for (String name : List.of("tie-beam.bottom", "tie-beam.top", "ceiling.top", "ceiling.bottom")) {
            Segment line = sheetLines.get(name);
            if (line != null) {
                sum += line.inclinationDegrees() * line.length();
                weight += line.length();
            }
        }
        return weight == 0 ? OptionalDouble.empty() : OptionalDouble.of(sum / weight);
    }

    private Segment local(Segment line) {
        return new Segment(local(line.start()), local(line.end()));
    }

    private Point local(Point place) {
        Vector level = place.minus(Point.ORIGIN).rotatedDegrees(-levelDegrees);
        Vector handed = eavesRight ? level.mirrored() : level;
        return Point.ORIGIN.plus(handed);
    }

    Map<String, Truth> all() {
        put("roof.pitch", pitchDegrees());
        length("wall.thickness", "wall.outer", "wall.inner");
        length("wall-plate.width", "wall-plate.outer", "wall-plate.inner");
        length("wall-plate.depth", "wall-plate.top", "wall.top");
        put("wall-plate.crossed", lines.containsKey("wall-plate.cross1"));
        askedLength("tie-beam", "tie-beam.depth", "tie-beam.bottom", "tie-beam.top");
        length("rafter.depth", "rafter.bottom", "rafter.top");
        put("rafter.heel-offset", heelOffset());
        length("rafter.overhang", "wall.outer", cutName());
        supports();
        length("covering.thickness", "covering.bottom", "covering.top");
        length("covering.gap", "rafter.top", "covering.bottom");
        put("covering.projection", projection());
        askedLength("fascia", "fascia.thickness", "fascia.outer", "fascia.inner");
        askedLength("fascia", "fascia.depth", "fascia.bottom", "fascia.top");
        gutter();
        bargeBoard();
        ceiling();
        posts();
        beamFilling();
        highWall();
        put("drawing.eaves", eavesRight ? "right" : "left");
        return truth;
    }

    private void put(String key, Object value) {
        truth.put(key, Truth.of(value));
    }

    private void absent(String key) {
        truth.put(key, Truth.ABSENT);
    }

    private void length(String key, String one, String other) {
        if (lines.containsKey(one) && lines.containsKey(other)) {
            put(key, between(line(one), line(other)));
        } else {
            absent(key);
        }
    }

    private void askedLength(String part, String key, String one, String other) {
        if (task.asksFor(part)) {
            length(key, one, other);
        }
    }

    private Segment line(String name) {
        Segment line = lines.get(name);
        if (line == null) {
            throw new IllegalArgumentException("no line " + name + " is drawn");
        }
        return line;
    }

    private String cutName() {
        return lines.containsKey("fascia.inner") ? "fascia.inner" : "rafter.cut";
    }

    /** The mean distance of two nearly parallel lines over the extent that they share, or halfway between where they share none. */
    static double between(Segment one, Segment other) {
        Vector along = one.vector().unit();
        Vector second = other.vector().unit();
        along = along.plus(along.dot(second) < 0 ? second.negated() : second).unit();
        double[] first = extent(one, along);
        double[] last = extent(other, along);
        double middle = (Math.max(first[0], last[0]) + Math.min(first[1], last[1])) / 2;
        return Math.abs(offsetAt(one, along, middle) - offsetAt(other, along, middle));
    }

    private static double[] extent(Segment line, Vector along) {
        double start = along.dot(line.start().minus(Point.ORIGIN));
        double end = along.dot(line.end().minus(Point.ORIGIN));
        return new double[] {Math.min(start, end), Math.max(start, end)};
    }

    private static double offsetAt(Segment line, Vector along, double position) {
        double start = along.dot(line.start().minus(Point.ORIGIN));
        double end = along.dot(line.end().minus(Point.ORIGIN));
        double fraction = (position - start) / (end - start);
        return along.leftNormal().dot(line.at(fraction).minus(Point.ORIGIN));
    }

    private double slopeDegrees() {
        return (line("rafter.bottom").inclinationDegrees() + line("rafter.top").inclinationDegrees()) / 2;
    }

    private double pitchDegrees() {
        return slopeDegrees();
    }

    private Vector slope() {
        return Vector.atDegrees(slopeDegrees());
    }

    private double heelOffset() {
        Point heel = line("wall-plate.outer").line().intersection(line("wall-plate.top").line(), 1e-9).orElseThrow();
        double at = slope().dot(heel.minus(Point.ORIGIN));
        return offsetAt(line("rafter.bottom"), slope(), at) - slope().leftNormal().dot(heel.minus(Point.ORIGIN));
    }

    private Point toe() {
        return line("rafter.top").line().intersection(line(cutName()).line(), 1e-9).orElseThrow();
    }

    private double projection() {
        double toe = slope().dot(toe().minus(Point.ORIGIN));
        return toe - slope().dot(line("covering.end").midpoint().minus(Point.ORIGIN));
    }

    private void supports() {
        List<Double> centres = new ArrayList<>();
        for (int number = 0; lines.containsKey("support" + number + ".low"); number++) {
            Vector along = slope();
            double low = along.dot(line("support" + number + ".low").midpoint().minus(Point.ORIGIN));
            double high = along.dot(line("support" + number + ".high").midpoint().minus(Point.ORIGIN));
            centres.add((low + high) / 2);
        }
        put("support.count", centres.size());
        double at = centres.get(0);
        put("support.depth", Math.abs(offsetAt(line("covering.bottom"), slope(), at) - offsetAt(line("rafter.top"), slope(), at)));
        put("support.width", between(line("support0.low"), line("support0.high")));
        put("support.crossed", lines.containsKey("support0.cross1"));
        spacing("support.spacing", centres);
    }

    private void spacing(String key, List<Double> centres) {
        if (centres.size() < 2) {
            absent(key);
        } else {
            put(key, (centres.get(centres.size() - 1) - centres.get(0)) / (centres.size() - 1));
        }
    }

    private void gutter() {
        if (!task.asksFor("gutter")) {
            return;
        }
        if (!lines.containsKey("gutter.outer")) {
            absent("gutter.width");
            absent("gutter.depth");
            return;
        }
        String inner = lines.containsKey("gutter.inner") ? "gutter.inner" : lines.containsKey("fascia.outer") ? "fascia.outer" : cutName();
        length("gutter.width", "gutter.outer", inner);
        Segment upright = line("gutter.outer");
        double rim = Math.max(upright.start().y(), upright.end().y());
        double bottom = line("gutter.bottom").midpoint().y();
        put("gutter.depth", rim - bottom);
    }

    private void bargeBoard() {
        if (!task.asksFor("barge-board")) {
            return;
        }
        if (!lines.containsKey("barge-board.end")) {
            absent("barge-board.depth");
            absent("barge-board.clearance");
            return;
        }
        Segment bottom = line("barge-board.bottom");
        DoubleUnaryOperator height = x -> heightAt(line("covering.top"), x) - heightAt(bottom, x);
        put("barge-board.depth", height.applyAsDouble(bottom.midpoint().x()));
        if (lines.containsKey("gutter.outer")) {
            put("barge-board.clearance", between(line("barge-board.end"), line("gutter.outer")));
        } else {
            absent("barge-board.clearance");
        }
    }

    private static double heightAt(Segment line, double x) {
        return line.at((x - line.start().x()) / line.vector().x()).y();
    }

    private void ceiling() {
        if (!task.asksFor("ceiling")) {
            return;
        }
        boolean beam = lines.containsKey("tie-beam.bottom");
        if (beam || !lines.containsKey("ceiling.top")) {
            length("ceiling.drop", "tie-beam.bottom", "ceiling.top");
        }
        List<Double> centres = new ArrayList<>();
        for (int number = 0; lines.containsKey("brander" + number + ".low"); number++) {
            double low = line("brander" + number + ".low").midpoint().x();
            centres.add((low + line("brander" + number + ".high").midpoint().x()) / 2);
        }
        put("brander.count", centres.size());
        if (centres.isEmpty()) {
            List.of("brander.width", "brander.depth", "brander.crossed", "brander.spacing").forEach(this::absent);
            return;
        }
        put("brander.width", between(line("brander0.low"), line("brander0.high")));
        if (beam) {
            put("brander.depth", between(line("tie-beam.bottom"), line("ceiling.top")));
        }
        put("brander.crossed", lines.containsKey("brander0.cross1"));
        spacing("brander.spacing", centres);
    }

    private void posts() {
        if (!task.asksFor("posts")) {
            return;
        }
        if (!lines.containsKey("post.outer")) {
            absent("post.width");
            absent("post.position");
            return;
        }
        length("post.width", "post.outer", "post.inner");
        double centre = (line("post.outer").midpoint().x() + line("post.inner").midpoint().x()) / 2;
        double outer = line("wall.outer").midpoint().x();
        double inner = line("wall.inner").midpoint().x();
        boolean fromCentre = task.sizes().get("posts.set-out-from").equals("wall-centre");
        put("post.position", centre - (fromCentre ? (outer + inner) / 2 : outer));
    }

    private void highWall() {
        if (!task.isLeanTo()) {
            return;
        }
        length("high-wall.clear-span", "wall.inner", "high-wall.inner");
        length("high-wall.thickness", "high-wall.inner", "high-wall.outer");
        length("high-plate.width", "high-plate.inner", "high-plate.outer");
        length("high-plate.depth", "high-plate.top", "high-wall.top");
        if (!lines.containsKey("high-plate.top")) {
            absent("high-plate.rise");
            absent("high-plate.crossed");
            return;
        }
        put("high-plate.rise", line("high-plate.top").midpoint().y() - line("wall-plate.top").midpoint().y());
        put("high-plate.crossed", lines.containsKey("high-plate.cross1"));
    }

    private void beamFilling() {
        if (task.asksForBeamFilling() && between(line("wall.outer"), line("wall-plate.outer")) >= 1.5) {
            put("beam-filling.hatched", lines.containsKey("beam-filling.hatch"));
        }
    }
}
