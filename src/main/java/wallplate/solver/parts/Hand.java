package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** Which way round the whole drawing lies on the sheet. */
public final class Hand implements Part {

    @Override
    public String name() {
        return "drawing";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return true;
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        return List.of();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(MeasuredKey.derived(
                "drawing.eaves", Kind.WORD, "side of the eaves", "on which side of the sheet the overhang lies"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(new Expected.Word("drawing.eaves", frame.task().eaves().word()));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        return List.of();
    }
}
