package wallplate.task.detail;

import static wallplate.task.SizeKey.Quantity.length;

import java.util.List;
import wallplate.task.DetailSchema;
import wallplate.task.GeometryRule;
import wallplate.task.PartSchema;
import wallplate.task.Sizes;

/** What a task for a section through a lean-to roof between a low and a high wall plate states. */
public final class MonoPitchSectionSchema {

    /** The detail's name in task files. */
    public static final String ID = "mono-pitch-section";

    private MonoPitchSectionSchema() {}

    public static DetailSchema schema() {
        return new DetailSchema(
                ID,
                "Mono-pitch section",
                "A vertical section through a lean-to roof, from its eaves at the low wall to the far face of the high"
                        + " wall.",
                List.of(
                        RoofParts.pitch(),
                        RoofParts.wall(),
                        RoofParts.wallPlate(),
                        highWall(),
                        highPlate(),
                        RoofParts.rafter(),
                        RoofParts.support(),
                        RoofParts.covering(),
                        RoofParts.fascia(),
                        RoofParts.gutter(),
                        RoofParts.bargeBoard()),
                List.of(
                        GeometryRule.notMore("wall-plate.width", "wall.thickness", "the wall's thickness"),
                        GeometryRule.notMore("high-plate.width", "high-wall.thickness", "the high wall's thickness"),
                        GeometryRule.more("support.spacing", "support.width", "the width of one support"),
                        GeometryRule.notMoreThan(
                                RoofParts.MOST_IN_A_ROW,
                                "support.spacing",
                                List.of(
                                        "pitch",
                                        "rafter.overhang",
                                        "wall.thickness",
                                        "high-wall.clear-span",
                                        "high-wall.thickness"),
                                sizes -> RoofParts.alongSlope(sizes, level(sizes)))));
    }

    private static double level(Sizes sizes) {
        return sizes.number("rafter.overhang")
                + sizes.number("wall.thickness")
                + sizes.number("high-wall.clear-span")
                + sizes.number("high-wall.thickness");
    }

    private static PartSchema highWall() {
        return PartSchema.required(
                "high-wall",
                "High wall",
                length(
                        "high-wall.clear-span",
                        "Clear span",
                        300,
                        15000,
                        2400,
                        "Level, between the walls' inner faces."),
                length("high-wall.thickness", "Thickness", 50, 1500, 230, "Between the faces of the high wall."));
    }

    private static PartSchema highPlate() {
        return PartSchema.required(
                "high-plate",
                "High wall plate",
                length("high-plate.width", "Width", 20, 600, 100, "Level, from the high wall's inner face."),
                length("high-plate.depth", "Depth", 10, 400, 50, "Upright."));
    }
}
