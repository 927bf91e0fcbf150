package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import wallplate.geometry.Point;
import wallplate.solver.DrawnLine;
import wallplate.solver.Expected;
import wallplate.solver.MeasuredKey;
import wallplate.solver.MeasuredKey.Kind;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** The posts of the truss, upright between tie beam and rafter, at equal spaces over the span. */
public final class Posts implements Part {

    @Override
    public String name() {
        return "post";
    }

    @Override
    public boolean isDrawn(RoofFrame frame) {
        return frame.has("posts") && !centres(frame).isEmpty();
    }

    @Override
    public List<DrawnLine> lines(RoofFrame frame) {
        double half = frame.mm("posts.width") / 2;
        double foot = frame.tieBeamTopY();
        List<DrawnLine> lines = new ArrayList<>();
        List<Double> centres = centres(frame);
        for (int i = 0; i < centres.size(); i++) {
            double outer = centres.get(i) - half;
            double inner = centres.get(i) + half;
            lines.addAll(new Lines(name(), i)
                    .seen("outer", new Point(outer, foot), frame.onSlope(outer, 0))
                    .seen("inner", new Point(inner, foot), frame.onSlope(inner, 0))
                    .all());
        }
        return lines;
    }

    /** The centres, from the eaves inwards, of the posts that stand whole in the drawing and have some height. */
    static List<Double> centres(RoofFrame frame) {
        Sizes sizes = frame.task().sizes();
        double half = frame.mm("posts.width") / 2;
        double space = frame.mm("posts.span") / sizes.number("posts.equal-spaces");
        int last = (int) sizes.number("posts.equal-spaces") - 1;
        List<Double> centres = new ArrayList<>();
        for (int k = 1; k <= last; k++) {
            double centre = datumX(frame) + k * space;
            boolean whole = centre + half <= frame.insideX() + 1e-9;
            boolean standing = frame.slopeY(centre - half, 0) > frame.tieBeamTopY();
            if (whole && standing) {
                centres.add(centre);
            }
        }
        return centres;
    }

    private static double datumX(RoofFrame frame) {
        boolean centreLine = frame.task()
                .sizes()
                .word("posts.set-out-from")
                .orElse("wall-centre")
                .equals("wall-centre");
        return frame.outerWallX() + (centreLine ? frame.mm("wall.thickness") / 2 : 0);
    }

    @Override
    public List<MeasuredKey> keys() {
        return List.of(
                MeasuredKey.of("post.width", Kind.SECTION_SIZE, "posts.width", "width of the posts", "level"),
                MeasuredKey.derived(
                        "post.position",
                        Kind.LENGTH,
                        "position of the first post",
                        "level, from the wall's centre line or outer face, as the task says, to the centre of the"
                                + " post"));
    }

    @Override
    public List<Expected> values(RoofFrame frame) {
        Sizes sizes = frame.task().sizes();
        double span = sizes.number("posts.span");
        double spaces = sizes.number("posts.equal-spaces");
        String before = "%s / %s = %s mm; "
                .formatted(PlainNumber.text(span), PlainNumber.text(spaces), PlainNumber.text(span / spaces, 2));
        return List.of(
                frame.stated("post.width", "posts.width"),
                Working.length("post.position", span / spaces, frame.scale(), before));
    }

    @Override
    public List<Step> steps(RoofFrame frame) {
        Sizes sizes = frame.task().sizes();
        double space = sizes.number("posts.span") / sizes.number("posts.equal-spaces");
        String from = sizes.word("posts.set-out-from").orElse("wall-centre").equals("wall-centre")
                ? "the centre line of the wall"
                : "the outer face of the wall";
        Step step = Step.of(
                        "Draw the posts",
                        ("Measure %s level from %s for the centre of the first post, and the same"
                                                + " again for each further one. Draw each upright,")
                                        .formatted(
                                                RoofFrame.drawnMm(frame.scale().onPaper(space)), from)
                                + (" %s wide, half to each side of its centre, from the tie beam's"
                                                + " top to the rafter's underside.")
                                        .formatted(frame.drawn("posts.width")))
                .calculate("%s / %s = %s mm"
                        .formatted(
                                PlainNumber.text(sizes.number("posts.span")),
                                PlainNumber.text(sizes.number("posts.equal-spaces")),
                                PlainNumber.text(space, 2)))
                .calculate(
                        "one space: " + Working.length("", space, frame.scale()).working())
                .calculate(frame.working("width", "posts.width"));
        centres(frame).forEach(x -> step.faint(new Point(x, frame.tieBeamTopY()), frame.onSlope(x, 0)));
        return List.of(step.lineIn(lines(frame)));
    }
}
