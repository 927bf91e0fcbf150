package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import wallplate.geometry.Point;
import wallplate.geometry.Segment;
import wallplate.geometry.Vector;
import wallplate.solver.ConstructionStep;

/**
 * Where a learner measures in one step of the construction, as dimensions.
 *
 * <p>What is shown follows from the edges that the step lines in, so a step of a part that is not listed here is drawn
 * without dimensions, not wrongly.
 */
final class StepDimensions {

    private static final Vector DOWN = new Vector(0, -1);
    private static final Vector UP = new Vector(0, 1);
    private static final Vector OUT = new Vector(-1, 0);
    private static final Vector IN = new Vector(1, 0);

    private final ConstructionStep step;
    private final DetailLines lines;
    private final DimensionRules rules;

    StepDimensions(ConstructionStep step, DetailLines lines, DimensionRules rules) {
        this.step = step;
        this.lines = lines;
        this.rules = rules;
    }

    List<Dimension> dimensions() {
        return switch (step.part()) {
            case "roof" -> settingOut();
            case "break" -> breakLine();
            case "wall" -> draws("inner") ? listed(rules.wallThickness("wall")) : List.of();
            case "high-wall" -> listed(rules.clearSpan("high-wall"), rules.wallThickness("high-wall"));
            case "wall-plate", "high-plate" -> listed(
                    between(step.part() + ".width", "outer", "inner", UP),
                    rules.lengthOf(step.part() + ".depth", step.part(), "inner", IN));
            case "rafter" -> rafter();
            case "tie-beam" -> listed(rules.innerDepth("tie-beam"));
            case "post" -> listed(rules.postPosition(), between("post.width", "outer", "inner", UP));
            case "support" -> supports();
            case "covering" -> covering();
            case "fascia" -> listed(
                    between("fascia.thickness", "outer", "inner", DOWN),
                    rules.lengthOf("fascia.depth", "fascia", "outer", OUT));
            case "gutter" -> gutter();
            case "barge-board" -> listed(rules.endDepth("barge-board"), clearance());
            case "brander" -> branders();
            case "ceiling" -> ceiling();
            default -> List.of();
        };
    }

    private boolean draws(String edge) {
        return step.linedIn().stream().anyMatch(line -> line.edge().equals(edge));
    }

    @SafeVarargs
    private static List<Dimension> listed(Optional<? extends Dimension>... dimensions) {
        List<Dimension> all = new ArrayList<>();
        for (Optional<? extends Dimension> dimension : dimensions) {
            dimension.ifPresent(all::add);
        }
        return all;
    }

    private Optional<Dimension> between(String key, String from, String to, Vector side) {
        Optional<Segment> first = lines.edge(step.part(), 0, from);
        Optional<Segment> second = lines.edge(step.part(), 0, to);
        return first.isPresent() && second.isPresent()
                ? rules.between(key, step.part(), first.get(), second.get(), side)
                : Optional.empty();
    }

    /** The slope's direction to the inside. */
    private Vector slope() {
        return lines.edge("rafter", 0, "bottom")
                .map(edge -> edge.vector().unit())
                .map(along -> along.x() < 0 ? along.negated() : along)
                .orElse(IN);
    }

    private List<Dimension> settingOut() {
        double face = wallFaceX();
        return Math.abs(face) < 0.5
                ? List.of()
                : List.of(rules.unnamed("wall", new Point(face, 0), Point.ORIGIN, UP));
    }

    private double wallFaceX() {
        return lines.edge("wall", 0, "outer").map(edge -> edge.midpoint().x()).orElse(0.0);
    }

    private List<Dimension> breakLine() {
        return lines.edge("break", 0, "break")
                .map(line -> {
                    double foot = Math.min(line.start().y(), line.end().y());
                    return List.of(rules.unnamed(
                            "break", new Point(wallFaceX(), foot), new Point(line.midpoint().x(), foot), DOWN));
                })
                .orElse(List.of());
    }

    private List<Dimension> rafter() {
        List<Dimension> all = new ArrayList<>();
        if (draws("bottom")) {
            rules.pitchAtHeel().ifPresent(all::add);
        }
        if (draws("top")) {
            rules.innerDepth("rafter").ifPresent(all::add);
        }
        if (draws("cut")) {
            rules.overhang().ifPresent(all::add);
        }
        return all;
    }

    private List<Dimension> supports() {
        Vector into = slope().leftNormal().negated();
        List<Dimension> all = listed(
                between("support.width", "low", "high", into),
                rules.lengthOf("support.depth", "support", "low", slope().negated()));
        all.addAll(rules.spacingAbove("support"));
        return all;
    }

    private List<Dimension> covering() {
        List<Dimension> all = listed(rules.lengthOf("covering.thickness", "covering", "end", slope().negated()));
        Optional<Segment> rafter = lines.edge("rafter", 0, "top");
        Optional<Segment> end = lines.edge("covering", 0, "end");
        if (rafter.isPresent() && end.isPresent()) {
            Point toe = rafter.get().start().x() < rafter.get().end().x()
                    ? rafter.get().start()
                    : rafter.get().end();
            Vector up = slope().leftNormal();
            Point corner = end.get().vector().dot(up) > 0 ? end.get().end() : end.get().start();
            rules.places("covering.projection", "covering", corner, toe, up).ifPresent(all::add);
        }
        return all;
    }

    private List<Dimension> gutter() {
        Optional<Segment> outer = lines.edge("gutter", 0, "outer");
        Optional<Segment> against = lines.edge("fascia", 0, "outer")
                .or(() -> lines.edge("gutter", 0, "inner"))
                .or(() -> lines.edge("rafter", 0, "cut"));
        if (outer.isEmpty() || against.isEmpty()) {
            return List.of();
        }
        return listed(
                rules.between("gutter.width", "gutter", outer.get(), against.get(), DOWN),
                rules.lengthOf("gutter.depth", "gutter", "outer", OUT));
    }

    private Optional<Dimension> clearance() {
        Optional<Segment> gutter = lines.edge("gutter", 0, "outer");
        Optional<Segment> end = lines.edge("barge-board", 0, "end");
        return gutter.isPresent() && end.isPresent()
                ? rules.between("barge-board.clearance", "barge-board", end.get(), gutter.get(), DOWN)
                : Optional.empty();
    }

    private List<Dimension> branders() {
        List<Dimension> all = listed(
                between("brander.width", "low", "high", UP),
                rules.lengthOf("brander.depth", "brander", "low", OUT));
        all.addAll(rules.spacingBelow("brander"));
        return all;
    }

    private List<Dimension> ceiling() {
        Optional<Segment> beam = lines.edge("tie-beam", 0, "bottom");
        Optional<Segment> board = lines.edge("ceiling", 0, "top");
        return beam.isPresent() && board.isPresent()
                ? listed(rules.beyondBreak("ceiling.drop", "ceiling", board.get(), beam.get()))
                : List.of();
    }
}
