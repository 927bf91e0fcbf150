package wallplate.samples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.samples.PlannedLine.Weight;

/** Names with leader lines, dimensions, the drawing's title and section marks, as carelessly placed as learners do. */
final class Lettering {

    private final SheetDrawing sheet;
    private final Pencil pencil;
    private final Learner learner;
    private final Chance chance;
    private final double slant;
    private final double height;
    private final List<double[]> texts = new ArrayList<>();

    Lettering(SheetDrawing sheet, Pencil pencil, Learner learner, Chance chance) {
        this.sheet = sheet;
        this.pencil = pencil;
        this.learner = learner;
        this.chance = chance;
        this.slant = chance.oneOf(0.0, 0.0, 0.2, 0.35);
        this.height = chance.between(2.2, 3.6);
    }

    /** Letters around the section, whose lines by name are on the sheet already. */
    void write(Intention intention) {
        Map<String, Segment> section = sheet.lines();
        double low = section.values().stream().mapToDouble(line -> Math.min(line.start().y(), line.end().y())).min().orElseThrow();
        if (chance.happens(0.7)) {
            String title = chance.oneOf("SECTION A-A", "SECTION A-A  SCALE 1:" + intention.task().scale(), intention.task().isLeanTo() ? "LEAN-TO ROOF" : "EAVES SECTION");
            double left = chance.between(20, Math.max(25, sheet.paper().width() * 0.5));
            text(title, new Point(left, Math.max(42, low - chance.between(6, 9))), height * 1.3);
        }
        labels(intention);
        dimensions(low);
        sectionMarks();
    }

    private void labels(Intention intention) {
        Map<String, String> names = names(intention);
        List<String> lines = new ArrayList<>(names.keySet());
        int count = chance.happens(0.2) ? 0 : chance.whole(1, 9);
        for (int number = 0; number < count && !lines.isEmpty(); number++) {
            String line = chance.oneOf(lines);
            lines.remove(line);
            Segment pointedAt = sheet.lines().get(chance.happens(0.06) ? chance.oneOf(List.copyOf(names.keySet())) : line);
            label(names.getOrDefault(line, ""), pointedAt.at(chance.between(0.3, 0.7)));
        }
    }

    /** What the parts that are drawn are called, by a line of each. */
    private Map<String, String> names(Intention intention) {
        Map<String, String> names = new LinkedHashMap<>();
        names.put("rafter.bottom", "RAFTER");
        names.put("tie-beam.top", "TIE BEAM");
        names.put("wall-plate.inner", "WALL PLATE");
        names.put("wall.inner", "WALL");
        names.put("fascia.outer", "FASCIA");
        names.put("gutter.bottom", "GUTTER");
        names.put("barge-board.bottom", "BARGE BOARD");
        names.put("ceiling.top", "CEILING BOARD");
        names.put("brander1.low", "BRANDER");
        names.put("beam-filling.inner", "BEAM FILLING");
        names.put("post.inner", "POST");
        names.put("high-wall.outer", "WALL");
        names.put("high-plate.top", "WALL PLATE");
        names.put("support1.low", String.valueOf(intention.task().sizes().get("support.name")));
        names.put("covering.top", String.valueOf(intention.task().sizes().get("covering.name")));
        names.keySet().retainAll(sheet.lines().keySet());
        return names;
    }

    private void label(String name, Point target) {
        double width = StrokeFont.width(name, height);
        boolean careful = chance.happens(0.85);
        for (int attempt = 0; attempt < 40; attempt++) {
            Vector reach = Vector.atDegrees(chance.between(0, 360)).times(chance.between(8, 42));
            Point end = target.plus(reach);
            boolean leftwards = reach.x() < 0;
            double start = leftwards ? end.x() - width - 1 : end.x() + 1;
            boolean onPaper = start > 14 && start + width < sheet.paper().width() - 14 && end.y() > 48
                    && end.y() < sheet.paper().height() - 16;
            if (onPaper && isFree(start, end.y() - height / 2, width, height, careful ? 0 : 3)) {
                leader(end, target, reach);
                text(name, new Point(start, end.y() - height / 2), height);
                return;
            }
        }
    }

    private void leader(Point end, Point target, Vector reach) {
        thin(new Segment(end, target.plus(reach.times(-chance.between(0, 0.04)))));
        if (chance.happens(0.4)) {
            arrow(target, reach.unit());
        }
    }

    /** Whether a text would not touch another text, and no more lines of the section than it may. */
    private boolean isFree(double left, double bottom, double width, double high, int linesAllowed) {
        boolean besideTexts = texts.stream().noneMatch(box ->
                left < box[2] + 1.5 && left + width > box[0] - 1.5 && bottom < box[3] + 1.5 && bottom + high > box[1] - 1.5);
        long crossed = sheet.lines().values().stream()
                .filter(line -> crosses(line, left - 1, bottom - 1, left + width + 1, bottom + high + 1))
                .count();
        return besideTexts && crossed <= linesAllowed;
    }

    private static boolean crosses(Segment line, double left, double bottom, double right, double top) {
        int steps = (int) Math.ceil(line.length()) + 1;
        for (int step = 0; step <= steps; step++) {
            Point place = line.at((double) step / steps);
            if (place.x() > left && place.x() < right && place.y() > bottom && place.y() < top) {
                return true;
            }
        }
        return false;
    }

    private void dimensions(double low) {
        int count = chance.happens(0.4) ? 0 : chance.whole(1, 3);
        for (int number = 0; number < count; number++) {
            double length = chance.between(12, 60);
            double free = sheet.paper().height() - 14;
            for (int attempt = 0; attempt < 12; attempt++) {
                double left = chance.between(16, sheet.paper().width() - 20 - length);
                double y = chance.happens(0.5) ? chance.between(Math.min(free - 1, 44), Math.max(45, low - 2)) : chance.between(free - 14, free - 2);
                if (isFree(left, y - 2, length, height + 4, 0)) {
                    dimension(new Point(left, y), length);
                    break;
                }
            }
        }
        if (chance.happens(0.15)) {
            Segment part = chance.oneOf(List.copyOf(sheet.lines().values()));
            dimension(new Point(Math.max(16, part.start().x() - 10), part.start().y()), Math.min(40, 5 + part.length()));
        }
    }

    private void dimension(Point left, double length) {
        Vector along = Vector.atDegrees(sheet.tiltDegrees());
        Point right = left.plus(along.times(length));
        if (right.x() > sheet.paper().width() - 8) {
            return;
        }
        thin(new Segment(left, right));
        arrow(left, along);
        arrow(right, along.negated());
        for (Point end : List.of(left, right)) {
            thin(new Segment(end.plus(new Vector(0, -1.6)), end.plus(new Vector(0, 1.6))));
        }
        texts.add(new double[] {left.x(), left.y() - 2, right.x(), left.y() + 2});
        String figure = String.valueOf(chance.whole(2, 60) * 25);
        text(figure, left.plus(along.times(length / 2 - 3)).plus(new Vector(0, 1)), height * 0.9);
    }

    private void arrow(Point tip, Vector back) {
        for (double side : new double[] {16, -16}) {
            thin(new Segment(tip.plus(back.rotatedDegrees(side).times(2.2)), tip));
        }
    }

    private void sectionMarks() {
        if (!chance.happens(0.2)) {
            return;
        }
        double x = sheet.paper().width() - chance.between(24, 40);
        double y = sheet.paper().height() - chance.between(24, 45);
        pencil.rule(new Segment(new Point(x, y), new Point(x, y + 10)), Weight.OUTLINE).strokes().forEach(sheet::stroke);
        pencil.rule(new Segment(new Point(x, y), new Point(x - 6, y)), Weight.OUTLINE).strokes().forEach(sheet::stroke);
        text("A", new Point(x - 5, y + 3), 3.5);
    }

    private void thin(Segment line) {
        pencil.rule(line, Weight.THIN).strokes().forEach(sheet::stroke);
    }

    private void text(String words, Point start, double size) {
        texts.add(new double[] {start.x(), start.y(), start.x() + StrokeFont.width(words, size), start.y() + size});
        double factor = chance.between(0.55, 0.8);
        double dark = learner.neatness().equals("careless") ? 0.95 : 0.8;
        StrokeFont.write(words, start, size, slant).forEach(places -> sheet.stroke(pencil.freehand(places, factor, dark)));
    }
}
