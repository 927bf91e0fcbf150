package wallplate.drafting.layout;

import java.util.ArrayList;
import java.util.List;

/** Chooses the dimensions of a model answer: each size once, and only what can be read at the drawing's scale. */
final class DimensionPlan {

    private DimensionPlan() {}

    static List<Dimension> of(DimensionRules rules) {
        List<Dimension> all = new ArrayList<>();
        rules.pitch().ifPresent(all::add);
        // The centre line of the wall comes first: the figure of its thickness then keeps clear of it.
        rules.postPosition().ifPresent(all::add);
        rules.overhang().ifPresent(all::add);
        rules.endDepth("barge-board").ifPresent(all::add);
        rules.wallThickness("wall").ifPresent(all::add);
        rules.clearSpan("high-wall").ifPresent(all::add);
        rules.wallThickness("high-wall").ifPresent(all::add);
        all.addAll(rules.spacingAbove("support"));
        all.addAll(rules.spacingBelow("brander"));
        rules.innerDepth("rafter").ifPresent(all::add);
        rules.innerDepth("tie-beam").ifPresent(all::add);
        return all;
    }
}
