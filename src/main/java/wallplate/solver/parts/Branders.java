package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The branders that carry the ceiling under the tie beam, cut across the grain. */
public final class Branders implements Part {

    @Override
    public String name() {
        return "brander";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("ceiling.brander") && count(frame) > 0;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double width = frame.mm("ceiling.brander.width");
        double bottom = -frame.mm("ceiling.brander.depth");
        List<DrawnLine> lines = new ArrayList<>();
        for (int i = 0; i < count(frame); i++) {
            double low = firstX(frame) + i * frame.mm("ceiling.brander.spacing");
            Point lowTop = new Point(low, 0);
            Point lowBottom = new Point(low, bottom);
            Point highBottom = new Point(low + width, bottom);
            Point highTop = new Point(low + width, 0);
            Lines brander = new Lines(name(), i)
                    .cut("low", lowBottom, lowTop)
                    .cut("high", highBottom, highTop)
                    .crossed(lowTop, lowBottom, highBottom, highTop);
            if (!frame.has("tie-beam")) {
                brander.cut("top", lowTop, highTop);
            }
            lines.addAll(brander.all());
        }
        return lines;
    }

    /** The near side of the first one. It may stand anywhere; the model answer leaves half a space beside the wall. */
    private static double firstX(RoofFrame frame) {
        double width = frame.mm("ceiling.brander.width");
        double centre = frame.innerWallX() + frame.mm("ceiling.brander.spacing") / 2;
        return Math.max(frame.innerWallX(), centre - width / 2);
    }

    static int count(RoofFrame frame) {
        double rest = frame.insideX() - firstX(frame) - frame.mm("ceiling.brander.width");
        return rest < 0 ? 0 : 1 + (int) Math.floor(rest / frame.mm("ceiling.brander.spacing") + 1e-9);
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "brander.width", Kind.SECTION_SIZE, "ceiling.brander.width", "width of the branders", "level"),
                MeasuredKey.of(
                        "brander.depth",
                        Kind.SECTION_SIZE,
                        "ceiling.brander.depth",
                        "depth of the branders",
                        "upright"),
                MeasuredKey.of(
                        "brander.spacing",
                        Kind.LENGTH,
                        "ceiling.brander.spacing",
                        "spacing of the branders",
                        "level, from centre to centre"),
                MeasuredKey.derived(
                        "brander.count",
                        Kind.COUNT,
                        "number of branders",
                        "all that are drawn",
                        "brander.spacing",
                        "brander.width",
                        "wall.thickness"),
                MeasuredKey.derived(
                        "brander.crossed",
                        Kind.YES_NO,
                        "diagonals of the branders",
                        "both diagonals are there in every one"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        List<Expected> values = new ArrayList<>(List.of(
                frame.stated("brander.width", "ceiling.brander.width"),
                frame.stated("brander.depth", "ceiling.brander.depth")));
        int count = count(frame);
        if (count > 1) {
            values.add(frame.stated("brander.spacing", "ceiling.brander.spacing"));
        }
        values.add(new Expected.Count("brander.count", count, countWorking(frame, count)));
        values.add(new Expected.YesNo("brander.crossed", true));
        return values;
    }

    private String countWorking(RoofFrame frame, int count) {
        return "%s mm of ceiling, one every %s mm, the first half a space from the wall: %d; it may stand elsewhere"
                .formatted(
                        Numbers.mm(frame.insideX() - frame.innerWallX()),
                        Numbers.mm(frame.mm("ceiling.brander.spacing")),
                        count);
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double bottom = -frame.mm("ceiling.brander.depth");
        Step step = Step.of(
                        "Draw the branders",
                        ("Draw the branders under the level line, %s wide and %s deep, %s from"
                                                + " centre to centre. The first may stand anywhere.")
                                        .formatted(
                                                frame.drawn("ceiling.brander.width"),
                                                frame.drawn("ceiling.brander.depth"),
                                                frame.drawn("ceiling.brander.spacing"))
                                + " Cross each with both diagonals.")
                .calculate(frame.working("width", "ceiling.brander.width"))
                .calculate(frame.working("depth", "ceiling.brander.depth"))
                .calculate(frame.working("spacing", "ceiling.brander.spacing"))
                .faint(new Point(frame.innerWallX(), bottom), new Point(frame.insideX(), bottom))
                .lineIn(lines(frame));
        return List.of(step);
    }
}
