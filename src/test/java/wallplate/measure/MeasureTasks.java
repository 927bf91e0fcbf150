package wallplate.measure;

import java.util.List;
import wallplate.geometry.Segment;
import wallplate.solver.ExpectedDrawing;
import wallplate.solver.Solver;
import wallplate.task.TaskFile;
import wallplate.task.TaskReading;

/** Invented tasks to measure: both hands, three scales, every way of setting the plate. */
public final class MeasureTasks {

    /** Every part, eaves on the right, plate flush with the inner face. */
    public static final String NET_LOFT =
            """
            id: net-loft-eaves
            title: Section through the eaves of the net loft
            detail: eaves-section
            scale: "1:20"
            eaves: right
            pitch: 27
            wall: {thickness: 240, plate-flush: inner}
            wall-plate: {width: 110, depth: 60}
            tie-beam: {depth: 160}
            rafter: {depth: 140, overhang: 420}
            support: {name: purlin, width: 60, depth: 80, spacing: 860}
            covering: {name: corrugated sheeting, thickness: 40, projection: 70}
            fascia: {thickness: 30, depth: 230}
            gutter: {width: 130, depth: 100}
            barge-board: {depth: 300, clearance: 24}
            ceiling: {board: 12, brander: {width: 50, depth: 50, spacing: 420}}
            posts: {width: 100, equal-spaces: 4, span: 6400, set-out-from: wall-centre}
            break-line: {inside: 2400}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    /** Every part, eaves on the left, plate flush with the outer face, on A3. */
    public static final String TOLL_HOUSE =
            """
            id: toll-house-eaves
            title: Section through the eaves of the toll house
            detail: eaves-section
            scale: "1:20"
            eaves: left
            pitch: 21.5
            wall: {thickness: 270, plate-flush: outer}
            wall-plate: {width: 110, depth: 70}
            tie-beam: {depth: 180}
            rafter: {depth: 150, overhang: 480}
            support: {name: purlin, width: 50, depth: 100, spacing: 980}
            covering: {name: corrugated sheeting, thickness: 34, projection: 80}
            fascia: {thickness: 30, depth: 240}
            gutter: {width: 150, depth: 110}
            barge-board: {depth: 340, clearance: 30}
            ceiling: {board: 20, brander: {width: 50, depth: 50, spacing: 600}}
            posts: {width: 110, equal-spaces: 6, span: 7200, set-out-from: outer-face}
            break-line: {inside: 3100}
            sheet: {size: A3, orientation: landscape, reference-bar: 100}
            """;

    /** Battens and a larger scale, no posts, eaves on the right. */
    public static final String BIRD_HIDE =
            """
            id: bird-hide-eaves
            title: Section through the eaves of the bird hide
            detail: eaves-section
            scale: "1:10"
            eaves: right
            pitch: 34
            wall: {thickness: 150, plate-flush: inner}
            wall-plate: {width: 75, depth: 50}
            tie-beam: {depth: 120}
            rafter: {depth: 120, overhang: 260}
            support: {name: batten, width: 38, depth: 38, spacing: 310}
            covering: {name: interlocking tiles, thickness: 30, projection: 40}
            fascia: {thickness: 22, depth: 180}
            gutter: {width: 110, depth: 75}
            barge-board: {depth: 220, clearance: 16}
            ceiling: {board: 15, brander: {width: 38, depth: 38, spacing: 430}}
            break-line: {inside: 1300}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    /** No barge board, plate on the wall's middle, eaves on the left. */
    public static final String GRAIN_STORE =
            """
            id: grain-store-eaves
            title: Section through the eaves of the grain store
            detail: eaves-section
            scale: "1:20"
            eaves: left
            pitch: 19
            wall: {thickness: 230, plate-flush: centre}
            wall-plate: {width: 110, depth: 50}
            tie-beam: {depth: 130}
            rafter: {depth: 120, overhang: 320}
            support: {name: purlin, width: 60, depth: 80, spacing: 1080}
            covering: {name: profiled sheeting, thickness: 40, projection: 50}
            fascia: {thickness: 24, depth: 200}
            gutter: {width: 140, depth: 100}
            ceiling: {board: 10, brander: {width: 40, depth: 40, spacing: 520}}
            posts: {width: 120, equal-spaces: 4, span: 5600, set-out-from: wall-centre}
            break-line: {inside: 2600}
            sheet: {size: A4, orientation: landscape, reference-bar: 100}
            """;

    /** A steep roof at 1:15, eaves on the left. */
    public static final String KILN_SHED =
            """
            id: kiln-shed-eaves
            title: Section through the eaves of the kiln shed
            detail: eaves-section
            scale: "1:15"
            eaves: left
            pitch: 40
            wall: {thickness: 210, plate-flush: inner}
            wall-plate: {width: 105, depth: 60}
            tie-beam: {depth: 150}
            rafter: {depth: 150, overhang: 300}
            support: {name: batten, width: 45, depth: 60, spacing: 450}
            covering: {name: concrete tiles, thickness: 45, projection: 60}
            fascia: {thickness: 30, depth: 225}
            gutter: {width: 120, depth: 90}
            barge-board: {depth: 300, clearance: 30}
            ceiling: {board: 15, brander: {width: 45, depth: 45, spacing: 400}}
            break-line: {inside: 1500}
            sheet: {size: A3, orientation: landscape, reference-bar: 100}
            """;

    public static final List<String> ALL = List.of(NET_LOFT, TOLL_HOUSE, BIRD_HIDE, GRAIN_STORE, KILN_SHED);

    private MeasureTasks() {}

    /** The whole of what follows from a task's text. */
    public static ExpectedDrawing solved(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return Solver.solve(accepted.task());
        }
        throw new AssertionError("the task of this test is refused: " + reading);
    }

    /** The first line of a solved drawing that is an edge of a part. */
    static Segment segment(ExpectedDrawing drawing, String part, String edge) {
        return drawing.lines().stream()
                .filter(line -> line.part().equals(part) && line.edge().equals(edge))
                .findFirst()
                .orElseThrow()
                .segment();
    }
}
