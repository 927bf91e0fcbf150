package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The wall plate, cut across the grain; its top outer corner is the heel point. */
public final class WallPlate implements Part {

    @Override
    public String name() {
        return "wall-plate";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double width = frame.mm("wall-plate.width");
        Point outerTop = Point.ORIGIN;
        Point outerBottom = new Point(0, frame.wallTopY());
        Point innerBottom = new Point(width, frame.wallTopY());
        Point innerTop = new Point(width, 0);
        return new Lines(name())
                .cut("outer", outerBottom, outerTop)
                .cut("inner", innerBottom, innerTop)
                .cut("top", outerTop, innerTop)
                .crossed(outerTop, outerBottom, innerBottom, innerTop)
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "wall-plate.width",
                        Kind.SECTION_SIZE,
                        "wall-plate.width",
                        "width of the wall plate",
                        "level, between its upright sides"),
                MeasuredKey.of(
                        "wall-plate.depth",
                        Kind.SECTION_SIZE,
                        "wall-plate.depth",
                        "depth of the wall plate",
                        "upright, from the top of the wall to the top of the plate"),
                MeasuredKey.derived(
                        "wall-plate.crossed",
                        Kind.YES_NO,
                        "diagonals of the wall plate",
                        "both diagonals of its outline are there"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("wall-plate.width", "wall-plate.width"),
                frame.stated("wall-plate.depth", "wall-plate.depth"),
                new Expected.YesNo("wall-plate.crossed", true));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        return List.of(Step.of(
                        "Draw the wall plate",
                        ("Measure %s from the heel point to the inside along the level line, and %s"
                                                + " down. Draw the plate's outline and")
                                        .formatted(frame.drawn("wall-plate.width"), frame.drawn("wall-plate.depth"))
                                + " both its diagonals: it is cut across the grain.")
                .calculate(frame.working("width", "wall-plate.width"))
                .calculate(frame.working("depth", "wall-plate.depth"))
                .faint(
                        new Point(frame.mm("wall-plate.width"), frame.wallTopY()),
                        new Point(frame.mm("wall-plate.width"), 0))
                .lineIn(lines(frame)));
    }
}
