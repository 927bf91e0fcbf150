package wallplate.solver.parts;

import java.util.List;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;

/** One part of a detail: where its lines lie and what is measured on it. */
public interface Part {

    /** The name that its lines carry, such as {@code wall-plate}. */
    String name();

    /** Whether the task asks for it and these sizes leave something of it to draw. */
    boolean isDrawn(RoofFrame frame);

    /** Its lines, in the order in which they are drawn. Asked only where the part is drawn. */
    List<DrawnLine> lines(RoofFrame frame);

    /** What is measured on it, in the order of the detail's list. */
    List<MeasuredKey> keys();

    /** The value of each of its keys, in the order of the detail's list. Asked only where the part is drawn. */
    List<Expected> values(RoofFrame frame);

    /** How it is drawn by hand, in order; its texts use the sizes as rounded. Asked only where the part is drawn. */
    List<Step> steps(RoofFrame frame);
}
