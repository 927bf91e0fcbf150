package wallplate.task.detail;

import static wallplate.task.SizeKey.Quantity.length;

import java.util.List;
import wallplate.task.PartSchema;
import wallplate.task.SizeKey.Choice;
import wallplate.task.SizeKey.Choice.Option;
import wallplate.task.SizeKey.Name;
import wallplate.task.SizeKey.Quantity;
import wallplate.task.SizeKey.Unit;
import wallplate.task.Sizes;

/** The parts that sections through roofs are put together from, as a task file states them. */
final class RoofParts {

    /** Supports or branders that a drawing may hold; a sheet of the largest size shows fewer. */
    static final int MOST_IN_A_ROW = 200;

    private RoofParts() {}

    /** The length along the slope that lies over a level one. */
    static double alongSlope(Sizes sizes, double levelMm) {
        return levelMm / Math.cos(Math.toRadians(sizes.number("pitch")));
    }

    static PartSchema pitch() {
        return PartSchema.required(
                "roof",
                "Roof",
                new Quantity("pitch", "Pitch", Unit.DEGREES, 1, 89, 26, "The angle of the rafters above level."));
    }

    static PartSchema wall() {
        return PartSchema.required(
                "wall",
                "Wall",
                length("wall.thickness", "Thickness", 50, 1500, 230, "Between the faces of the outside wall."),
                new Choice(
                        "wall.plate-flush",
                        "Wall plate lies flush with",
                        List.of(
                                new Option("inner", "the inner face"),
                                new Option("outer", "the outer face"),
                                new Option("centre", "neither: it lies on the wall's centre line")),
                        "Where the wall plate lies on the wall's thickness."));
    }

    static PartSchema wallPlate() {
        return PartSchema.required(
                "wall-plate",
                "Wall plate",
                length("wall-plate.width", "Width", 20, 600, 100, "Level, across the wall."),
                length("wall-plate.depth", "Depth", 10, 400, 50, "Upright."));
    }

    static PartSchema tieBeam() {
        return PartSchema.optional(
                "tie-beam", "Tie beam", length("tie-beam.depth", "Depth", 20, 800, 150, "Upright, underside to top."));
    }

    static PartSchema rafter() {
        return PartSchema.required(
                "rafter",
                "Rafter",
                length("rafter.depth", "Depth", 20, 800, 150, "Square to the slope."),
                length(
                        "rafter.overhang",
                        "Overhang",
                        0,
                        3000,
                        400,
                        "Level, from the outer wall face to the rafter's plumb cut."));
    }

    static PartSchema support() {
        return PartSchema.required(
                "support",
                "Purlins or battens",
                new Name("support.name", "Name", "purlin", "What carries the covering, in the singular."),
                length("support.width", "Width", 10, 400, 50, "Along the slope."),
                length("support.depth", "Depth", 10, 400, 75, "Square to the slope."),
                length("support.spacing", "Spacing", 50, 5000, 900, "Centre to centre along the slope."));
    }

    static PartSchema covering() {
        return PartSchema.required(
                "covering",
                "Roof covering",
                new Name("covering.name", "Name", "corrugated sheeting", "What the roof is covered with."),
                length("covering.thickness", "Thickness", 1, 400, 40, "Square to the slope."),
                length(
                        "covering.projection",
                        "Projection",
                        0,
                        1000,
                        60,
                        "Along the slope, beyond the toe, where the rafter's top meets its plumb cut."));
    }

    static PartSchema fascia() {
        return PartSchema.optional(
                "fascia",
                "Fascia",
                length("fascia.thickness", "Thickness", 5, 200, 25, "Level."),
                length("fascia.depth", "Depth", 20, 1000, 225, "Upright."));
    }

    static PartSchema gutter() {
        return PartSchema.optional(
                "gutter",
                "Gutter",
                length("gutter.width", "Width", 20, 600, 125, "Level, across the gutter."),
                length("gutter.depth", "Depth", 20, 600, 100, "Upright, from its rim to its bottom."));
    }

    static PartSchema bargeBoard() {
        return PartSchema.optional(
                "barge-board",
                "Barge board",
                length("barge-board.depth", "Depth", 20, 1500, 300, "Measured plumb."),
                length(
                        "barge-board.clearance",
                        "Clearance",
                        0,
                        500,
                        20,
                        "Level, from the gutter's outer face to the board's plumb end."));
    }

    static PartSchema ceiling() {
        return PartSchema.optional(
                "ceiling",
                "Ceiling",
                length("ceiling.board", "Board thickness", 1, 200, 12, "Upright."),
                length("ceiling.brander.width", "Brander width", 10, 400, 50, "Level."),
                length("ceiling.brander.depth", "Brander depth", 10, 400, 50, "Upright."),
                length("ceiling.brander.spacing", "Brander spacing", 50, 3000, 400, "Centre to centre, level."));
    }

    static PartSchema posts() {
        return PartSchema.optional(
                "posts",
                "Posts",
                length("posts.width", "Width", 20, 600, 100, "Level."),
                new Quantity(
                        "posts.equal-spaces",
                        "Equal spaces",
                        Unit.NUMBER,
                        2,
                        40,
                        4,
                        "Into how many equal spaces the posts divide the span."),
                length("posts.span", "Span", 500, 60000, 6400, "Level, over all the equal spaces."),
                new Choice(
                        "posts.set-out-from",
                        "Set out from",
                        List.of(
                                new Option("wall-centre", "the wall's centre line"),
                                new Option("outer-face", "the wall's outer face")),
                        "From where the spaces are counted."));
    }

    static PartSchema breakLine() {
        return PartSchema.required(
                "break-line",
                "Break line",
                length(
                        "break-line.inside",
                        "Distance inside",
                        100,
                        30000,
                        2400,
                        "Level, from the outer wall face to where the drawing is cut off."));
    }
}
