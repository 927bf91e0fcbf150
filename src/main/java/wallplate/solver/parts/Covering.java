package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;

/** The roof covering on its supports, from beyond the toe to the inside end of the drawing. */
public final class Covering implements Part {

    @Override
    public String name() {
        return "covering";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        Point lowerEnd = end(frame, frame.coveringUnderside());
        Point upperEnd = end(frame, frame.coveringTop());
        double inside = frame.insideX();
        return new Lines(name())
                .cut("bottom", lowerEnd, frame.onSlope(inside, frame.coveringUnderside()))
                .cut("top", upperEnd, frame.onSlope(inside, frame.coveringTop()))
                .cut("end", lowerEnd, upperEnd)
                .all();
    }

    /** The outer end of the covering, square to the slope, at a height above the rafter's underside. */
    static Point end(RoofFrame frame, double aboveUnderside) {
        return frame.toe()
                .plus(frame.alongSlope().times(-frame.mm("covering.projection")))
                .plus(frame.squareToSlope().times(aboveUnderside - frame.rafterTop()));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        double gap = frame.task().sizes().number("support.depth");
        return List.of(
                frame.stated("covering.thickness", "covering.thickness"),
                Working.length("covering.gap", gap, frame.scale(), "the depth of the supports: "),
                frame.stated("covering.projection", "covering.projection"));
    }
}
