package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The ceiling board under the branders, from the inner wall face inwards. */
public final class Ceiling implements Part {

    /** A board thinner than this, in millimetres on paper, is drawn as one heavy line. */
    static final double THINNEST_AS_TWO_LINES = 0.7;

    @Override
    public String name() {
        return "ceiling";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("ceiling");
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double top = -frame.mm("ceiling.brander.depth");
        double board = frame.mm("ceiling.board");
        double from = frame.innerWallX();
        double to = frame.insideX();
        Lines lines = new Lines(name()).cut("top", new Point(from, top), new Point(to, top));
        if (board >= THINNEST_AS_TWO_LINES) {
            lines.cut("bottom", new Point(from, top - board), new Point(to, top - board));
        }
        return lines.all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(MeasuredKey.derived(
                "ceiling.drop",
                Kind.LENGTH,
                "distance of the ceiling from the tie beam",
                "upright, from the tie beam's underside to the top of the ceiling board",
                "brander.depth"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        double drop = frame.task().sizes().number("ceiling.brander.depth");
        return List.of(Working.length("ceiling.drop", drop, frame.scale(), "the depth of the branders: "));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        boolean oneLine = frame.mm("ceiling.board") < THINNEST_AS_TWO_LINES;
        return List.of(Step.of(
                        "Draw the ceiling",
                        ("Draw the top of the ceiling board %s below the level line, where the"
                                                + " branders end, from the inner wall face inwards. ")
                                        .formatted(frame.drawn("ceiling.brander.depth"))
                                + (oneLine
                                        ? "The board is too thin for two lines: draw it as one heavy line."
                                        : "Draw its underside %s lower.".formatted(frame.drawn("ceiling.board"))))
                .calculate(frame.working("board", "ceiling.board"))
                .lineIn(lines(frame)));
    }
}
