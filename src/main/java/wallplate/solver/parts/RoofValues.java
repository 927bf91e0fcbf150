package wallplate.solver.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import wallplate.solver.DerivedValue;
import wallplate.solver.EqualSpacing;
import wallplate.solver.RoofTriangle;
import wallplate.task.DrawingTask;
import wallplate.task.PlainNumber;
import wallplate.task.Scale;
import wallplate.task.Sizes;

/**
 * The values of the whole roof that a section shows only the eaves of: run, rise, lengths along the slope, numbers of
 * things, posts across the truss. What rests on the span is there only where the task states a span.
 */
public final class RoofValues {

    private final Sizes sizes;
    private final Scale scale;
    private final double pitch;
    private final List<DerivedValue> values = new ArrayList<>();

    private RoofValues(DrawingTask task) {
        this.sizes = task.sizes();
        this.scale = task.scale();
        this.pitch = sizes.number("pitch");
    }

    /** A roof with its ridge over the middle of the task's span. */
    public static List<DerivedValue> ofPitchedRoof(DrawingTask task) {
        RoofValues roof = new RoofValues(task);
        roof.slope();
        roof.tail();
        if (task.sizes().has("posts.span")) {
            roof.upTo(roof.runToRidge(), roof.runWorking(), "ridge", 0);
            roof.branders();
            roof.posts();
        }
        return List.copyOf(roof.values);
    }

    /**
     * A roof that rises to a plate on a higher wall.
     *
     * @param run level, from the heel point to the high plate
     * @param beyond level, how far the roof goes on past that
     */
    public static List<DerivedValue> ofLeanTo(DrawingTask task, double run, double beyond) {
        RoofValues roof = new RoofValues(task);
        roof.slope();
        roof.tail();
        String working = "%s - %s + %s"
                .formatted(
                        text(roof.sizes.number("wall.thickness")),
                        text(roof.setIn()),
                        text(roof.sizes.number("high-wall.clear-span")));
        roof.upTo(run, working, "high plate", beyond);
        return List.copyOf(roof.values);
    }

    private void slope() {
        RoofTriangle triangle = new RoofTriangle(1, pitch);
        String tangent = "tan %s° = %s".formatted(text(pitch), PlainNumber.text(triangle.percent() / 100, 4));
        number(
                "roof.slope-one-in",
                "slope, 1 in",
                triangle.levelForOneUp(),
                "",
                tangent + "; 1 / that = " + text(triangle.levelForOneUp()));
        number(
                "roof.slope-percent",
                "slope in percent",
                triangle.percent(),
                "%",
                tangent + "; x 100 = " + text(triangle.percent()) + " %");
        number(
                "roof.rise-in-twelve",
                "rise in 12 of run",
                triangle.riseInTwelve(),
                "",
                tangent + "; x 12 = " + text(triangle.riseInTwelve()));
    }

    private void tail() {
        double level = setIn() + sizes.number("rafter.overhang");
        length(
                "rafter.tail",
                "rafter's tail beyond the heel point, along the slope",
                new RoofTriangle(1, pitch).alongSlope(level),
                "(%s + %s) / cos %s°".formatted(text(setIn()), text(sizes.number("rafter.overhang")), text(pitch)));
    }

    private double setIn() {
        double spare = sizes.number("wall.thickness") - sizes.number("wall-plate.width");
        return switch (sizes.word("wall.plate-flush").orElse("inner")) {
            case "outer" -> 0;
            case "centre" -> spare / 2;
            default -> spare;
        };
    }

    /** From the wall's outer face to the line that the span is counted from. */
    private double datum() {
        return fromCentreLines() ? sizes.number("wall.thickness") / 2 : 0;
    }

    private boolean fromCentreLines() {
        return sizes.word("posts.set-out-from").orElse("wall-centre").equals("wall-centre");
    }

    private double runToRidge() {
        return sizes.number("posts.span") / 2 + datum() - setIn();
    }

    private String runWorking() {
        String toFace = datum() == 0 ? "" : " + " + text(datum());
        String toHeel = setIn() == 0 ? "" : " - " + text(setIn());
        return "%s / 2%s%s".formatted(text(sizes.number("posts.span")), toFace, toHeel);
    }

    private void upTo(double run, String runWorking, String top, double beyond) {
        RoofTriangle triangle = new RoofTriangle(run, pitch);
        double tail = setIn() + sizes.number("rafter.overhang") + beyond;
        double withTail = triangle.rafterLengthWithTail(tail);
        length("roof.run", "run, from the heel point to the " + top, run, runWorking);
        length("roof.rise", "rise, over the run", triangle.rise(), "%s x tan %s°".formatted(text(run), text(pitch)));
        length(
                "rafter.length",
                "rafter's length along the slope, from the heel point to the " + top,
                triangle.rafterLength(),
                "%s / cos %s°".formatted(text(run), text(pitch)));
        length(
                "rafter.length-with-tail",
                "whole length of the rafter along the slope",
                withTail,
                "(%s + %s) / cos %s°".formatted(text(run), text(tail), text(pitch)));
        double plumbDepth = triangle.alongSlope(sizes.number("rafter.depth"));
        length(
                "roof.top-height",
                "height of the rafter's top at the " + top + " above the wall plate",
                triangle.rise() + plumbDepth,
                "%s + %s / cos %s°".formatted(text(triangle.rise()), text(sizes.number("rafter.depth")), text(pitch)));
        supports(withTail);
        length(
                "covering.length",
                "length of the covering along the slope",
                withTail + sizes.number("covering.projection"),
                "%s + %s".formatted(text(withTail), text(sizes.number("covering.projection"))));
    }

    private void supports(double slopeLength) {
        double spacing = sizes.number("support.spacing");
        double width = sizes.number("support.width");
        int whole = (int) Math.max(0, Math.floor((slopeLength - width) / spacing + 1e-9));
        number(
                "support.total",
                "number over the whole slope at this spacing",
                whole + 1,
                "",
                "(%s - %s) / %s = %s, so %d spaces and one more"
                        .formatted(
                                text(slopeLength),
                                text(width),
                                text(spacing),
                                text((slopeLength - width) / spacing),
                                whole));
        EqualSpacing equal = EqualSpacing.ofAtMost(Math.max(slopeLength - width, width), spacing);
        length(
                "support.equal-spacing",
                "equal spacing that fills the slope, none wider than this one",
                equal.spacing(),
                equalWorking(slopeLength - width, spacing, equal));
        supportsPerSquareMetre();
    }

    private void supportsPerSquareMetre() {
        double spacing = sizes.number("support.spacing");
        number(
                "support.metres-per-square-metre",
                "running metres for one square metre of roof",
                1000 / spacing,
                "m",
                "1000 / %s = %s".formatted(text(spacing), text(1000 / spacing)));
    }

    private static String equalWorking(double length, double widest, EqualSpacing equal) {
        return "%s / %s = %s, so %d spaces; %s / %d"
                .formatted(
                        text(length),
                        text(widest),
                        text(length / widest),
                        equal.spaces(),
                        text(length),
                        equal.spaces());
    }

    private void branders() {
        if (!sizes.has("ceiling.brander")) {
            return;
        }
        double walls = fromCentreLines() ? sizes.number("wall.thickness") : 2 * sizes.number("wall.thickness");
        double clear = sizes.number("posts.span") - walls;
        double width = sizes.number("ceiling.brander.width");
        if (clear <= width) {
            return;
        }
        EqualSpacing equal = EqualSpacing.ofAtMost(clear - width, sizes.number("ceiling.brander.spacing"));
        length(
                "ceiling.clear-span",
                "clear span between the walls",
                clear,
                "%s - %s".formatted(text(sizes.number("posts.span")), text(walls)));
        number(
                "brander.total",
                "number of branders over the clear span, one against each wall",
                equal.members(),
                "",
                equalWorking(clear - width, sizes.number("ceiling.brander.spacing"), equal) + "; one more than spaces");
    }

    private void posts() {
        double span = sizes.number("posts.span");
        int spaces = (int) sizes.number("posts.equal-spaces");
        for (int k = 1; k < spaces; k++) {
            double position = k * span / spaces;
            length(
                    "post.position-" + k,
                    "position of post %d".formatted(k),
                    position,
                    "%d x %s / %d".formatted(k, text(span), spaces));
            double fromHeel = Math.min(position, span - position) + datum() - setIn();
            double beam = sizes.has("tie-beam") ? sizes.number("tie-beam.depth") : 0;
            double height = fromHeel * Math.tan(Math.toRadians(pitch)) - beam;
            if (height > 0) {
                length(
                        "post.height-" + k,
                        "height of post %d at its centre, from the tie beam to the rafter".formatted(k),
                        height,
                        "%s x tan %s° - %s".formatted(text(fromHeel), text(pitch), text(beam)));
            }
        }
    }

    private void length(String id, String label, double realMm, String working) {
        double paper = scale.onPaper(realMm);
        values.add(new DerivedValue(
                id,
                label,
                realMm,
                "mm",
                OptionalDouble.of(paper),
                "%s = %s mm; %s / %s = %s mm on paper"
                        .formatted(
                                working,
                                text(realMm),
                                text(realMm),
                                text(scale.denominator()),
                                PlainNumber.text(paper, 1))));
    }

    private void number(String id, String label, double value, String unit, String working) {
        values.add(new DerivedValue(id, label, value, unit, OptionalDouble.empty(), working));
    }

    private static String text(double value) {
        return PlainNumber.text(value, 2);
    }
}
