package wallplate.solver.eaves;

import java.util.List;
import wallplate.solver.DerivedValue;
import wallplate.solver.parts.BargeBoard;
import wallplate.solver.parts.BeamFilling;
import wallplate.solver.parts.Branders;
import wallplate.solver.parts.BreakLine;
import wallplate.solver.parts.Ceiling;
import wallplate.solver.parts.Covering;
import wallplate.solver.parts.Detail;
import wallplate.solver.parts.Fascia;
import wallplate.solver.parts.Gutter;
import wallplate.solver.parts.Hand;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.Posts;
import wallplate.solver.parts.Rafter;
import wallplate.solver.parts.Roof;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.RoofValues;
import wallplate.solver.parts.Supports;
import wallplate.solver.parts.TieBeam;
import wallplate.solver.parts.Wall;
import wallplate.solver.parts.WallPlate;
import wallplate.task.DrawingTask;

/** A section through the eaves of a pitched roof, cut off on the inside by a break line. */
public final class EavesSection implements Detail {

    private final Roof roof = new Roof();
    private final Wall wall = new Wall();
    private final WallPlate wallPlate = new WallPlate();
    private final TieBeam tieBeam = new TieBeam();
    private final Rafter rafter = new Rafter();
    private final Supports supports = new Supports();
    private final Covering covering = new Covering();
    private final Fascia fascia = new Fascia();
    private final Gutter gutter = new Gutter();
    private final BargeBoard bargeBoard = new BargeBoard();
    private final Ceiling ceiling = new Ceiling();
    private final Branders branders = new Branders();
    private final Posts posts = new Posts();
    private final BeamFilling beamFilling = new BeamFilling();
    private final BreakLine breakLine = new BreakLine();
    private final Hand hand = new Hand();

    @Override
    public String id() {
        return "eaves-section";
    }

    @Override
    public RoofFrame frame(DrawingTask task) {
        return RoofFrame.cutOffByBreakLine(task);
    }

    @Override
    public List<Part> parts() {
        return List.of(
                roof,
                wall,
                wallPlate,
                tieBeam,
                rafter,
                supports,
                covering,
                fascia,
                gutter,
                bargeBoard,
                ceiling,
                branders,
                posts,
                beamFilling,
                breakLine,
                hand);
    }

    @Override
    public List<Part> drawingOrder() {
        return List.of(
                roof,
                breakLine,
                wall,
                wallPlate,
                rafter,
                tieBeam,
                posts,
                supports,
                covering,
                fascia,
                gutter,
                bargeBoard,
                branders,
                ceiling,
                beamFilling);
    }

    @Override
    public List<DerivedValue> derived(DrawingTask task) {
        return RoofValues.ofPitchedRoof(task);
    }
}
