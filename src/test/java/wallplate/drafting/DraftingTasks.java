package wallplate.drafting;

import java.util.List;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Tasks to draft in tests, each with something of its own: either hand, either way up, few parts and many. */
public final class DraftingTasks {

    /** Everything drawn, eaves on the right, plate flush with the inner face. */
    public static final String EVERYTHING =
            """
            id: slipway-eaves
            title: Section through the eaves of the slipway shed
            detail: eaves-section
            scale: "1:20"
            eaves: right
            pitch: 26
            wall: {thickness: 230, plate-flush: inner}
            wall-plate: {width: 100, depth: 50}
            tie-beam: {depth: 150}
            rafter: {depth: 150, overhang: 400}
            support: {name: purlin, width: 50, depth: 75, spacing: 900}
            covering: {name: corrugated sheeting, thickness: 40, projection: 60}
            fascia: {thickness: 25, depth: 225}
            gutter: {width: 125, depth: 100}
            barge-board: {depth: 300, clearance: 20}
            ceiling: {board: 12, brander: {width: 50, depth: 50, spacing: 400}}
            posts: {width: 100, equal-spaces: 4, span: 6400, set-out-from: wall-centre}
            break-line: {inside: 2400}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    /** Steep, large and upright, without rainwater parts. */
    public static final String STEEP_PORTRAIT =
            """
            id: vestry-eaves
            title: Section through the eaves of the old vestry
            detail: eaves-section
            scale: "1:10"
            eaves: left
            pitch: 45
            wall: {thickness: 330, plate-flush: centre}
            wall-plate: {width: 114, depth: 76}
            tie-beam: {depth: 152}
            rafter: {depth: 152, overhang: 350}
            support: {name: batten, width: 38, depth: 50, spacing: 345}
            covering: {name: concrete tiles, thickness: 35, projection: 50}
            fascia: {thickness: 38, depth: 228}
            ceiling: {board: 6.4, brander: {width: 38, depth: 38, spacing: 400}}
            posts: {width: 114, equal-spaces: 4, span: 5200, set-out-from: outer-face}
            break-line: {inside: 1600}
            sheet: {size: A3, orientation: portrait, reference-bar: 100}
            """;

    /** The fewest parts that a task may have. */
    public static final String FEWEST_PARTS =
            """
            id: peat-shed-eaves
            title: Eaves of the peat shed
            detail: eaves-section
            scale: "1:20"
            eaves: right
            pitch: 17.5
            wall: {thickness: 220, plate-flush: inner}
            wall-plate: {width: 114, depth: 38}
            rafter: {depth: 114, overhang: 460}
            support: {name: purlin, width: 50, depth: 76, spacing: 1060}
            covering: {name: corrugated sheeting, thickness: 30, projection: 50}
            break-line: {inside: 2000}
            sheet: {size: A4, orientation: portrait, reference-bar: 100}
            """;

    public static final List<String> ALL = List.of(EVERYTHING, STEEP_PORTRAIT, FEWEST_PARTS);

    private DraftingTasks() {}

    public static ExpectedDrawing solved(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return Solver.solve(accepted.task());
        }
        throw new AssertionError("the task of this test is refused: " + reading);
    }
}
