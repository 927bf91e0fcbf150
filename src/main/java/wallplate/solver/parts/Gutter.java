package wallplate.solver.parts;

import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;

/** The gutter, a box open above, against the face of the eaves. */
public final class Gutter implements Part {

    @Override
    public String name() {
        return "gutter";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("gutter");
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double outer = frame.gutterFaceX();
        double inner = frame.eavesFaceX();
        double rim = frame.gutterRimY();
        double bottom = rim - frame.mm("gutter.depth");
        return new Lines(name())
                .cut("outer", new Point(outer, bottom), new Point(outer, rim))
                .cut("bottom", new Point(outer, bottom), new Point(inner, bottom))
                .cut("inner", new Point(inner, bottom), new Point(inner, rim))
                .all();
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of(
                        "gutter.width",
                        Kind.SECTION_SIZE,
                        "gutter.width",
                        "width of the gutter",
                        "level, between its upright sides"),
                MeasuredKey.of(
                        "gutter.depth",
                        Kind.SECTION_SIZE,
                        "gutter.depth",
                        "depth of the gutter",
                        "upright, from its bottom to its rim"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        return List.of(frame.stated("gutter.width", "gutter.width"), frame.stated("gutter.depth", "gutter.depth"));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        double rim = frame.gutterRimY();
        return List.of(Step.of(
                        "Draw the gutter",
                        ("Draw the gutter against the outer face of the eaves, open above: %s wide"
                                                + " and %s deep, its rim a little below the top")
                                        .formatted(frame.drawn("gutter.width"), frame.drawn("gutter.depth"))
                                + " of the fascia or of the rafter's end.")
                .calculate(frame.working("width", "gutter.width"))
                .calculate(frame.working("depth", "gutter.depth"))
                .faint(new Point(frame.gutterFaceX(), rim), new Point(frame.eavesFaceX(), rim))
                .lineIn(lines(frame)));
    }
}
