package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DerivedValue;
import wallplate.task.DrawingTask;

/** How one detail is solved: the frame that its sizes set out, and the parts that stand in it. */
public interface Detail {

    /** The detail's name in task files. */
    String id();

    RoofFrame frame(DrawingTask task);

    /** Every part of the detail, in the order of its list of keys. */
    List<Part> parts();

    /** The parts in the order in which they are drawn by hand. */
    List<Part> drawingOrder();

    /** What follows from the task beyond the measured keys. */
    List<DerivedValue> derived(DrawingTask task);
}
