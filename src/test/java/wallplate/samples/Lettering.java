package wallplate.samples;

import java.util.ArrayList;
import java.util.List;
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

    Lettering(SheetDrawing sheet, Pencil pencil, Learner learner, Chance chance) {
        this.sheet = sheet;
        this.pencil = pencil;
        this.learner = learner;
        this.chance = chance;
        this.slant = chance.oneOf(0.0, 0.0, 0.2, 0.35);
        this.height = chance.between(2.2, 3.6);
    }

    void write(Intention intention, List<Segment> section, double titleBlockLeft) {
        double low = section.stream().mapToDouble(line -> Math.min(line.start().y(), line.end().y())).min().orElseThrow();
        if (chance.happens(0.7)) {
            String title = chance.oneOf("SECTION A-A", "SECTION A-A  SCALE 1:" + intention.task().scale(), "EAVES SECTION");
            double left = chance.between(20, Math.max(25, sheet.paper().width() * 0.5));
            text(title, new Point(left, Math.max(42, low - chance.between(6, 9))), height * 1.3);
        }
        labels(intention, section);
        dimensions(section, low);
        sectionMarks();
    }

    private void labels(Intention intention, List<Segment> section) {
        List<String> names = new ArrayList<>(List.of(
                "RAFTER", "TIE BEAM", "WALL PLATE", "FASCIA", "GUTTER", "BARGE BOARD", "CEILING BOARD", "BRANDER", "BEAM FILLING"));
        names.add(String.valueOf(intention.task().sizes().get("support.name")));
        names.add(String.valueOf(intention.task().sizes().get("covering.name")));
        int count = chance.happens(0.2) ? 0 : chance.whole(1, 9);
        for (int number = 0; number < count; number++) {
            Segment part = chance.oneOf(section);
            label(chance.oneOf(names), part.at(chance.between(0.2, 0.8)));
        }
    }

    private void label(String name, Point target) {
        Vector reach = Vector.atDegrees(chance.between(0, 360)).times(chance.between(8, 32));
        Point end = target.plus(reach);
        double width = StrokeFont.width(name, height);
        boolean onPaper = end.x() > 14 && end.x() + width + 6 < sheet.paper().width() - 12 && end.y() > 48
                && end.y() < sheet.paper().height() - 16;
        if (!onPaper) {
            return;
        }
        thin(new Segment(end, target.plus(reach.times(-chance.between(0, 0.04)))));
        if (chance.happens(0.4)) {
            arrow(target, reach.unit());
        }
        boolean elbow = chance.happens(0.5);
        if (elbow) {
            thin(new Segment(end, end.plus(new Vector(4, 0))));
        }
        text(name, new Point(end.x() + (elbow ? 5 : 1), end.y() - height / 2), height);
    }

    private void dimensions(List<Segment> section, double low) {
        int count = chance.happens(0.4) ? 0 : chance.whole(1, 3);
        for (int number = 0; number < count; number++) {
            double length = chance.between(12, 60);
            double left = chance.between(16, sheet.paper().width() - 20 - length);
            double free = sheet.paper().height() - 14;
            double y = chance.happens(0.5) ? chance.between(Math.min(free - 1, 44), Math.max(45, low - 2)) : chance.between(free - 14, free - 2);
            dimension(new Point(left, y), length);
        }
        if (chance.happens(0.3)) {
            Segment part = chance.oneOf(section);
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
        double factor = chance.between(0.55, 0.8);
        double dark = learner.neatness().equals("careless") ? 0.95 : 0.8;
        StrokeFont.write(words, start, size, slant).forEach(places -> sheet.stroke(pencil.freehand(places, factor, dark)));
    }
}
