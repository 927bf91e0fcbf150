package wallplate.solver.eaves;

import java.util.List;
import wallplate.solver.Detail;
import wallplate.solver.parts.BargeBoard;
import wallplate.solver.parts.BeamFilling;
import wallplate.solver.parts.Branders;
import wallplate.solver.parts.BreakLine;
import wallplate.solver.parts.Ceiling;
import wallplate.solver.parts.Covering;
import wallplate.solver.parts.Fascia;
import wallplate.solver.parts.Gutter;
import wallplate.solver.parts.Hand;
import wallplate.solver.parts.Part;
import wallplate.solver.parts.Posts;
import wallplate.solver.parts.Rafter;
import wallplate.solver.parts.Roof;
import wallplate.solver.parts.RoofFrame;
import wallplate.solver.parts.Supports;
import wallplate.solver.parts.TieBeam;
import wallplate.solver.parts.Wall;
import wallplate.solver.parts.WallPlate;
import wallplate.task.DrawingTask;

/** A section through the eaves of a pitched roof, cut off on the inside by a break line. */
public final class EavesSection implements Detail {

    private static final List<Part> PARTS = List.of(
            new Roof(),
            new Wall(),
            new WallPlate(),
            new TieBeam(),
            new Rafter(),
            new Supports(),
            new Covering(),
            new Fascia(),
            new Gutter(),
            new BargeBoard(),
            new Ceiling(),
            new Branders(),
            new Posts(),
            new BeamFilling(),
            new BreakLine(),
            new Hand());

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
        return PARTS;
    }
}
