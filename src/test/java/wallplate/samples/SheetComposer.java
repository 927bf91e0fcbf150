package wallplate.samples;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.samples.Learner.Straying;
import wallplate.samples.PlannedLine.Weight;

/** Puts a learner's section on the sheet, with the frame, the bar, the lettering and the marks of use around it. */
final class SheetComposer {

    private final Intention intention;
    private final Learner learner;
    private final Chance chance;
    private final Pencil pencil;
    private final SheetDrawing sheet;
    private final Paper paper;
    private final double tilt;
    private final double boxesOffDegrees;
    private Point heel = Point.ORIGIN;
    private double titleBlockLeft;

    SheetComposer(Intention intention, Learner learner, Chance chance) {
        this.intention = intention;
        this.learner = learner;
        this.chance = chance;
        this.pencil = new Pencil(learner, chance.fork());
        this.paper = intention.task().paper();
        this.tilt = chance.error(chance.happens(0.12) ? 0.6 : 0.18);
        this.sheet = new SheetDrawing(paper, tilt);
        this.titleBlockLeft = paper.width() - 15;
        this.boxesOffDegrees = learner.straying() == Straying.SQUARES ? chance.error(0.27) : 0;
    }

    /** The whole sheet; without a bar where that is what the learner forgot. */
    SheetDrawing compose(boolean withBar) {
        List<PlannedLine> section = fitted();
        double left = frame();
        rubbedOut(section);
        section.forEach(this::rule);
        if (withBar) {
            bar(left);
        }
        new Lettering(sheet, pencil, learner, chance.fork()).write(intention);
        wear();
        return sheet;
    }

    /** The section's lines, its break line drawn nearer where they would not fit the paper. */
    private List<PlannedLine> fitted() {
        for (int attempt = 0; attempt < 30; attempt++) {
            List<PlannedLine> lines = new EavesSection(intention, chance.fork()).lines();
            double[] box = box(lines);
            double spareX = paper.width() - 26 - (box[2] - box[0]);
            double spareY = paper.height() - 60 - (box[3] - box[1]);
            if (spareX >= 0 && spareY >= 0) {
                double left = 13 + chance.between(0.1, 0.9) * spareX;
                double bottom = 47 + chance.between(0.1, 0.9) * spareY;
                heel = new Point(left - box[0], bottom - box[1]);
                return lines;
            }
            intention.narrow(0.93);
        }
        throw new IllegalStateException("the section does not fit its paper: " + intention.task());
    }

    private double[] box(List<PlannedLine> lines) {
        double[] box = {1e9, 1e9, -1e9, -1e9};
        for (PlannedLine line : lines) {
            for (Point end : List.of(line.from(), line.to())) {
                Point place = onSheet(end);
                box[0] = Math.min(box[0], place.x() - heel.x());
                box[1] = Math.min(box[1], place.y() - heel.y());
                box[2] = Math.max(box[2], place.x() - heel.x());
                box[3] = Math.max(box[3], place.y() - heel.y());
            }
        }
        return box;
    }

    private Point onSheet(Point local) {
        Vector offset = local.minus(Point.ORIGIN);
        Vector handed = intention.eavesOnRight() ? offset.mirrored() : offset;
        return heel.plus(handed.rotatedDegrees(tilt));
    }

    private void rule(PlannedLine line) {
        Segment meant = new Segment(onSheet(line.from()), onSheet(line.to()));
        Segment missed = withErrors(meant, line);
        Pencil.Drawn drawn = pencil.rule(missed, line.weight());
        if (line.weight() == Weight.OUTLINE && meant.length() > 4 && chance.happens(learner.construction())) {
            construction(missed);
        }
        sheet.line(line.name(), drawn);
    }

    private void construction(Segment line) {
        double before = chance.between(1, 26) / line.length();
        double after = chance.between(1, 26) / line.length();
        Vector beside = line.vector().unit().leftNormal().times(chance.error(0.06));
        Segment faint = new Segment(line.at(-before).plus(beside), line.at(1 + after).plus(beside));
        pencil.rule(clipped(faint), Weight.FAINT).strokes().forEach(sheet::stroke);
    }

    /** What an eraser left of lines that were first drawn in a wrong place. */
    private void rubbedOut(List<PlannedLine> section) {
        int number = chance.happens(0.3) ? chance.whole(1, 2) : 0;
        List<PlannedLine> longOnes = section.stream().filter(line -> line.length() > 20).toList();
        for (int ghost = 0; ghost < number && !longOnes.isEmpty(); ghost++) {
            PlannedLine first = chance.oneOf(longOnes);
            Segment drawn = new Segment(onSheet(first.from()), onSheet(first.to()));
            Vector beside = drawn.vector().unit().leftNormal().times(chance.sign() * chance.between(1.2, 4));
            double from = chance.between(0, 0.5);
            Segment ghostLine = new Segment(drawn.at(from).plus(beside), drawn.at(from + chance.between(0.2, 0.5)).plus(beside));
            pencil.rule(clipped(ghostLine), Weight.GHOST).strokes().forEach(sheet::stroke);
            sheet.smudge(new SheetDrawing.Smudge(
                    ghostLine.midpoint(), Math.min(22, ghostLine.length() / 2), 3, ghostLine.inclinationDegrees(), 0.05, chance.seed()));
        }
    }

    private Segment clipped(Segment line) {
        return new Segment(clipped(line.start()), clipped(line.end()));
    }

    private Point clipped(Point point) {
        boolean inside = point.x() > 3 && point.x() < paper.width() - 3 && point.y() > 3 && point.y() < paper.height() - 3;
        return inside ? point : point.plus(new Point(paper.width() / 2, paper.height() / 2).minus(point).times(0.25));
    }

    private Segment withErrors(Segment meant, PlannedLine line) {
        double length = Math.max(0.5, meant.length());
        boolean free = line.name().contains("cross") || line.name().isEmpty();
        double angle = chance.error(learner.angleErrorDegrees());
        Vector along = meant.vector().unit().rotatedDegrees(switch (learner.straying()) {
            case ENDS -> angle * byLength(length) * (Math.abs(meant.inclinationDegrees() - tilt) < 0.01 ? 0.45 : 1);
            case SQUARES -> angle + (isSideOnSlope(line.name()) ? boxesOffDegrees : 0);
        });
        Point middle = meant.midpoint().plus(along.leftNormal().times(free ? chance.error(0.15) : chance.error(0.03)));
        double before = overshoot(length, line, true);
        double after = overshoot(length, line, false);
        return new Segment(
                middle.plus(along.times(-length / 2 - before)), middle.plus(along.times(length / 2 + after)));
    }

    /** By how much a short line is off more than one of 40 mm; a T-square, which guides level lines, halves it. */
    private static double byLength(double length) {
        return Math.max(0.45, Math.min(9, Math.sqrt(40 / length) * (40 / length > 6 ? 1.8 : 1)));
    }

    private static boolean isSideOnSlope(String name) {
        return name.startsWith("support") && (name.endsWith(".low") || name.endsWith(".high"));
    }

    private double overshoot(double length, PlannedLine line, boolean start) {
        double usual = learner.overshootMm() * (0.25 + chance.error(0.6));
        boolean rim = line.name().startsWith("gutter.") && !start;
        double most = Math.min(length * 0.12, 1.8);
        return Math.max(-most, Math.min(most, rim ? usual * 0.2 : usual));
    }

    private double frame() {
        boolean framed = chance.happens(0.65);
        double margin = chance.oneOf(8.0, 10.0, 10.0, 12.0);
        double left = framed && chance.happens(0.35) ? 20 : margin;
        if (framed) {
            rectangle(left, margin, paper.width() - margin, paper.height() - margin);
        }
        if (framed ? chance.happens(0.8) : chance.happens(0.25)) {
            titleBlock(margin);
        }
        return left;
    }

    private void titleBlock(double margin) {
        double width = Math.min(paper.width() * 0.38, chance.between(52, 105));
        int rows = chance.whole(2, 4);
        double height = rows * chance.between(7, 9.5);
        double right = paper.width() - margin;
        titleBlockLeft = right - width;
        rectangle(right - width, margin, right, margin + height);
        List<String> entries = List.of("NAME", "DATE", "CLASS", "SCALE", "TITLE", "SHEET NO. 3", "DRAWN", "CHECKED");
        for (int row = 0; row < rows; row++) {
            double base = margin + height * row / rows;
            if (row > 0) {
                plain(new Segment(new Point(right - width, base), new Point(right, base)), Weight.THIN);
            }
            letter(chance.oneOf(entries), new Point(right - width + 3, base + 2.2), 3);
        }
    }

    private void rectangle(double left, double bottom, double right, double top) {
        double skew = (right - left) * Math.tan(Math.toRadians(tilt * (chance.happens(0.5) ? 1 : 0))) / 2;
        Point lowerLeft = new Point(left, bottom - skew);
        Point lowerRight = new Point(right, bottom + skew);
        Point upperRight = new Point(right, top + skew);
        Point upperLeft = new Point(left, top - skew);
        plain(new Segment(lowerLeft, lowerRight), Weight.OUTLINE);
        plain(new Segment(lowerRight, upperRight), Weight.OUTLINE);
        plain(new Segment(upperRight, upperLeft), Weight.OUTLINE);
        plain(new Segment(upperLeft, lowerLeft), Weight.OUTLINE);
    }

    private void plain(Segment line, Weight weight) {
        double past = chance.error(0.3);
        Segment run = new Segment(line.at(-past / line.length()), line.at(1 + past / line.length()));
        pencil.rule(run, weight).strokes().forEach(sheet::stroke);
    }

    private void bar(double frameLeft) {
        double nominal = intention.task().barMm();
        double length = nominal + chance.error(learner.sizeErrorMm() * 0.6) + chance.error(0.06);
        double left = frameLeft + 6 + chance.between(0, 1) * Math.max(0, titleBlockLeft - frameLeft - length - 14);
        Point start = new Point(left, chance.between(17, 38));
        Vector along = Vector.atDegrees(tilt + chance.error(learner.straying() == Straying.SQUARES ? 0.12 : 0.06));
        Segment meant = new Segment(start, start.plus(along.times(length)));
        Segment line = pencilled(meant.at(-chance.between(-0.001, 0.003)), meant.at(1 + chance.between(-0.001, 0.003)));
        double above = chance.between(2, 4);
        double below = chance.happens(0.2) ? 0 : chance.between(2, 4);
        if (chance.happens(0.1)) {
            above = chance.between(4, 7.5);
            below = 0;
        }
        Segment first = tick(meant.start(), along, above, below);
        Segment last = tick(meant.end(), along, above, below);
        Point from = meeting(line, first);
        Point to = meeting(line, last);
        sheet.bar(new SheetDrawing.Bar(nominal, from.distanceTo(to), new Segment(from, to)));
        if (chance.happens(0.6)) {
            letter(String.valueOf((int) nominal), start.plus(along.times(length * chance.between(0.4, 0.55))).plus(new Vector(0, 1.5)), 3);
        }
    }

    private Segment tick(Point at, Vector along, double above, double below) {
        Vector up = along.leftNormal().rotatedDegrees(chance.error(learner.angleErrorDegrees() * 3));
        return pencilled(at.plus(up.times(-below)), at.plus(up.times(above)));
    }

    private Segment pencilled(Point from, Point to) {
        Pencil.Drawn drawn = pencil.rule(new Segment(from, to), Weight.OUTLINE);
        drawn.strokes().forEach(sheet::stroke);
        return drawn.bestFit();
    }

    private static Point meeting(Segment one, Segment other) {
        return one.line().intersection(other.line(), 1e-9).orElseThrow();
    }

    private void letter(String text, Point start, double height) {
        double factor = chance.between(0.6, 0.85);
        double slant = chance.oneOf(0.0, 0.0, 0.25);
        StrokeFont.write(text, start, height, slant).forEach(places -> sheet.stroke(pencil.freehand(places, factor, 0.85)));
    }

    /** Smudges, erasures, filing holes and folds. */
    private void wear() {
        int smudges = chance.happens(0.4) ? 0 : chance.whole(1, learner.neatness().equals("careless") ? 5 : 2);
        for (int number = 0; number < smudges; number++) {
            Point centre = new Point(chance.between(20, paper.width() - 20), chance.between(20, paper.height() - 20));
            sheet.smudge(new SheetDrawing.Smudge(
                    centre, chance.between(4, 16), chance.between(3, 8), chance.between(-40, 40),
                    chance.between(0.04, 0.16), chance.seed()));
        }
        if (chance.happens(0.25)) {
            double middle = paper.height() / 2;
            sheet.hole(new Point(12, middle - 40));
            sheet.hole(new Point(12, middle + 40));
        }
        if (chance.happens(0.15)) {
            double x = paper.width() * chance.between(0.45, 0.55);
            sheet.crease(new Segment(new Point(x, 0), new Point(x + chance.error(0.5), paper.height())));
        }
    }
}
