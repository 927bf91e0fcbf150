package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The walling built up between the rafters over a plate that is set in, cut and hatched above the rafter. */
public final class BeamFilling implements Part {

    @Override
    public String name() {
        return "beam-filling";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.hasBeamFilling();
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double outer = frame.outerWallX();
        double rafter = frame.rafterTop();
        double covering = frame.coveringUnderside();
        List<Point> outline = List.of(
                frame.onSlope(outer, rafter),
                frame.onSlope(0, rafter),
                frame.onSlope(0, covering),
                frame.onSlope(outer, covering));
        return new Lines(name())
                .cut("outer", Wall.outerTop(frame), frame.onSlope(outer, covering))
                .cut("inner", frame.onSlope(0, rafter), frame.onSlope(0, covering))
                .hatched(Hatching.within(outline, supports(frame), Hatching.NARROW))
                .all();
    }

    /** The supports are timber, not walling: the hatching stops at them. */
    private static List<List<Point>> supports(RoofFrame frame) {
        List<List<Point>> outlines = new ArrayList<>();
        for (int i = 0; i < Supports.count(frame); i++) {
            outlines.add(Supports.corners(frame, i));
        }
        return outlines;
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(MeasuredKey.derived(
                "beam-filling.hatched",
                Kind.YES_NO,
                "hatching of the beam filling",
                "lines at 45 degrees above the rafter, over the outer part of the wall"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(new Expected.YesNo("beam-filling.hatched", true));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        return List.of(Step.of(
                        "Draw the beam filling",
                        "Carry the outer wall face up through the rafter to the covering's underside, and draw an"
                            + " upright over the heel point from the rafter's top to the covering's underside. Hatch"
                            + " between them above the rafter at 45 degrees.")
                .faint(new Point(0, 0), frame.onSlope(0, frame.rafterTop()))
                .lineIn(lines(frame)));
    }
}
