package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.solver.DrawnLine;

/** A step of drawing a part, before the steps of all parts are numbered. */
public final class Step {

    private final String title;
    private final String instruction;
    private final List<String> calculation = new ArrayList<>();
    private final List<Segment> faint = new ArrayList<>();
    private final List<DrawnLine> linedIn = new ArrayList<>();

    private Step(String title, String instruction) {
        this.title = title;
        this.instruction = instruction;
    }

    public static Step of(String title, String instruction) {
        return new Step(title, instruction);
    }

    public Step calculate(String line) {
        calculation.add(line);
        return this;
    }

    public Step faint(Point from, Point to) {
        faint.add(new Segment(from, to));
        return this;
    }

    public Step lineIn(List<DrawnLine> lines) {
        linedIn.addAll(lines);
        return this;
    }

    /** Lines in those of the lines that carry one of the edges. */
    public Step lineIn(List<DrawnLine> lines, String... edges) {
        lines.stream().filter(line -> List.of(edges).contains(line.edge())).forEach(linedIn::add);
        return this;
    }

    public String title() {
        return title;
    }

    public String instruction() {
        return instruction;
    }

    public List<String> calculation() {
        return List.copyOf(calculation);
    }

    public List<Segment> faint() {
        return List.copyOf(faint);
    }

    public List<DrawnLine> linedIn() {
        return List.copyOf(linedIn);
    }
}
