package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Vector;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The purlins or battens that stand on the rafter, cut across the grain. */
public final class Supports implements Part {

    @Override
    public String name() {
        return "support";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return count(frame) > 0;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        List<DrawnLine> lines = new ArrayList<>();
        for (int i = 0; i < count(frame); i++) {
            List<Point> corners = corners(frame, i);
            Point lowFoot = corners.get(0);
            Point highFoot = corners.get(1);
            Point highHead = corners.get(2);
            Point lowHead = corners.get(3);
            lines.addAll(new Lines(name(), i)
                    .cut("low", lowFoot, lowHead)
                    .cut("high", highFoot, highHead)
                    .crossed(lowFoot, highFoot, highHead, lowHead)
                    .all());
        }
        return lines;
    }

    /** The corners of one support anticlockwise: low foot, high foot, high head, low head. */
    static List<Point> corners(RoofFrame frame, int index) {
        Vector width = frame.alongSlope().times(frame.mm("support.width"));
        Vector depth = frame.squareToSlope().times(frame.mm("support.depth"));
        Point lowFoot = frame.toe().plus(frame.alongSlope().times(index * frame.mm("support.spacing")));
        Point highFoot = lowFoot.plus(width);
        return List.of(lowFoot, highFoot, highFoot.plus(depth), lowFoot.plus(depth));
    }

    /** How many lie whole between the toe and the inside end of the drawing. */
    static int count(RoofFrame frame) {
        double available = frame.toe()
                .minus(frame.onSlope(frame.insideX(), frame.rafterTop()))
                .length();
        double rest = available - frame.mm("support.width");
        return rest < 0 ? 0 : 1 + (int) Math.floor(rest / frame.mm("support.spacing") + 1e-9);
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "support.depth",
                        Kind.SECTION_SIZE,
                        "support.depth",
                        "depth of the {supports}",
                        "square to the slope, of the lowest one"),
                MeasuredKey.of(
                        "support.width",
                        Kind.SECTION_SIZE,
                        "support.width",
                        "width of the {supports}",
                        "along the slope, of the lowest one"),
                MeasuredKey.of(
                        "support.spacing",
                        Kind.LENGTH,
                        "support.spacing",
                        "spacing of the {supports}",
                        "along the slope, from centre to centre"),
                MeasuredKey.derived(
                        "support.count",
                        Kind.COUNT,
                        "number of {supports}",
                        "all that are drawn",
                        "roof.pitch",
                        "rafter.overhang",
                        "support.spacing",
                        "support.width"),
                MeasuredKey.derived(
                        "support.crossed",
                        Kind.YES_NO,
                        "diagonals of the {supports}",
                        "both diagonals are there in every one"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        List<Expected> values = new ArrayList<>(List.of(
                frame.stated("support.depth", "support.depth"), frame.stated("support.width", "support.width")));
        int count = count(frame);
        if (count > 1) {
            values.add(frame.stated("support.spacing", "support.spacing"));
        }
        values.add(new Expected.Count("support.count", count, countWorking(frame, count)));
        values.add(new Expected.YesNo("support.crossed", true));
        return values;
    }

    private String countWorking(RoofFrame frame, int count) {
        double available = frame.toe()
                .minus(frame.onSlope(frame.insideX(), frame.rafterTop()))
                .length();
        return "%s mm of slope from the toe, one at the toe and then one every %s mm: %d"
                .formatted(Numbers.mm(available), Numbers.mm(frame.mm("support.spacing")), count);
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        String name = frame.supportName();
        List<DrawnLine> lines = lines(frame);
        String more = count(frame) < 2
                ? ""
                : (" Mark its centre on the rafter's top and step off %s along the slope from centre"
                                + " to centre for the others.")
                        .formatted(frame.drawn("support.spacing"));
        Step step = Step.of(
                        "Draw the %ss".formatted(name),
                        ("The first %s stands on the rafter with its lower face at the toe, where"
                                                + " the rafter's top meets the plumb cut: %s")
                                        .formatted(name, frame.drawn("support.width"))
                                + " along the slope, %s square to it.".formatted(frame.drawn("support.depth"))
                                + more
                                + " Cross each with both diagonals.")
                .calculate(frame.working("width", "support.width"))
                .calculate(frame.working("depth", "support.depth"))
                .faint(
                        frame.onSlope(frame.plumbCutX(), frame.coveringUnderside()),
                        frame.onSlope(frame.insideX(), frame.coveringUnderside()))
                .lineIn(lines);
        return List.of(count(frame) < 2 ? step : step.calculate(frame.working("spacing", "support.spacing")));
    }
}
