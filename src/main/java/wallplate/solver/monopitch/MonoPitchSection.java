package wallplate.solver.monopitch;

import java.util.List;
import wallplate.solver.DerivedValue;
import wallplate.solver.parts.BargeBoard;
import wallplate.solver.parts.BeamFilling;
import wallplate.solver.parts.Covering;
import wallplate.solver.parts.Detail;
import wallplate.solver.parts.Fascia;
import wallplate.solver.parts.Gutter;
import wallplate.solver.parts.Hand;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.Rafter;
import wallplate.solver.parts.Roof;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.RoofValues;
import wallplate.solver.parts.Supports;
import wallplate.solver.parts.Wall;
import wallplate.solver.parts.WallPlate;
import wallplate.task.DrawingTask;

/** A section through a lean-to roof, from its eaves to the far face of the high wall. */
public final class MonoPitchSection implements Detail {

    private final Roof roof = new Roof();
    private final Wall wall = new Wall();
    private final WallPlate wallPlate = new WallPlate();
    private final HighWall highWall = new HighWall();
    private final HighPlate highPlate = new HighPlate();
    private final Rafter rafter = new Rafter();
    private final Supports supports = new Supports();
    private final Covering covering = new Covering();
    private final HighEnd highEnd = new HighEnd();
    private final Fascia fascia = new Fascia();
    private final Gutter gutter = new Gutter();
    private final BargeBoard bargeBoard = new BargeBoard();
    private final BeamFilling beamFilling = new BeamFilling();
    private final Hand hand = new Hand();

    @Override
    public String id() {
        return "mono-pitch-section";
    }

    @Override
    public RoofFrame frame(DrawingTask task) {
        double inner = RoofFrame.endingAt(task, 0).innerWallX();
        double beyond =
                task.sizes().number("high-wall.clear-span") + task.sizes().number("high-wall.thickness");
        return RoofFrame.endingAt(task, inner + task.scale().onPaper(beyond));
    }

    @Override
    public List<Part> parts() {
        return List.of(
                roof,
                wall,
                wallPlate,
                highWall,
                highPlate,
                rafter,
                supports,
                covering,
                highEnd,
                fascia,
                gutter,
                bargeBoard,
                beamFilling,
                hand);
    }

    @Override
    public List<Part> drawingOrder() {
        return List.of(
                roof,
                wall,
                wallPlate,
                rafter,
                highWall,
                highPlate,
                supports,
                covering,
                highEnd,
                fascia,
                gutter,
                bargeBoard,
                beamFilling);
    }

    @Override
    public List<DerivedValue> derived(DrawingTask task) {
        double run = HighPlate.realRun(frame(task));
        return RoofValues.ofLeanTo(task, run, task.sizes().number("high-wall.thickness"));
    }
}
