package wallplate.samples;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.samples.PlannedLine.Weight;

/** A learner's pencil: turns meant lines into strokes that waver, break, double and change in pressure. */
final class Pencil {

    private static final double STEP_MM = 0.15;

    private final Learner learner;
    private final Chance chance;

    Pencil(Learner learner, Chance chance) {
        this.learner = learner;
        this.chance = chance;
    }

    /** What a line became on paper: its strokes, and the straight line that fits them best. */
    record Drawn(List<PencilStroke> strokes, Segment bestFit) {}

    /** Draws along a ruler from end to end; the line's own errors of place and length are in the segment already. */
    Drawn rule(Segment line, Weight weight) {
        List<PencilStroke> strokes = new ArrayList<>();
        boolean long_ = line.length() > 8;
        strokes.add(stroke(line, weight, long_ && chance.happens(learner.broken())));
        boolean again = weight == Weight.OUTLINE && chance.happens(learner.doubleStroke());
        if (again) {
            double beside = chance.sign() * chance.between(0.1, 0.32);
            Vector shift = line.vector().unit().leftNormal().times(beside);
            double from = chance.between(0, 0.15);
            double to = chance.between(0.85, 1);
            Segment second = new Segment(line.at(from).plus(shift), line.at(to).plus(shift));
            strokes.add(stroke(second, weight, false));
        }
        return new Drawn(List.copyOf(strokes), BestFit.through(strokes));
    }

    /** A freehand stroke through the given places, as in lettering. */
    PencilStroke freehand(List<Point> places, double widthFactor, double darknessFactor) {
        List<double[]> track = new ArrayList<>();
        double waver = 0.03 + learner.wobbleMm();
        for (int leg = 0; leg + 1 < places.size(); leg++) {
            Segment piece = new Segment(places.get(leg), places.get(leg + 1));
            int steps = Math.max(1, (int) Math.ceil(piece.length() / STEP_MM));
            Waver side = new Waver(piece.length(), 1.2, waver, chance);
            Vector left = piece.length() == 0 ? new Vector(0, 1) : piece.vector().unit().leftNormal();
            for (int step = 0; step <= steps; step++) {
                double fraction = (double) step / steps;
                Point place = piece.at(fraction).plus(left.times(side.at(fraction * piece.length())));
                track.add(new double[] {place.x(), place.y(), 0.85 + chance.error(0.08)});
            }
        }
        PencilGrade grade = learner.pencil();
        return stroke(track, grade.widthMm() * widthFactor, grade.darkness() * darknessFactor);
    }

    private PencilStroke stroke(Segment line, Weight weight, boolean broken) {
        double length = Math.max(0.05, line.length());
        Vector left = line.length() == 0 ? new Vector(0, 1) : line.vector().unit().leftNormal();
        Waver waver = new Waver(length, 5.5, learner.wobbleMm(), chance);
        Waver tremor = new Waver(length, 0.9, learner.wobbleMm() * 0.3, chance);
        Waver pressing = new Waver(length, 14, weight == Weight.BREAK || weight == Weight.THIN ? 0.14 : 0.09, chance);
        boolean pieced = length > 60 && chance.happens(0.2);
        double gapAt = broken || pieced ? chance.between(0.2, 0.75) * length : length * 2;
        double gapEnd = gapAt + (broken ? chance.between(0.7, 2.4) : 0);
        double restart = chance.error(0.05);
        int steps = Math.max(3, (int) Math.ceil(length / STEP_MM));
        List<double[]> track = new ArrayList<>(steps + 1);
        for (int step = 0; step <= steps; step++) {
            double position = length * step / steps;
            double side = waver.at(position) + tremor.at(position) + (position > gapEnd ? restart : 0);
            Point place = line.at(position / length).plus(left.times(side));
            boolean lifted = position > gapAt && position < gapEnd;
            track.add(new double[] {place.x(), place.y(), lifted ? 0 : 0.92 + pressing.at(position)});
        }
        return stroke(track, learner.pencil().widthMm() * width(weight), learner.pencil().darkness() * darkness(weight));
    }

    private PencilStroke stroke(List<double[]> track, double widthMm, double darkness) {
        double[] x = track.stream().mapToDouble(place -> place[0]).toArray();
        double[] y = track.stream().mapToDouble(place -> place[1]).toArray();
        double[] pressure = track.stream().mapToDouble(place -> place[2]).toArray();
        return new PencilStroke(x, y, pressure, Math.max(0.14, widthMm), darkness, learner.pencil().grain());
    }

    private double width(Weight weight) {
        return switch (weight) {
            case OUTLINE -> chance.between(0.9, 1.12);
            case HEAVY -> chance.between(1.35, 1.8);
            case THIN -> chance.between(0.6, 0.8);
            case BREAK -> chance.between(0.6, 0.85);
            case FAINT -> chance.between(0.45, 0.65);
            case GHOST -> chance.between(0.9, 1.3);
        };
    }

    private double darkness(Weight weight) {
        return switch (weight) {
            case OUTLINE, HEAVY -> chance.between(0.93, 1.05);
            case THIN -> chance.between(0.7, 0.92);
            case BREAK -> chance.between(0.65, 0.95);
            case FAINT -> chance.between(0.18, 0.36);
            case GHOST -> chance.between(0.06, 0.14);
        };
    }
}
