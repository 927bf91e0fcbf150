package wallplate.solver.brief;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import wallplate.solver.Advice;
import wallplate.solver.Expected;
import wallplate.solver.ExpectedDrawing;
import wallplate.task.PlainNumber;
import wallplate.task.Sizes;

/** Parts that stand oddly to one another, or of which nothing can be measured. */
final class PartRules implements BriefRule {

    @Override
    public Stream<Advice> advice(ExpectedDrawing drawing) {
        Sizes sizes = drawing.task().sizes();
        List<Advice> advice = new ArrayList<>();
        if (!sizes.has("tie-beam") && sizes.has("ceiling")) {
            add(advice, "ceiling", "The branders hang from the tie beam, but the task has none.");
        }
        if (!sizes.has("tie-beam") && sizes.has("posts")) {
            add(advice, "posts", "The posts stand on the tie beam, but the task has none.");
        }
        if (sizes.has("gutter") && !sizes.has("fascia")) {
            add(advice, "gutter", "A gutter is usually fixed to a fascia; here it hangs at the rafters' ends.");
        }
        if (sizes.has("barge-board") && !sizes.has("gutter")) {
            add(
                    advice,
                    "barge-board.clearance",
                    "The clearance is counted from the gutter; without one it is not marked.");
        }
        fascia(drawing, advice);
        spacings(drawing, advice);
        posts(drawing, advice);
        return advice.stream();
    }

    private static void fascia(ExpectedDrawing drawing, List<Advice> advice) {
        Sizes sizes = drawing.task().sizes();
        if (!sizes.has("fascia")) {
            return;
        }
        double pitch = Math.toRadians(sizes.number("pitch"));
        double aboveToe =
                sizes.number("support.depth") / Math.cos(pitch) - sizes.number("fascia.thickness") * Math.tan(pitch);
        if (sizes.number("fascia.depth") <= aboveToe) {
            add(
                    advice,
                    "fascia.depth",
                    ("With its top against the covering the fascia ends %s mm above the rafter's"
                                    + " top and covers none of its end.")
                            .formatted(PlainNumber.text(aboveToe - sizes.number("fascia.depth"), 0)));
        }
    }

    private static void spacings(ExpectedDrawing drawing, List<Advice> advice) {
        for (Expected expected : drawing.values()) {
            if (expected instanceof Expected.Count count && count.number() < 2) {
                String part = count.key().substring(0, count.key().indexOf('.'));
                add(
                        advice,
                        part.equals("brander") ? "ceiling.brander.spacing" : part + ".spacing",
                        "Only %d fits into the drawing, so that no spacing can be marked.".formatted(count.number()));
            }
        }
    }

    private static void posts(ExpectedDrawing drawing, List<Advice> advice) {
        if (drawing.task().sizes().has("posts")
                && drawing.value("post.position").isEmpty()) {
            add(advice, "posts.equal-spaces", "No post stands whole in the drawing, so that none can be marked.");
        }
    }

    private static void add(List<Advice> advice, String key, String message) {
        advice.add(new Advice(key, message, BriefRule.COMMON_PRACTICE));
    }
}
