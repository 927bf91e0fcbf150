package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The barge board of the gable end, seen beyond the section, down to its plumb end past the gutter. */
public final class BargeBoard implements Part {

    @Override
    public String name() {
        return "barge-board";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("barge-board");
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double end = frame.bargeEndX();
        double depth = frame.mm("barge-board.depth");
        Point endTop = frame.onSlope(end, frame.coveringTop());
        Point endBottom = new Point(end, endTop.y() - depth);
        double wall = frame.outerWallX();
        Point atWall = new Point(wall, frame.slopeY(wall, frame.coveringTop()) - depth);
        Lines lines = new Lines(name()).seen("end", endBottom, endTop).seen("bottom", endBottom, atWall);
        Point coveringEnd = Covering.end(frame, frame.coveringTop());
        if (end < coveringEnd.x()) {
            lines.seen("top", endTop, coveringEnd);
        }
        return lines.all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "barge-board.depth",
                        Kind.SECTION_SIZE,
                        "barge-board.depth",
                        "depth of the barge board",
                        "plumb, between its sloping edges"),
                MeasuredKey.of(
                        "barge-board.clearance",
                        Kind.LENGTH,
                        "barge-board.clearance",
                        "clearance of the barge board",
                        "level, from the gutter's outer face to the board's plumb end"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        List<Expected> values = new ArrayList<>(List.of(frame.stated("barge-board.depth", "barge-board.depth")));
        if (frame.has("gutter")) {
            values.add(frame.stated("barge-board.clearance", "barge-board.clearance"));
        }
        return values;
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double end = frame.bargeEndX();
        return List.of(Step.of(
                        "Draw the barge board",
                        ("Carry the covering's top line on downwards to a plumb end %s beyond the"
                                                + " gutter's outer face. Measure %s plumb down")
                                        .formatted(
                                                frame.drawn("barge-board.clearance"), frame.drawn("barge-board.depth"))
                                + " and draw the lower edge parallel to the slope back to the outer wall face.")
                .calculate(frame.working("depth", "barge-board.depth"))
                .calculate(frame.working("clearance", "barge-board.clearance"))
                .faint(frame.onSlope(end, frame.coveringTop()), Covering.end(frame, frame.coveringTop()))
                .lineIn(lines(frame)));
    }
}
