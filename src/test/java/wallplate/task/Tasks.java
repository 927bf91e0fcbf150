package wallplate.task;

import java.util.List;

/** Task files for tests. */
public final class Tasks {

    /** The example of the interchange page, with every part. */
    public static final String BOATHOUSE = """
        id: boathouse-eaves
        title: Section through the eaves of the boathouse
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

    /** A lean-to roof with every part. */
    public static final String LEAN_TO = """
        id: tool-shed-lean-to
        title: Section through the lean-to of the tool shed
        detail: mono-pitch-section
        scale: "1:20"
        eaves: left
        pitch: 12
        wall: {thickness: 220, plate-flush: inner}
        wall-plate: {width: 100, depth: 50}
        high-wall: {clear-span: 2200, thickness: 220}
        high-plate: {width: 100, depth: 50}
        rafter: {depth: 150, overhang: 300}
        support: {name: purlin, width: 50, depth: 75, spacing: 800}
        covering: {name: corrugated sheeting, thickness: 40, projection: 60}
        fascia: {thickness: 20, depth: 220}
        gutter: {width: 120, depth: 100}
        barge-board: {depth: 300, clearance: 20}
        sheet: {size: A4, orientation: landscape, reference-bar: 100}
        """;

    private Tasks() {}

    public static DrawingTask boathouse() {
        return accepted(BOATHOUSE);
    }

    /** The boathouse with one text of its file replaced. */
    public static DrawingTask boathouse(String replace, String by) {
        return accepted(changed(replace, by));
    }

    public static String changed(String replace, String by) {
        if (!BOATHOUSE.contains(replace)) {
            throw new IllegalArgumentException("the boathouse has no " + replace);
        }
        return BOATHOUSE.replace(replace, by);
    }

    public static DrawingTask accepted(String yaml) {
        TaskReading reading = TaskFile.read(yaml);
        if (reading instanceof TaskReading.Accepted accepted) {
            return accepted.task();
        }
        throw new AssertionError("refused: " + messages(reading));
    }

    public static List<String> messages(TaskReading reading) {
        return reading instanceof TaskReading.Refused refused
                ? refused.faults().stream().map(Fault::message).toList()
                : List.of();
    }
}
