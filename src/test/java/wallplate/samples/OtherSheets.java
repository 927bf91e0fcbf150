package wallplate.samples;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.samples.PlannedLine.Weight;

/** Sheets that are no section through the eaves and must be refused. */
final class OtherSheets {

    private final SheetDrawing sheet;
    private final Pencil pencil;
    private final Chance chance;

    private OtherSheets(Paper paper, Learner learner, Chance chance) {
        this.sheet = new SheetDrawing(paper, 0);
        this.pencil = new Pencil(learner, chance.fork());
        this.chance = chance;
    }

    /** A sheet of the given kind: blank, text, plan or graph. */
    static SheetDrawing of(String kind, Paper paper, Learner learner, Chance chance) {
        OtherSheets other = new OtherSheets(paper, learner, chance);
        switch (kind) {
            case "blank" -> other.sheet.smudge(new SheetDrawing.Smudge(new Point(90, 90), 9, 5, 20, 0.06, 1));
            case "text" -> other.text();
            case "plan" -> other.plan();
            case "graph" -> other.graph();
            default -> throw new IllegalArgumentException("no other sheet is called " + kind);
        }
        return other.sheet;
    }

    private void text() {
        List<String> words = List.of(
                "THE", "WALL", "PLATE", "IS", "LAID", "ON", "TOP", "OF", "BRICKS", "AND", "TIED", "DOWN", "WITH", "WIRE",
                "BEFORE", "RAFTERS", "ARE", "SET", "OUT", "AT", "900", "CENTRES", "COVERING", "FOLLOWS");
        for (double y = sheet.paper().height() - 26; y > 22; y -= 8.5) {
            double x = 20;
            while (x < sheet.paper().width() - 50) {
                String word = chance.oneOf(words);
                StrokeFont.write(word, new Point(x, y + chance.error(0.3)), 3.4, 0.15)
                        .forEach(places -> sheet.stroke(pencil.freehand(places, 0.7, 0.9)));
                x += StrokeFont.width(word, 3.4) + 3;
            }
        }
    }

    private void plan() {
        double width = sheet.paper().width() * 0.62;
        double height = sheet.paper().height() * 0.55;
        double left = sheet.paper().width() * 0.17;
        double bottom = sheet.paper().height() * 0.24;
        walls(left, bottom, left + width, bottom + height, 5.5);
        double partition = left + width * chance.between(0.35, 0.6);
        pair(new Segment(new Point(partition, bottom), new Point(partition, bottom + height * 0.4)), 3);
        pair(new Segment(new Point(partition, bottom + height * 0.6), new Point(partition, bottom + height)), 3);
        pair(new Segment(new Point(partition, bottom + height * 0.7), new Point(left + width, bottom + height * 0.7)), 3);
        line(left, bottom - 12, left + width, bottom - 12, Weight.THIN);
    }

    private void walls(double left, double bottom, double right, double top, double thickness) {
        pair(new Segment(new Point(left, bottom), new Point(right, bottom)), thickness);
        pair(new Segment(new Point(right, bottom), new Point(right, top)), thickness);
        pair(new Segment(new Point(right, top), new Point(left, top)), thickness);
        pair(new Segment(new Point(left, top), new Point(left, bottom)), thickness);
    }

    private void pair(Segment line, double apart) {
        Segment other = line.line().offset(apart).between(0, line.length());
        pencil.rule(line, Weight.OUTLINE).strokes().forEach(sheet::stroke);
        pencil.rule(other, Weight.OUTLINE).strokes().forEach(sheet::stroke);
    }

    private void graph() {
        double left = 40;
        double bottom = 40;
        double right = sheet.paper().width() - 40;
        double top = sheet.paper().height() - 40;
        line(left, bottom, right, bottom, Weight.OUTLINE);
        line(left, bottom, left, top, Weight.OUTLINE);
        double lastX = left;
        double lastY = bottom + 5;
        for (double x = left + 8; x < right; x += 8) {
            double y = Math.min(top, lastY + chance.between(-6, 14));
            line(lastX, lastY, x, y, Weight.OUTLINE);
            line(x, bottom - 1.5, x, bottom + 1.5, Weight.THIN);
            lastX = x;
            lastY = y;
        }
    }

    private void line(double fromX, double fromY, double toX, double toY, Weight weight) {
        pencil.rule(new Segment(new Point(fromX, fromY), new Point(toX, toY)), weight).strokes().forEach(sheet::stroke);
    }
}
