package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The level tie beam on the wall plate, cut to the slope where it meets the rafter's underside. */
public final class TieBeam implements Part {

    @Override
    public String name() {
        return "tie-beam";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("tie-beam");
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double top = frame.tieBeamTopY();
        double inside = frame.insideX();
        Lines lines = new Lines(name()).seen("bottom", Point.ORIGIN, new Point(inside, 0));
        double topStart = top / frame.tangent();
        if (topStart < inside) {
            lines.seen("top", new Point(topStart, top), new Point(inside, top));
        }
        return lines.all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(MeasuredKey.of(
                "tie-beam.depth",
                Kind.SECTION_SIZE,
                "tie-beam.depth",
                "depth of the tie beam",
                "upright, from its underside to its top"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(frame.stated("tie-beam.depth", "tie-beam.depth"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        return List.of(Step.of(
                        "Draw the tie beam",
                        ("The level line is its underside. Draw its top %s above. It begins at the"
                                                + " rafter's underside and runs to the")
                                        .formatted(frame.drawn("tie-beam.depth"))
                                + " inside end of the drawing.")
                .calculate(frame.working("depth", "tie-beam.depth"))
                .faint(new Point(0, frame.tieBeamTopY()), new Point(frame.insideX(), frame.tieBeamTopY()))
                .lineIn(lines(frame)));
    }
}
