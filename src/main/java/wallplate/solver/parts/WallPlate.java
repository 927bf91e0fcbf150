package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;

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
    public List<Expected> values(RoofFrame frame) {
        return List.of(
                frame.stated("wall-plate.width", "wall-plate.width"),
                frame.stated("wall-plate.depth", "wall-plate.depth"),
                new Expected.YesNo("wall-plate.crossed", true));
    }
}
