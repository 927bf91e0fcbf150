package wallplate.task.detail;

import java.util.List;
import wallplate.task.DetailSchema;
import wallplate.task.GeometryRule;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** What a task for a section through the eaves of a pitched roof states. */
public final class EavesSectionSchema {

    /** The detail's name in task files. */
    public static final String ID = "eaves-section";

    private EavesSectionSchema() {}

    public static DetailSchema schema() {
        return new DetailSchema(
                ID,
                "Eaves section",
                "A vertical section through the eaves of a pitched roof, cut off on the inside by a break line.",
                List.of(
                        RoofParts.pitch(),
                        RoofParts.wall(),
                        RoofParts.wallPlate(),
                        RoofParts.tieBeam(),
                        RoofParts.rafter(),
                        RoofParts.support(),
                        RoofParts.covering(),
                        RoofParts.fascia(),
                        RoofParts.gutter(),
                        RoofParts.bargeBoard(),
                        RoofParts.ceiling(),
                        RoofParts.posts(),
                        RoofParts.breakLine()),
                rules());
    }

    private static List<GeometryRule> rules() {
        return List.of(
                GeometryRule.notMore("wall-plate.width", "wall.thickness", "the wall's thickness"),
                GeometryRule.more("support.spacing", "support.width", "the width of one support"),
                GeometryRule.more("ceiling.brander.spacing", "ceiling.brander.width", "the width of one brander"),
                GeometryRule.more("break-line.inside", "wall.thickness", "the wall's thickness"),
                GeometryRule.notMoreThan(
                        RoofParts.MOST_IN_A_ROW,
                        "support.spacing",
                        List.of("pitch", "rafter.overhang", "break-line.inside"),
                        sizes -> RoofParts.alongSlope(
                                sizes, sizes.number("rafter.overhang") + sizes.number("break-line.inside"))),
                GeometryRule.notMoreThan(
                        RoofParts.MOST_IN_A_ROW,
                        "ceiling.brander.spacing",
                        List.of("break-line.inside"),
                        sizes -> sizes.number("break-line.inside")),
                postsApart());
    }

    private static GeometryRule postsApart() {
        return new GeometryRule(
                "posts.width",
                List.of("posts.width", "posts.span", "posts.equal-spaces"),
                sizes -> sizes.number("posts.width") < postSpacing(sizes),
                sizes -> "less than one of the equal spaces, which is " + PlainNumber.text(postSpacing(sizes), 1));
    }

    private static double postSpacing(Sizes sizes) {
        return sizes.number("posts.span") / sizes.number("posts.equal-spaces");
    }
}
